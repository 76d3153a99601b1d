import { type Library, materialOf } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { compoundIn } from '../library/reference-charge.ts'
import type { Transformation } from '../library/transformation.ts'
import type { ChargedLine } from './charged.ts'

/**
 * Rules of thumb for lines to which the source gives no amount; the middle of each range. Everything reckoned by them is marked planned.
 * Common practice, no source.
 */
export const rulesOfThumb = {
  /** Each wash, mL per mL of organic liquid: a third to a half. */
  washPerOrganic: 0.4,
  /** Three portions of a third of the aqueous volume. */
  extractionPerAqueous: 1,
  /** And at least so much in all, mL per g of product. */
  extractionMlPerG: 5,
  /** Drying agent, g per mL of organic layer: 1 g for 10 to 20 mL. */
  dryingGPerMl: 0.07,
  /** Recrystallisation, mL of solvent per g of crude: 5 to 20. */
  recrystallisationMlPerG: 10,
  /** Washing a filter cake: two portions of half a mL per g. */
  filterWashMlPerG: 1,
} as const
export type RulesOfThumb = { readonly [K in keyof typeof rulesOfThumb]: number }

/** Protons one mole gives up. Textbook chemistry, no source. */
const acidProtons: ReadonlyMap<string, number> = new Map([
  ['hydrogen-chloride', 1],
  ['hydrogen-bromide', 1],
  ['nitric-acid', 1],
  ['sulfuric-acid', 2],
  ['phosphoric-acid', 2],
  ['acetic-acid', 1],
  ['formic-acid', 1],
  ['oxalic-acid-dihydrate', 2],
  ['tartaric-acid', 2],
  ['potassium-hydrogensulfate', 1],
])
/** Protons one mole takes up. Textbook chemistry, no source. */
const baseProtons: ReadonlyMap<string, number> = new Map([
  ['sodium-hydroxide', 1],
  ['potassium-hydroxide', 1],
  ['calcium-hydroxide', 2],
  ['barium-hydroxide', 2],
  ['sodium-carbonate', 2],
  ['potassium-carbonate', 2],
  ['calcium-carbonate', 2],
  ['sodium-bicarbonate', 1],
  ['ammonia', 1],
  ['sodium-acetate', 1],
  ['sodium-ethoxide', 1],
  ['sodium', 1],
  ['pyridine', 1],
])

/** What the rules look at. */
export interface OpenLineContext {
  readonly transformation: Transformation
  /** The lines so far, in order, open ones with null amounts. */
  readonly charges: readonly ChargedLine[]
  /** Expected product, g. */
  readonly productG: number
}

/** An amount by a rule of thumb. */
export interface PlannedAmount {
  readonly amount: number
  readonly unit: 'g' | 'mL' | 'mol'
}

/**
 * The planned amount of an open line; null where no rule reaches, which stays open: listed without an amount, never as zero.
 *
 * @param line one of `context.charges` with basis `open` or (an acid or base that the equation takes) `at-least`
 * @returns moles are of the contained compound
 */
export function plannedAmount(
  library: Library,
  context: OpenLineContext,
  line: ChargedLine,
  rules: RulesOfThumb = rulesOfThumb,
): PlannedAmount | null {
  const material = materialOf(library, line.material)
  switch (line.role) {
    case 'acid':
      return neutralising(library, context, line, acidProtons, baseProtons)
    case 'base':
      return neutralising(library, context, line, baseProtons, acidProtons)
    case 'recrystallisation':
      return isPoured(material) ? { amount: rules.recrystallisationMlPerG * context.productG, unit: 'mL' } : null
    case 'extraction': {
      const amount = Math.max(rules.extractionPerAqueous * aqueousMl(library, context), rules.extractionMlPerG * context.productG)
      // Several open solvents share the work of one.
      const sharers = context.charges.filter(l => l.role === 'extraction' && l.basis === 'open').length
      return isPoured(material) ? { amount: amount / sharers, unit: 'mL' } : null
    }
    case 'wash': {
      if (!isPoured(material)) return null
      const organic = organicMl(library, context, rules)
      return organic === null
        ? { amount: rules.filterWashMlPerG * context.productG, unit: 'mL' }
        : { amount: rules.washPerOrganic * organic, unit: 'mL' }
    }
    case 'drying': {
      const organic = organicMl(library, context, rules)
      return organic === null || isPoured(material) ? null : { amount: rules.dryingGPerMl * organic, unit: 'g' }
    }
    default:
      return null
  }
}

const isPoured = (material: Material): boolean => material.form === 'liquid' || material.form === 'solution'

/** The larger of what the equation consumes and what neutralises the opposite charge in the vessel. */
function neutralising(
  library: Library,
  context: OpenLineContext,
  line: ChargedLine,
  own: ReadonlyMap<string, number>,
  opposite: ReadonlyMap<string, number>,
): PlannedAmount | null {
  const compound = compoundIn(materialOf(library, line.material)) ?? line.material
  const protons = own.get(compound)
  let opposed = 0
  for (const other of context.charges) {
    const per = opposite.get(compoundIn(materialOf(library, other.material)) ?? other.material)
    if (other.at === 'vessel' && other.amountMol !== null && per !== undefined) opposed += other.amountMol * per
  }
  const amount = Math.max(line.amountMol ?? 0, protons === undefined ? 0 : opposed / protons)
  return amount > 0 ? { amount, unit: 'mol' } : null
}

const isAqueous = (material: Material): boolean =>
  material.id === 'water' ||
  (material.form === 'solution' && material.contains !== undefined && (material.contains.rest ?? 'water') === 'water')

/** Water and solutions in water of vessel and quench, mL. */
function aqueousMl(library: Library, { charges }: OpenLineContext): number {
  return charges.reduce(
    (sum, l) => (l.at !== 'workup' && isAqueous(materialOf(library, l.material)) ? sum + (l.volumeMl ?? l.massG ?? 0) : sum),
    0,
  )
}

/**
 * The organic layer, mL: what it is extracted with, else, for a liquid product, the organic liquids of the vessel and at least the product
 * itself; null where there is none, for then a wash goes over a filter and nothing needs a drying agent.
 */
function organicMl(library: Library, { charges, productG, transformation }: OpenLineContext, rules: RulesOfThumb): number | null {
  const extraction = charges.filter(l => l.role === 'extraction')
  if (extraction.length > 0) {
    const known = extraction.reduce((sum, l) => sum + (l.volumeMl ?? 0), 0)
    return known > 0 ? known : rules.extractionMlPerG * productG
  }
  const product = materialOf(library, transformation.mainProduct)
  if (product.form !== 'liquid') return null
  const vessel = charges.reduce((sum, l) => {
    const material = materialOf(library, l.material)
    return l.at === 'vessel' && material.form === 'liquid' && !isAqueous(material) && l.role === 'solvent' ? sum + (l.volumeMl ?? 0) : sum
  }, 0)
  return vessel + productG / (product.densityGPerMl ?? 1)
}
