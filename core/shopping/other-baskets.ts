import { type Aim, basketModel } from './basket-model.ts'
import { type Decision, demandOf, type Item } from './decision.ts'
import { asked, coversOfItems, type Decided } from './least-cost.ts'
import { leastLeft } from './least-left.ts'
import { cheapestWithMinimums } from './minimum-orders.ts'
import { ordersOf } from './orders.ts'
import type { Basket, OtherBasket, Solver } from './shopping.ts'
import { type SupplyInput, supplyOf } from './supply.ts'

/**
 * Two more baskets for the same needs: from the fewest suppliers, and with the least left over (each material valued at its cheapest price
 * per unit, since grams of one and millilitres of another cannot be added); each the cheapest of its kind.
 *
 * @param basket of least cost, for comparison
 * @returns those that differ from it; none where nothing is bought
 */
export function otherBaskets(input: SupplyInput, basket: Basket, solver: Solver): readonly OtherBasket[] {
  const { items } = supplyOf(input)
  const baseMinor = basket.totalMinor
  if (baseMinor === null || basket.orders.length === 0) return []
  const covers = coversOfItems(items)
  // What is out of reach stays as it is in the basket: no other choice of packs brings it nearer.
  const mostMissing = basket.priceUnknown.filter(id => items.some(item => item.material.id === id && item.makings.length > 0)).length
  const told = (
    kind: OtherBasket['kind'],
    { decision, costMinor }: Pick<Decided, 'decision' | 'costMinor'>,
    proven: boolean,
  ): OtherBasket => ({
    kind,
    totalMinor: costMinor,
    moreMinor: costMinor - baseMinor,
    orders: ordersOf(input.library, decision.counts),
    packs: [...decision.counts].map(([{ pack, supplier, priceMinor, stated }, count]) => ({
      material: pack.material,
      supplier: supplier.id,
      amount: pack.amount,
      unit: pack.unit,
      count,
      priceMinor,
      priceFrom: stated.price,
    })),
    leftWorthMinor: leftWorth(items, decision),
    proven,
  })
  /** The best by one thing, and of those the cheapest: two programs. */
  const programs = (kind: OtherBasket['kind'], least: Aim['least'], held: (decision: Decision) => Partial<Aim>): OtherBasket[] => {
    const model = basketModel(items, { least, mostMissing, minimums: true }, covers)
    const answer = solver(model.text)
    const first = answer.status === 'optimal' || answer.status === 'feasible' ? model.read(answer.columns) : null
    if (first === null) return []
    const isBest = answer.status === 'optimal'
    const aim = held(first)
    const own =
      mostMissing === 0 && aim.mostSuppliers !== undefined ? cheapestWithMinimums(items, { mostSuppliers: aim.mostSuppliers }) : null
    if (own !== null && own !== 'infeasible') return [told(kind, own, isBest && own.boundMinor === own.costMinor)]
    const { decided } = asked(input.library, items, covers, { least: 'cost', mostMissing, minimums: true, ...aim }, solver)
    return decided === null ? [] : [told(kind, decided, isBest && decided.boundMinor === decided.costMinor)]
  }
  const fewest = programs('fewest-suppliers', 'suppliers', decision => ({
    mostSuppliers: ordersOf(input.library, decision.counts).length,
  }))
  const plain = mostMissing === 0 ? leastLeft(items) : null
  if (plain !== null) return [...fewest, told('least-left', plain, true)]
  const isSmall = items.reduce((sum, item) => sum + item.offers.length, 0) <= mostOffers
  return isSmall ? [...fewest, ...programs('least-left', 'left', decision => ({ mostLeft: paidFor(items, decision) }))] : fewest
}

/** Beyond so many offers the program of what is left over takes longer than its answer is worth; then that basket is not told. */
const mostOffers = 60

const cheapestUnit = (item: Item): number => Math.min(...item.offers.map(offer => offer.priceMinor / offer.size))

const boughtOf = (item: Item, { counts }: Decision): number =>
  item.offers.reduce((sum, offer) => sum + offer.size * (counts.get(offer) ?? 0), 0)

/** What the program counts: all that is bought less what is made up into something, at the cheapest price per unit. */
function paidFor(items: readonly Item[], decision: Decision): number {
  return items.reduce((sum, item) => {
    if (item.offers.length === 0) return sum
    const drawn = demandOf(item.material.id, 0, decision.made)
    return sum + (boughtOf(item, decision) - drawn) * cheapestUnit(item)
  }, 0)
}

/** What is left over once everything is made, at the cheapest price per unit, in minor units. */
export function leftWorth(items: readonly Item[], decision: Decision): number {
  return items.reduce((sum, item) => {
    const bought = boughtOf(item, decision)
    if (bought === 0) return sum
    const toBuy = Math.max(0, demandOf(item.material.id, item.need, decision.made) - item.stock)
    return sum + Math.max(0, bought - toBuy) * cheapestUnit(item)
  }, 0)
}
