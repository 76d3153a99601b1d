import { type Library, materialOf, transformationOf } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { coefficientOf, compoundIn, type Measured, measured } from '../library/reference-charge.ts'
import { type ChargeLine, stageOf, type Transformation } from '../library/transformation.ts'
import type { AmountBasis, ChargedLine } from './charged.ts'
import { flowOf } from './flow.ts'
import { plannedAmount, type RulesOfThumb } from './open-lines.ts'
import { type ReactantLines, reactantLines } from './reactant-lines.ts'

export interface ChargeInput {
  readonly transformation: string
  /** Grams of the limiting compound (isolation: of feedstock), all batches. */
  readonly limitingG: number
  /** Expected product, g: what lines given per gram of product scale with. */
  readonly productG: number
  /** The compound in hand and the material it is in hand as. */
  readonly start: { readonly compound: string; readonly material: string }
  /** Compounds that steps of the plan make. */
  readonly made: ReadonlySet<string>
  readonly rules?: RulesOfThumb
}

type Draft = Omit<ChargedLine, 'massG' | 'volumeMl' | 'amountMol' | 'equivalents'> & { readonly size: Measured }

const unknown: Measured = { massG: null, volumeMl: null, amountMol: null }

/**
 * Everything that goes in at the plan's scale, in the source's order. Each line scales with the limiting moles, a line given per gram of
 * product with the expected product. What an earlier step or the start supplies appears as that compound or material; where the source
 * takes it as a solution, what that is made up with is bought at the same volume, "about". Reactants without an amount come at least at
 * what the equation takes; other open lines by rule of thumb where one reaches.
 */
export function chargesOf(library: Library, input: ChargeInput): readonly ChargedLine[] {
  const transformation = transformationOf(library, input.transformation)
  const flow = flowOf(library, input.transformation)
  const scale = input.limitingG / flow.referenceG
  const reactants = reactantLines(library, transformation)
  const limitingMass = library.molarMass.get(flow.limiting)
  const limitingMol = flow.isolation || limitingMass === undefined ? null : input.limitingG / limitingMass

  const drafts: Draft[] = []
  transformation.charge.forEach((line, index) => {
    const reactant = reactants.find(r => r.lines.includes(index)) ?? null
    const own = ownLine(library, transformation, line, index, { reactant, scale, limitingMol, productG: input.productG })
    drafts.push(...supplied(library, own, reactant, input))
  })
  for (const reactant of reactants) {
    if (reactant.lines.length > 0 || reactant.free) continue
    drafts.push(...supplied(library, unlistedReactant(library, transformation, reactant.compound, limitingMol), reactant, input))
  }
  return withPlannedAmounts(library, transformation, drafts, input, limitingMol)
}

interface LineScale {
  readonly reactant: ReactantLines | null
  readonly scale: number
  readonly limitingMol: number | null
  readonly productG: number
}

function ownLine(library: Library, transformation: Transformation, line: ChargeLine, index: number, by: LineScale): Draft {
  const material = materialOf(library, line.material)
  // Objects are written out, here and below, instead of spread: ten times faster, and a search weighs the charges of every step it may take.
  const draft = (size: Measured, basis: AmountBasis, supply: ChargedLine['supply'] = 'bought'): Draft => ({
    material: line.material,
    role: line.role,
    at: stageOf(line),
    line: index,
    size,
    basis,
    supply,
  })
  const basis: AmountBasis = line.derived ? 'derived' : 'source'
  if (line.perGramProduct !== undefined) return draft(measured(library, material, line.perGramProduct * by.productG, line.unit), basis)
  if (line.amount !== null) return draft(measured(library, material, line.amount * by.scale, line.unit), basis)
  if (by.reactant?.free) return draft(unknown, 'open', 'free')
  if (by.reactant?.atLeast) return draft(leastOf(library, transformation, by.reactant.compound, material, by.limitingMol), 'at-least')
  return draft(unknown, 'open')
}

function unlistedReactant(library: Library, transformation: Transformation, compound: string, limitingMol: number | null): Draft {
  const size = leastOf(library, transformation, compound, materialOf(library, compound), limitingMol)
  return { material: compound, role: 'reagent', at: 'vessel', line: null, size, basis: 'at-least', supply: 'bought' }
}

/** What the equation consumes at full conversion. */
function leastOf(library: Library, t: Transformation, compound: string, material: Material, limitingMol: number | null): Measured {
  if (limitingMol === null) return unknown
  return measured(library, material, (limitingMol * coefficientOf(t, compound)) / coefficientOf(t, t.limiting), 'mol')
}

/** The line as it comes from where it comes: bought as the source says, or the made compound or the start in its place. */
function supplied(library: Library, line: Draft, reactant: ReactantLines | null, input: ChargeInput): readonly Draft[] {
  if (reactant === null) return [line]
  const fromStart = reactant.compound === input.start.compound
  if (!fromStart && !input.made.has(reactant.compound)) return [line]
  const supply = fromStart ? 'start' : 'made'
  const given = fromStart ? input.start.material : reactant.compound
  if (given === line.material) return [{ ...line, supply }]
  const material = materialOf(library, line.material)
  const { amountMol } = line.size
  const size = amountMol === null ? { ...unknown, massG: line.size.massG } : measured(library, materialOf(library, given), amountMol, 'mol')
  const compound: Draft = { ...line, material: given, size, supply }
  const neat = materialOf(library, given).form !== 'solution'
  if (material.form !== 'solution' || compoundIn(material) === null || !neat || line.size.volumeMl === null) return [compound]
  const rest = material.contains?.rest ?? 'water'
  // The same volume, since what a solute adds to it is not known: "about".
  const madeUpWith = measured(library, materialOf(library, rest), line.size.volumeMl, 'mL')
  return [compound, { material: rest, role: 'solvent', at: line.at, line: line.line, size: madeUpWith, basis: 'about', supply: 'bought' }]
}

function withPlannedAmounts(
  library: Library,
  transformation: Transformation,
  drafts: readonly Draft[],
  input: ChargeInput,
  limitingMol: number | null,
): readonly ChargedLine[] {
  const finished = ({ material, role, at, line, size, basis, supply }: Draft): ChargedLine => ({
    material,
    role,
    at,
    line,
    basis,
    supply,
    massG: size.massG,
    volumeMl: size.volumeMl,
    amountMol: size.amountMol,
    equivalents: size.amountMol === null || limitingMol === null || limitingMol === 0 ? null : size.amountMol / limitingMol,
  })
  let lines = drafts.map(finished)
  // Acids and bases first, then what extracts, for washes and drying agents follow the volumes of these.
  for (const roles of [['acid', 'base'], ['extraction'], ['wash', 'drying', 'recrystallisation']]) {
    const before = lines
    lines = before.map((line, i) => {
      const open = line.basis === 'open' && line.supply === 'bought'
      const least = line.basis === 'at-least' && line.supply === 'bought' && (line.role === 'acid' || line.role === 'base')
      if (!roles.includes(line.role) || !(open || least)) return line
      const planned = plannedAmount(library, { transformation, charges: before, productG: input.productG }, line, input.rules)
      if (planned === null) return line
      const size = measured(library, materialOf(library, line.material), planned.amount, planned.unit)
      if (least && (size.amountMol ?? 0) <= (line.amountMol ?? 0)) return line
      return finished({ ...drafts[i]!, size, basis: 'planned' })
    })
  }
  return lines
}
