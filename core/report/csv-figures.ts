import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import type { Plan } from '../plan/plan.ts'
import { priceFigure, sourceNotStated } from '../shopping/price-from.ts'
import type { Order } from '../shopping/shopping.ts'
import { type Cells, major } from './csv-columns.ts'
import { nameIn } from './names.ts'
import { planFigures } from './plan-figures.ts'

/** What the plan rests on besides charges and prices, which have rows of their own. */
export const figureCells = (library: Library, plan: Plan, evaluation: Evaluation): readonly Cells[] =>
  planFigures(library, plan, evaluation)
    .filter(one => one.figure !== 'charge' && one.place !== 'prices')
    .map(({ place, of, figure, value, mark, source }) => ({
      section: 'figure',
      step: place.startsWith('step ') ? place.slice('step '.length) : '',
      id: figure,
      name: of,
      note: value,
      mark,
      source,
    }))

/** What each pack of the basket costs, with where that was got. */
export const priceCells = (library: Library, { shopping: list, basket }: Evaluation): readonly Cells[] =>
  list.flatMap(line =>
    line.packs.map(pack => {
      const { mark, source } = priceFigure(pack.priceFrom)
      return {
        section: 'price',
        id: line.material,
        name: nameIn(library)(line.material),
        amount: pack.amount,
        unit: pack.unit,
        cost: major(pack.priceMinor, basket?.currency),
        currency: basket?.currency ?? '',
        note: `one pack from ${pack.supplier}`,
        mark,
        source: source ?? sourceNotStated,
      }
    }),
  )

/** Where what the supplier asks besides its goods was got. */
export const feesMarked = (order: Order): Cells => {
  const { mark, source } = priceFigure(order.priceFrom)
  return { mark, source: source ?? sourceNotStated }
}
