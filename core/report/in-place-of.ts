import type { Beneath } from '../library/beneath.ts'
import type { Library } from '../library/library.ts'
import type { Transformation } from '../library/transformation.ts'
import type { Plan } from '../plan/plan.ts'
import { noBreakSpace } from '../quantity/print.ts'

/**
 * "in place of 90 %": what an own yield stands over; of an isolation in g per 100 g.
 *
 * @param typical percent of theory, or g per 100 g of feedstock
 */
export const inPlaceOf = ({ kind }: Pick<Transformation, 'kind'>, typical: number): string =>
  `in place of ${typical}${noBreakSpace}${kind === 'isolation' ? `g per 100${noBreakSpace}g` : '%'}`

/**
 * "own figures, in place of 90 %" where the plan itself says another yield than its library; "own bench, in place of 90 %" where the own
 * library does than the one beneath it; null where neither does.
 */
export function yieldInPlace(library: Library, { settings }: Pick<Plan, 'settings'>, beneath: Beneath, step: string): string | null {
  const transformation = library.transformations.get(step)
  if (transformation === undefined) return null
  if (settings.yields[step] !== undefined) return `own figures, ${inPlaceOf(transformation, transformation.yieldPercent.typical)}`
  const before = beneath.yields.get(step)
  return before === undefined ? null : `own bench, ${inPlaceOf(transformation, before)}`
}

/** "Own record, in place of the bundled one: density: 0.79 g/mL → 0.81 g/mL."; null where it is the bundled one. */
export function materialInPlace({ materials }: Beneath, material: string): string | null {
  const told = materials.get(material)
  return told === undefined ? null : `Own record, in place of the bundled one: ${told.join('; ')}.`
}
