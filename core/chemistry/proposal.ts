import { type Equation, imbalancesOf, type Term } from './equation.ts'
import { hill, parseFormula } from './formula.ts'
import { wholeSolutions } from './null-space.ts'

/** A way to balance an equation: the whole equation as it would read, to be confirmed by a person, never taken by itself. */
export interface Proposal {
  readonly equation: Equation
  /** Compounds that the equation did not name, by formula and trade name. */
  readonly added: readonly { readonly formula: string; readonly name: string; readonly side: 'left' | 'right' }[]
  /** Whether a coefficient changed. */
  readonly recounted: boolean
  /** As an order: "Add 2 H2O (water) on the right." */
  readonly text: string
}

/** Small molecules and salts that equations forget, commonest first. Common practice, no source. */
const forgotten: readonly (readonly [formula: string, name: string])[] = [
  ['H2O', 'water'],
  ['HCl', 'hydrogen chloride'],
  ['HBr', 'hydrogen bromide'],
  ['HI', 'hydrogen iodide'],
  ['NaCl', 'sodium chloride'],
  ['NaBr', 'sodium bromide'],
  ['NaI', 'sodium iodide'],
  ['KCl', 'potassium chloride'],
  ['KBr', 'potassium bromide'],
  ['KI', 'potassium iodide'],
  ['CO2', 'carbon dioxide'],
  ['NH3', 'ammonia'],
  ['N2', 'nitrogen'],
  ['CH3OH', 'methanol'],
  ['C2H5OH', 'ethanol'],
  ['CH3CO2H', 'acetic acid'],
  ['SO2', 'sulfur dioxide'],
  ['CH3CO2Na', 'sodium acetate, anhydrous'],
  ['Na2SO4', 'sodium sulfate'],
  ['K2SO4', 'potassium sulfate'],
  ['NaHSO4', 'sodium hydrogensulfate'],
  ['NaHCO3', 'sodium hydrogencarbonate'],
  ['Na2CO3', 'sodium carbonate'],
  ['NH4Cl', 'ammonium chloride'],
  ['NaOH', 'sodium hydroxide'],
  ['KOH', 'potassium hydroxide'],
  ['H2SO4', 'sulfuric acid'],
  ['HNO3', 'nitric acid'],
  ['NO2', 'nitrogen dioxide'],
  ['NO', 'nitric oxide'],
  ['CO', 'carbon monoxide'],
  ['H2S', 'hydrogen sulfide'],
  ['O2', 'oxygen'],
  ['H2', 'hydrogen'],
]
/** What a Grignard reagent leaves once it is quenched: tried only where the equation holds magnesium. */
const ofMagnesium: readonly (readonly [formula: string, name: string])[] = [
  ['MgCl2', 'magnesium chloride'],
  ['MgBr2', 'magnesium bromide'],
  ['MgI2', 'magnesium iodide'],
]
/** Of these a beginner's by-product is rarely made: they are tried only with the others used up. */
const lastResort = new Set(['O2', 'H2'])

/** A coefficient beyond this is arithmetic, not chemistry. */
const largestCoefficient = 40

/**
 * Ways to balance an equation, likeliest first: corrected coefficients, one small molecule moved or recounted, one forgotten molecule with the coefficients as they stand, one with
 * corrected coefficients, two forgotten ones.
 *
 * Nothing is invented where a balanced equation is not unique: of two independent solutions none is proposed.
 *
 * @param count  at most so many
 * @returns empty where the equation balances, or nothing simple helps
 */
export function proposalsFor(equation: Equation, count = 3): readonly Proposal[] {
  if (imbalancesOf(equation).length === 0) return []
  const named = new Set([...equation.reactants, ...equation.products].map(term => key(term)))
  const elements = new Set([...equation.reactants, ...equation.products].flatMap(one => [...one.composition.counts.keys()]))
  const salts = elements.has('Mg') ? ofMagnesium : []
  const candidates = [...forgotten, ...salts].map(([formula, name]) => term(formula, name)).filter(candidate => !named.has(key(candidate)))
  const common = candidates.filter(candidate => !lastResort.has(candidate.formula))
  const gases = candidates.filter(candidate => lastResort.has(candidate.formula))
  const found: Proposal[] = []
  const take = (proposal: Proposal | null): boolean => {
    if (proposal !== null && !found.some(one => one.text === proposal.text)) found.push(proposal)
    return found.length >= count
  }
  if (take(recounted(equation, []))) return found
  for (const one of moved(equation)) if (take(one)) return found
  for (const list of [common, gases]) {
    for (const one of list) for (const side of ['right', 'left'] as const) if (take(asItStands(equation, [{ ...one, side }]))) return found
    for (const one of list) for (const side of ['right', 'left'] as const) if (take(recounted(equation, [{ ...one, side }]))) return found
  }
  // The two halides of a Grignard reagent and of the acid that quenches it share the magnesium out between them.
  const halides = candidates.filter(one => one.composition.counts.has('Mg'))
  for (const [at, one] of halides.entries())
    for (const other of halides.slice(at + 1)) {
      const both = [one, other].map(salt => ({ ...salt, side: 'right' as const }))
      if (take(recounted(equation, both))) return found
    }
  if (found.length > 0) return found
  // One organic molecule taken up and another given off is arithmetic: 6 methanol to 3 ethanol makes 3 water.
  for (const [at, one] of candidates.entries())
    for (const other of candidates.slice(at + 1))
      for (const [side, otherSide] of [
        ['right', 'right'],
        ['left', 'right'],
        ['right', 'left'],
      ] as const)
        if (
          !(side !== otherSide && one.composition.counts.has('C') && other.composition.counts.has('C')) &&
          !(side !== otherSide && elements.has('Mg') && sharesMetal(one, other)) &&
          take(
            asItStands(equation, [
              { ...one, side },
              { ...other, side: otherSide },
            ]),
          )
        )
          return found
  return found
}

/** Salts of one alkali metal, swapped across the arrow, only trade halides that the magnesium would keep. */
const sharesMetal = (one: Candidate, other: Candidate): boolean =>
  ['Na', 'K'].some(metal => one.composition.counts.has(metal) && other.composition.counts.has(metal))

interface Candidate extends Term {
  readonly formula: string
}
type Placed = Candidate & { readonly side: 'left' | 'right' }

function term(formula: string, name: string): Candidate {
  const read = parseFormula(formula)
  if (!read.ok) throw new RangeError(formula)
  return { formula, name, coefficient: 1, composition: read.value }
}

const key = ({ composition }: Term): string => `${hill(composition)} ${composition.charge}`

/** Keeps every coefficient as typed and solves for those of the added compounds alone. */
function asItStands(equation: Equation, added: readonly Placed[]): Proposal | null {
  const unknowns = added.map(one => column(one, one.side === 'left' ? 1 : -1))
  const given = [
    ...equation.reactants.map(one => column(one, one.coefficient)),
    ...equation.products.map(one => column(one, -one.coefficient)),
  ]
  // One more column, the equation as typed; its coefficient must come out as a divisor of the rest, which scaling to 1 shows.
  const sum = new Map<string, number>()
  for (const one of given) for (const [row, value] of one) sum.set(row, (sum.get(row) ?? 0) + value)
  const solutions = wholeSolutions([sum, ...unknowns])
  if (solutions.length !== 1) return null
  const [whole, ...counts] = solutions[0]!
  if (whole !== 1 || counts.some(one => one <= 0 || one > largestCoefficient)) return null
  return proposal(
    equation,
    equation.reactants.map(one => one.coefficient),
    equation.products.map(one => one.coefficient),
    added,
    counts,
  )
}

/**
 * A small molecule that is named already, on the other side or in another number, all else as typed: water that a hydrate takes up stands among
 * the products of many an equation.
 */
function moved(equation: Equation): readonly Proposal[] {
  const small = new Set(forgotten.map(([formula, name]) => key(term(formula, name))))
  return [...equation.reactants, ...equation.products]
    .filter(one => small.has(key(one)))
    .flatMap(one => {
      const rest = {
        reactants: equation.reactants.filter(other => other !== one),
        products: equation.products.filter(other => other !== one),
      }
      if (rest.reactants.length === 0 || rest.products.length === 0) return []
      return (['left', 'right'] as const).flatMap(side => {
        const found = asItStands(rest, [{ ...one, formula: one.name, side }])
        const { reactants = [], products = [] } = found?.equation ?? {}
        const text = `Write ${reactants.map(written).join(' + ')} -> ${products.map(written).join(' + ')}.`
        return found === null ? [] : [{ ...found, added: [], recounted: false, text }]
      })
    })
}

/** Solves for every coefficient anew; only a unique, all-positive solution counts. */
function recounted(equation: Equation, added: readonly Placed[]): Proposal | null {
  const columns = [
    ...equation.reactants.map(one => column(one, 1)),
    ...equation.products.map(one => column(one, -1)),
    ...added.map(one => column(one, one.side === 'left' ? 1 : -1)),
  ]
  const solutions = wholeSolutions(columns)
  if (solutions.length !== 1) return null
  const solution = solutions[0]!
  if (solution.some(one => one <= 0 || one > largestCoefficient)) return null
  const left = equation.reactants.length
  const named = left + equation.products.length
  return proposal(equation, solution.slice(0, left), solution.slice(left, named), added, solution.slice(named))
}

/** The equation counted anew with compounds that it does not name; null where that is not unique, or no chemistry. */
export const recountedWith = (equation: Equation, added: Proposal['added']): Proposal | null =>
  recounted(
    equation,
    added.map(({ formula, name, side }) => ({ ...term(formula, name), side })),
  )

function column({ composition }: Term, factor: number): Map<string, number> {
  const rows = new Map([...composition.counts].map(([symbol, count]) => [symbol, count * factor]))
  if (composition.charge !== 0) rows.set('charge', composition.charge * factor)
  return rows
}

function proposal(
  equation: Equation,
  left: readonly number[],
  right: readonly number[],
  added: readonly Placed[],
  counts: readonly number[],
): Proposal {
  const recount = (terms: readonly Term[], numbers: readonly number[]): Term[] =>
    terms.map((one, at) => ({ name: one.name, coefficient: numbers[at]!, composition: one.composition }))
  const extra = added.map((one, at) => ({ ...one, coefficient: counts[at]! }))
  const reactants = [
    ...recount(equation.reactants, left),
    ...recount(
      extra.filter(one => one.side === 'left'),
      counted(extra, 'left'),
    ),
  ]
  const products = [
    ...recount(equation.products, right),
    ...recount(
      extra.filter(one => one.side === 'right'),
      counted(extra, 'right'),
    ),
  ]
  const changed =
    equation.reactants.some((one, at) => one.coefficient !== left[at]) || equation.products.some((one, at) => one.coefficient !== right[at])
  const additions = extra.map(one => `${one.coefficient} ${one.formula} (${one.name}) on the ${one.side}`)
  const whole = `${reactants.map(written).join(' + ')} -> ${products.map(written).join(' + ')}`
  const text = changed ? `Write ${whole}.` : `Add ${additions.join(' and ')}.`
  return {
    equation: { reactants, products },
    added: added.map(({ formula, name, side }) => ({ formula, name, side })),
    recounted: changed,
    text,
  }
}

const counted = (extra: readonly Placed[], side: 'left' | 'right'): number[] =>
  extra.filter(one => one.side === side).map(one => one.coefficient)

const written = ({ name, coefficient }: Term): string => (coefficient === 1 ? name : `${coefficient} ${name}`)
