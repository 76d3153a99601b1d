import { type Library, materialOf } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { compoundIn, measured } from '../library/reference-charge.ts'
import { quantityText } from '../quantity/print.ts'
import { inUnit, type StockUnit } from './measure.ts'
import type { MadeUp } from './shopping.ts'

/** One way to make up a solution: what one unit of it takes. */
export interface Making {
  readonly target: string
  readonly unit: StockUnit
  readonly source: string
  readonly sourceUnit: StockUnit
  /** Units of the source in one unit of the solution. */
  readonly sourcePerUnit: number
  readonly rest: string
  readonly restUnit: StockUnit
  /** Units of what it is made up with in one unit of the solution. */
  readonly restPerUnit: number
}

/**
 * How a solution can be made up: from its compound, or from a stronger solution in the same liquid. Never from a gas: leading a gas in is
 * another job than making up a solution.
 *
 * @param unitOf unit in which a material is counted
 * @returns nothing for what is no solution, and for a strength that the library cannot reckon with
 */
export function makingsOf(
  library: Library,
  target: Material,
  unit: StockUnit,
  unitOf: (material: Material) => StockUnit,
): readonly Making[] {
  const compound = compoundIn(target)
  if (target.kind !== 'mixture' || target.form !== 'solution' || compound === null) return []
  const rest = materialOf(library, target.contains?.rest ?? 'water')
  const own = measured(library, target, 1, unit)
  if (own.amountMol === null || own.amountMol === 0) return []
  const makings: Making[] = []
  for (const source of library.materials.values()) {
    if (source.id === target.id || compoundIn(source) !== compound || source.form === 'gas') continue
    const solution = source.kind === 'mixture'
    if (solution && (source.form !== 'solution' || (source.contains?.rest ?? 'water') !== rest.id)) continue
    const sourceUnit = unitOf(source)
    const one = measured(library, source, 1, sourceUnit)
    if (one.amountMol === null || one.amountMol === 0) continue
    const sourcePerUnit = own.amountMol / one.amountMol
    const restMl = restOf(own, one, sourcePerUnit, rest)
    // Nothing to be made up with: the source is no stronger than what is wanted.
    if (restMl === null || restMl <= 0) continue
    const restUnit = unitOf(rest)
    const restPerUnit = inUnit(library, rest, restMl, 'mL', restUnit)
    if (restPerUnit === null) continue
    makings.push({ target: target.id, unit, source: source.id, sourceUnit, sourcePerUnit, rest: rest.id, restUnit, restPerUnit })
  }
  return makings.sort((a, b) => (a.source < b.source ? -1 : 1))
}

/** What is left of the solution's mass beside its source, mL; by volumes where a mass is not known. */
function restOf(
  own: ReturnType<typeof measured>,
  source: ReturnType<typeof measured>,
  sourcePerUnit: number,
  rest: Material,
): number | null {
  if (own.massG !== null && source.massG !== null && rest.densityGPerMl !== undefined)
    return (own.massG - source.massG * sourcePerUnit) / rest.densityGPerMl
  if (own.volumeMl === null) return null
  // A solid of unknown volume: as much liquid as there is to be solution, so that enough is there.
  return own.volumeMl - (source.volumeMl ?? 0) * sourcePerUnit
}

/**
 * The working of one making-up, with a sentence that can be followed at the bench.
 *
 * @param amount of the solution, in its unit
 */
export function madeUpText(library: Library, making: Making, amount: number): MadeUp {
  const source = materialOf(library, making.source)
  const rest = materialOf(library, making.rest)
  const target = materialOf(library, making.target)
  const fromAmount = amount * making.sourcePerUnit
  const withAmount = amount * making.restPerUnit
  const of = (material: Material, value: number, unit: StockUnit) => `${quantityText({ value, unit })} of ${material.name}`
  const volumeMl = measured(library, target, amount, making.unit).volumeMl
  const toVolume = volumeMl === null ? '' : `; make up to ${quantityText({ value: volumeMl, unit: 'mL' })}`
  const how = isHarsh(source)
    ? `Put most of ${of(rest, withAmount, making.restUnit)} in the vessel, stir and cool, and add ${of(source, fromAmount, making.sourceUnit)} to it slowly, never the other way round${toVolume}. It gets hot: wear what the safety data sheet asks for.`
    : `${source.form === 'solid' ? 'Dissolve' : 'Mix'} ${of(source, fromAmount, making.sourceUnit)} in most of ${of(rest, withAmount, making.restUnit)}${toVolume}.`
  return {
    from: making.source,
    fromAmount: { amount: fromAmount, unit: making.sourceUnit },
    with: making.rest,
    withAmount: { amount: withAmount, unit: making.restUnit },
    how,
  }
}

/** Corrosive, violent with water, or not known: then the careful order of adding. */
function isHarsh(source: Material): boolean {
  const codes = source.hazards?.codes ?? []
  return source.hazards === undefined || codes.some(code => /^(H314|H318|H290|H260|H261|EUH014)/.test(code))
}
