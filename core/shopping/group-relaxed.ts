import type { Item } from './decision.ts'
import type { Filling } from './filling.ts'
import type { Offer } from './offers.ts'
import { leastPacks, type Wanted } from './reduced-covers.ts'
import { isOpenTo, type SupplierGroup } from './supplier-groups.ts'

/** One group of suppliers with all that its baskets are reckoned from. */
export interface OpenGroup {
  readonly group: SupplierGroup
  /** By material: the packs of the group, and how much. */
  readonly wanted: readonly Wanted[]
  /** Of the group's suppliers in their order: the minimum order, 0 = none. */
  readonly minimums: readonly number[]
  readonly fillings: readonly Filling[]
}

/** Packs for every material, before any are added on top. */
export interface Picked {
  /** By material, in the order of `wanted`: counts of its offers. */
  readonly counts: readonly (readonly number[])[]
  /** By supplier. */
  readonly goodsMinor: readonly number[]
}

/** Subgradient steps in all, and how many of them may bring nothing before they are halved. */
const steps = 60
const mostInVain = 3

/** What the group costs at the least, by one set of prices of reaching a minimum. */
export interface Relaxed {
  readonly boundMinor: number
  /** By supplier, from 0 to 1: what each minor unit that an order is short of its minimum is charged. */
  readonly charges: readonly number[]
  readonly picked: Picked
}

export function openGroup(group: SupplierGroup, fillings: readonly Filling[]): OpenGroup {
  return {
    group,
    wanted: group.choice.wanted.map(({ item, amount }) => ({ amount, offers: offersIn(group, item) })),
    minimums: group.suppliers.map(supplier => supplier.minimumOrderMinor ?? 0),
    fillings,
  }
}

const offersIn = (group: SupplierGroup, item: Item): readonly Offer[] => item.offers.filter(offer => isOpenTo(group, item, offer))

/** Prices with part of each given back, since they count towards the minimum order. */
export const reducedPrice =
  ({ group }: OpenGroup, charges: readonly number[]) =>
  (offer: Offer): number =>
    offer.priceMinor * (1 - charges[group.suppliers.indexOf(offer.supplier)]!)

export function goodsOf({ group, wanted }: OpenGroup, counts: Picked['counts']): readonly number[] {
  const goods = group.suppliers.map(() => 0)
  for (const [index, { offers }] of wanted.entries())
    for (const [at, offer] of offers.entries()) {
      const count = counts[index]![at]!
      if (count > 0) goods[group.suppliers.indexOf(offer.supplier)]! += count * offer.priceMinor
    }
  return goods
}

/** What a pick costs once packs are added until every minimum is reached. */
export const filledCost = ({ group, minimums, fillings }: OpenGroup, goodsMinor: readonly number[]): number =>
  goodsMinor.reduce((sum, goods, at) => sum + goods + fillings[at]!.least(minimums[at]! - goods), group.fixedMinor)

/**
 * The Lagrangian relaxation of the minimum orders: whatever is charged for falling short (no more than the shortfall itself, since packs on
 * top make it good), no basket costs less than the cheapest at those charges. The charges are sought that bound it best.
 *
 * @param best   cost of the best basket known, by which the steps are measured
 * @param onPick told of every pick met on the way, each of which makes a basket
 * @param from   charges to begin with
 * @returns null where some material takes too much work
 */
export function relaxed(
  open: OpenGroup,
  best: () => number,
  onPick: (picked: Picked) => void,
  from: readonly number[] = open.minimums.map(() => 0),
): Relaxed | null {
  const { group, wanted, minimums } = open
  const at = (charges: readonly number[]): Relaxed | null => {
    const priceOf = reducedPrice(open, charges)
    const counts: (readonly number[])[] = []
    let boundMinor = group.fixedMinor + charges.reduce((sum, charge, s) => sum + charge * minimums[s]!, 0)
    for (const one of wanted) {
      const found = leastPacks(one, priceOf)
      if (found === null) return null
      counts.push(found.counts)
      boundMinor += found.cost
    }
    const picked = { counts, goodsMinor: goodsOf(open, counts) }
    onPick(picked)
    return { boundMinor, charges, picked }
  }
  const first = at(from)
  if (first === null) return null
  let top = first
  let now = first
  let pace = 1
  let inVain = 0
  for (let step = 0; step < steps && Math.ceil(top.boundMinor - 1e-6) < best(); step++) {
    const slope = minimums.map((minimum, s) => {
      const short = minimum - now.picked.goodsMinor[s]!
      const charge = now.charges[s]!
      return minimum === 0 || (charge === 0 && short < 0) || (charge === 1 && short > 0) ? 0 : short
    })
    const square = slope.reduce((sum, one) => sum + one * one, 0)
    if (square === 0) break
    const stride = (pace * Math.max(1, best() - now.boundMinor)) / square
    const next = at(now.charges.map((charge, s) => Math.min(1, Math.max(0, charge + stride * slope[s]!))))
    if (next === null) return null
    now = next
    if (next.boundMinor > top.boundMinor) {
      top = next
      inVain = 0
    } else if (++inVain > mostInVain) {
      // Too far: back to the best charges, and on in smaller steps.
      now = top
      pace /= 2
      inVain = 0
    }
  }
  return top
}
