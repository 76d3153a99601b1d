import type { Transformation } from '../library/transformation.ts'
import { noBreakSpace } from '../quantity/print.ts'

/**
 * "in place of 90 %": what an own yield stands over; of an isolation in g per 100 g.
 *
 * @param typical percent of theory, or g per 100 g of feedstock
 */
export const inPlaceOf = ({ kind }: Pick<Transformation, 'kind'>, typical: number): string =>
  `in place of ${typical}${noBreakSpace}${kind === 'isolation' ? `g per 100${noBreakSpace}g` : '%'}`
