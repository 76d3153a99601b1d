import type { Cover } from './covers.ts'
import { type Decision, demandOf, type Item, reachesMinimums } from './decision.ts'
import { leastLeftCovers } from './exact-covers.ts'
import { isHazardousGood } from './hazardous-goods.ts'
import type { Offer } from './offers.ts'
import { type RecipeChoice, recipeChoices } from './recipe-choices.ts'
import { supplierGroups } from './supplier-groups.ts'

const mostChoices = 64

type CoversBy = (offers: readonly Offer[], amount: number) => readonly Cover[] | null

/**
 * The basket that leaves least over, each material valued at its cheapest price per unit, and of those the cheapest. What is left of one
 * material has nothing to do with another, so that each is bought as near to its need as packs come; the suppliers are chosen then.
 *
 * @returns null where there are too many suppliers, recipes or sums of packs, or where a minimum order would not be reached
 */
export function leastLeft(items: readonly Item[]): { readonly decision: Decision; readonly costMinor: number } | null {
  const all = recipeChoices(items, mostChoices)
  if (all === null) return null
  const known = new Map<string, readonly Cover[] | null>()
  const coversBy: CoversBy = (offers, amount) => {
    const key = `${offers[0]!.pack.material} ${amount}`
    if (!known.has(key)) known.set(key, leastLeftCovers(offers, amount))
    return known.get(key)!
  }
  const lefts = all.map(choice => leftOf(items, choice, coversBy))
  const least = Math.min(...lefts.map(left => left ?? Number.POSITIVE_INFINITY))
  const choices = all.filter((_, at) => lefts[at] !== null && lefts[at]! <= least + 1e-6 * Math.max(1, Math.abs(least)))
  const suppliers = [...new Set(items.flatMap(item => item.offers).map(offer => offer.supplier))]
  const best = supplierGroups(choices, suppliers, suppliers.length, coversBy)?.[0]
  if (best === undefined) return null
  const counts = new Map<Offer, number>()
  for (const { item, amount } of best.choice.wanted) {
    const within = isHazardousGood(item.material) ? [...best.hazardousFrom] : best.suppliers
    const covers = (coversBy(item.offers, amount) ?? []).filter(cover => cover.suppliers.every(s => within.includes(s)))
    const cheapest = covers.reduce((a, b) => (b.costMinor < a.costMinor ? b : a))
    for (const [offer, count] of cheapest.counts) counts.set(offer, count)
  }
  const decision = { counts, made: best.choice.made, missing: new Set<string>() }
  return reachesMinimums(decision) ? { decision, costMinor: best.boundMinor } : null
}

/** What a choice of recipes leaves over at the least; null where some material has too many sums. */
function leftOf(items: readonly Item[], { made, wanted }: RecipeChoice, coversBy: CoversBy): number | null {
  let left = 0
  for (const item of items) {
    if (item.offers.length === 0) continue
    const worth = Math.min(...item.offers.map(offer => offer.priceMinor / offer.size))
    const own = wanted.find(one => one.item === item)
    const covers = own === undefined ? [] : coversBy(item.offers, own.amount)
    if (covers === null) return null
    const [first] = covers
    const bought = first === undefined ? 0 : [...first.counts].reduce((sum, [offer, count]) => sum + offer.size * count, 0)
    left += (bought - demandOf(item.material.id, 0, made)) * worth
  }
  return left
}
