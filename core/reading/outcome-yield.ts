import { molarMass as massOf } from '../chemistry/formula.ts'
import type { Library } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import type { EquationRead } from './equation-line.ts'
import type { NameIndex } from './names.ts'
import type { OutcomeRead } from './outcome-line.ts'
import { isWeighedOnly } from './solid-mixture.ts'

export interface YieldRead {
  readonly theoreticalG: number | null
  /** From the isolated mass where there is one, else as stated. */
  readonly percentYield: number | null
  /** For the draft; low and high only where the text gives a range. */
  readonly percent: { readonly low?: number; readonly typical: number; readonly high?: number } | null
  readonly notes: readonly string[]
}

/** Percentage points between a stated yield and the one from the isolated mass; printed yields are rounded, often to fives. */
const statedTolerance = 3.5

/** Theoretical mass of the main product on the limiting reactant, and the yield: isolated over theoretical, or as the text states it. */
export function yieldOf(
  equation: EquationRead,
  limiting: string | null,
  limitingMol: number | null,
  main: string | null,
  outcome: OutcomeRead | null,
  library: Library,
): YieldRead {
  const coefficient = (terms: EquationRead['reactants'], compound: string): number =>
    terms.find(term => term.compound === compound)?.coefficient ?? 1
  // A product typed as a structure has its mass although the library does not hold it yet.
  const typed = main === null ? equation.products[0] : undefined
  const molarMass =
    main !== null
      ? library.molarMass.get(main)
      : typed?.compound === null && typed.composition !== null && typed.candidates === undefined
        ? massOf(typed.composition)
        : undefined
  const theoreticalG =
    limiting === null || limitingMol === null || molarMass === undefined
      ? null
      : (limitingMol * (main === null ? (typed?.coefficient ?? 1) : coefficient(equation.products, main)) * molarMass) /
        coefficient(equation.reactants, limiting)
  const notes: string[] = []
  const fromMass =
    outcome?.isolatedG == null || outcome.state !== undefined || theoreticalG === null || theoreticalG === 0
      ? null
      : (100 * outcome.isolatedG) / theoreticalG
  const stated = outcome?.percent ?? null
  const middle = stated === null ? null : (stated.low + stated.high) / 2
  if (fromMass !== null && stated !== null && (fromMass < stated.low - statedTolerance || fromMass > stated.high + statedTolerance))
    notes.push(`the text states ${span(stated)} %, but what came out is ${fromMass.toFixed(1)} % of theory: the latter is used`)
  const percentYield = fromMass ?? middle
  if (outcome?.isolatedG === 0 || percentYield === 0)
    notes.push('nothing came out: a run that failed is told here and gives no yield to plan on; the logbook keeps it as a run')
  if (percentYield !== null && percentYield > 100)
    notes.push(
      `${percentYield.toFixed(1)} % of theory is more than there can be: wet, impure or mis-weighed, or the limiting reactant is another`,
    )
  const oneDecimal = (percent: number): number => Math.round(percent * 10) / 10
  // What the format cannot hold (0, above 100) is shown above and not written into the draft.
  const usable = percentYield !== null && percentYield > 0 && percentYield <= 100 ? oneDecimal(percentYield) : null
  const between = outcome?.isolatedRangeG ?? null
  const ends =
    fromMass === null
      ? stated
      : between === null || theoreticalG === null
        ? null
        : { low: oneDecimal((100 * between.low) / theoreticalG), high: oneDecimal((100 * between.high) / theoreticalG) }
  const range = ends !== null && ends.low !== ends.high && ends.low > 0 && ends.high <= 100 ? { low: ends.low, high: ends.high } : {}
  return { theoreticalG, percentYield, percent: usable === null ? null : { typical: usable, ...range }, notes }
}

const span = ({ low, high }: { readonly low: number; readonly high: number }): string => (low === high ? `${low}` : `${low} to ${high}`)

/** The product that the isolated line names, else the first of the equation. */
export function mainProduct(equation: EquationRead, outcome: OutcomeRead | null, index: NameIndex): string | null {
  const products = equation.products.map(term => term.compound)
  const first = products[0] ?? null
  if (outcome === null || outcome.name === '') return first
  const found = index.lookUp(outcome.name)
  const named = found.kind === 'material' ? (index.materials.get(found.material)?.contains?.compound ?? found.material) : null
  if (named !== null && products.includes(named)) return named
  return first
}

/** What came out, where it is called by the name of a material that the equation does not make; null where all is well. */
export function isolatedOther(equation: EquationRead, outcome: OutcomeRead, index: NameIndex): Problem | null {
  if (outcome.name === '') return null
  const found = index.lookUp(outcome.name)
  if (found.kind !== 'material') return null
  const compound = index.materials.get(found.material)?.contains?.compound ?? found.material
  if (equation.products.length === 0 || equation.products.some(term => term.compound === compound || term.compound === null)) return null
  return {
    code: 'outcome-no-product',
    where: ['yield', outcome.text],
    what: `"${outcome.text}" says that ${outcome.name} came out, which the equation does not make.`,
    why: 'A yield is counted on a product of the equation.',
    cure: 'Correct the name, or the equation.',
  }
}

/**
 * What came out as a hydrate or another salt of a product, counted as the product in it: 9.5 g of sodium acetate trihydrate is 5.7 g of sodium
 * acetate.
 */
export function asTheProduct(equation: EquationRead, outcome: OutcomeRead, index: NameIndex, notes: string[]): OutcomeRead {
  const found = outcome.name === '' ? null : index.lookUp(outcome.name)
  const material = found?.kind === 'material' ? index.materials.get(found.material) : undefined
  const { contains } = material ?? {}
  const share = contains?.massFraction
  if (outcome.isolatedG === null || material === undefined || share === undefined || !isWeighedOnly(material)) return outcome
  if (!equation.products.some(term => term.compound === contains?.compound)) return outcome
  const name = index.materials.get(contains!.compound)?.name ?? contains!.compound
  const isolatedG = outcome.isolatedG * share
  notes.push(`${outcome.isolatedG} g of ${material.name} is counted as the ${isolatedG.toPrecision(3)} g of ${name} in it`)
  const { isolatedRangeG: range } = outcome
  return { ...outcome, isolatedG, isolatedRangeG: range === null ? null : { low: range.low * share, high: range.high * share } }
}
