import { usableMakings } from './basket-model.ts'
import { demandOf, type Item, rounding } from './decision.ts'
import type { Making } from './made-up.ts'
import type { Offer } from './offers.ts'

/** One choice of recipes, after which every material is bought for itself alone. */
export interface RecipeChoice {
  readonly made: ReadonlyMap<Making, number>
  readonly wanted: readonly { readonly item: Item; readonly amount: number }[]
}

/**
 * Every choice of one recipe for each solution that is to be made up.
 *
 * @param most choices at the most
 * @returns null beyond that; empty where some solution cannot be made up at all
 */
export function recipeChoices(items: readonly Item[], most: number): readonly RecipeChoice[] | null {
  const usable = usableMakings(items)
  let choices: ReadonlyMap<Making, number>[] = [new Map()]
  for (const { material, need, stock, makings } of items) {
    const amount = need - stock
    if (makings.length === 0 || amount <= need * rounding) continue
    const own = usable.filter(making => making.target === material.id)
    choices = choices.flatMap(before => own.map(making => new Map([...before, [making, amount]])))
    if (choices.length > most) return null
  }
  return choices.flatMap(made => {
    const wanted: { item: Item; amount: number }[] = []
    for (const item of items) {
      if ([...made.keys()].some(making => making.target === item.material.id)) continue
      const demand = demandOf(item.material.id, item.need, made)
      const amount = demand - item.stock - demand * rounding
      if (amount <= 0) continue
      if (item.offers.length === 0) return []
      wanted.push({ item, amount })
    }
    return [{ made, wanted }]
  })
}

/** Packs that may be bought on top to reach a minimum order: of whatever is, or may be, short on the shelf. */
export function packsOnTop(items: readonly Item[]): readonly { readonly item: Item; readonly offer: Offer }[] {
  const usable = usableMakings(items)
  const needOf = new Map(items.map(item => [item.material.id, item.need]))
  return items.flatMap(item => {
    const { id } = item.material
    const drawn = usable.reduce(
      (sum, making) =>
        sum +
        needOf.get(making.target)! * ((making.source === id ? making.sourcePerUnit : 0) + (making.rest === id ? making.restPerUnit : 0)),
      0,
    )
    return item.need + drawn > item.stock ? item.offers.filter(offer => offer.priceMinor > 0).map(offer => ({ item, offer })) : []
  })
}
