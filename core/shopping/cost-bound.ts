import { type Cover, coversOf } from './covers.ts'
import { type Item, rounding } from './decision.ts'
import { isHazardousGood } from './hazardous-goods.ts'
import type { Supplier } from './packs.ts'

/** Beyond so many suppliers their groups are too many to go through; then carriage and fees count once, at the least that any of them asks. */
const mostSuppliers = 7

/**
 * What no basket for these items costs less than, without a solver: for every group of suppliers (and of hazardous-goods fees paid) the
 * carriage, the fees and the cheapest packs that cover each need. Minimum orders are left out, and so is what is made up into something
 * else: both only ever make a basket dearer. Where there are neither, this is the cost of the cheapest basket itself.
 *
 * @returns minor units
 */
export function costBound(items: readonly Item[]): number {
  const bought = items.flatMap(item => {
    const toBuy = item.need - item.stock
    if (item.makings.length > 0 || item.offers.length === 0 || toBuy <= item.need * rounding) return []
    const covers = coversOf(item.offers, toBuy, item.need * rounding)
    // Part packs at the best unit price cost no more than whole ones.
    const plain = Math.ceil(toBuy * (1 - rounding) * Math.min(...item.offers.map(o => o.priceMinor / o.size)) - 1e-6)
    return [{ hazardous: isHazardousGood(item.material), covers, plain }]
  })
  const suppliers = [...new Set(bought.flatMap(one => one.covers ?? []).flatMap(cover => cover.suppliers))]
  const alone = bought.reduce((sum, { covers, plain }) => sum + (covers === null ? plain : 0), 0)
  if (suppliers.length > mostSuppliers) {
    const leastOf = (of: (supplier: Supplier) => number) => Math.min(...suppliers.map(of))
    const fee = bought.some(one => one.hazardous) ? leastOf(s => s.hazardousFeeMinor) : 0
    const goodsMinor = bought.reduce((sum, { covers }) => sum + (covers === null ? 0 : Math.min(...covers.map(c => c.costMinor))), 0)
    return alone + goodsMinor + leastOf(s => s.carriageMinor) + fee
  }
  const maskOf = (cover: Cover) => cover.suppliers.reduce((mask, supplier) => mask | (1 << suppliers.indexOf(supplier)), 0)
  const goods = bought.flatMap(({ hazardous, covers }) =>
    covers === null ? [] : [{ hazardous, covers: covers.map(cover => ({ mask: maskOf(cover), costMinor: cover.costMinor })) }],
  )
  const sumOver = (mask: number, of: (supplier: Supplier) => number) =>
    suppliers.reduce((sum, supplier, at) => sum + ((mask >> at) & 1 ? of(supplier) : 0), 0)
  const leastIn = (mask: number, which: boolean): number => {
    let sum = 0
    for (const { hazardous, covers } of goods) {
      if (hazardous !== which) continue
      let least = Number.POSITIVE_INFINITY
      for (const cover of covers) if ((cover.mask & ~mask) === 0 && cover.costMinor < least) least = cover.costMinor
      sum += least
    }
    return sum
  }
  let best = Number.POSITIVE_INFINITY
  const all = (1 << suppliers.length) - 1
  for (let open = 0; open <= all; open++) {
    const plain = sumOver(open, s => s.carriageMinor) + leastIn(open, false)
    if (plain >= best) continue
    // Every part of the open group, the empty one among them.
    for (let paying = open; ; paying = (paying - 1) & open) {
      best = Math.min(best, plain + sumOver(paying, s => s.hazardousFeeMinor) + leastIn(paying, true))
      if (paying === 0) break
    }
  }
  return alone + best
}
