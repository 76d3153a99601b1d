import type { Cover } from './covers.ts'
import type { Offer } from './offers.ts'
import type { Supplier } from './packs.ts'

/** Sums of pack sizes looked at for one material. */
const mostSums = 4000

/**
 * For every group of suppliers the cheapest packs that come to the least amount above the need that any packs of all suppliers come to.
 *
 * @param amount to be covered, in the unit of the offers; above 0
 * @returns null where there are too many sums
 */
export function leastLeftCovers(offers: readonly Offer[], amount: number): readonly Cover[] | null {
  const suppliers = [...new Set(offers.map(offer => offer.supplier))]
  const sums = sumsUpTo([...new Set(offers.map(offer => offer.size))], amount)
  if (sums === null || suppliers.length > 6) return null
  const covers: Cover[] = []
  for (let group = 1; group < 1 << suppliers.length; group++) {
    const own = suppliers.filter((_, at) => (group >> at) & 1)
    const found = cheapestTo(
      sums,
      offers.filter(offer => own.includes(offer.supplier)),
      own,
    )
    // A larger group that is no cheaper than one within it has nothing to add.
    if (found !== null && !covers.some(c => c.costMinor <= found.costMinor && c.suppliers.every(s => own.includes(s)))) covers.push(found)
  }
  return covers
}

/** Twelve digits tell sums of pack sizes apart; the rest is rounding. */
const keyOf = (sum: number): number => Number(sum.toPrecision(12))

/** Every sum of sizes below the amount, and as the last one the least that reaches it, in rising order. */
function sumsUpTo(sizes: readonly number[], amount: number): readonly number[] | null {
  const known = new Set([0])
  let least = Number.POSITIVE_INFINITY
  const open = [0]
  for (let sum = open.pop(); sum !== undefined; sum = open.pop())
    for (const size of sizes) {
      const next = keyOf(sum + size)
      if (next >= amount) least = Math.min(least, next)
      else if (!known.has(next)) {
        if (known.size >= mostSums) return null
        known.add(next)
        open.push(next)
      }
    }
  return [...[...known].sort((a, b) => a - b), least]
}

/** The cheapest packs of these offers that come to exactly the last of the sums. */
function cheapestTo(sums: readonly number[], offers: readonly Offer[], suppliers: readonly Supplier[]): Cover | null {
  const at = new Map(sums.map((sum, index) => [sum, index]))
  const cost = sums.map(() => Number.POSITIVE_INFINITY)
  const last: (readonly [from: number, offer: Offer])[] = []
  cost[0] = 0
  for (const [index, sum] of sums.entries()) {
    if (cost[index] === Number.POSITIVE_INFINITY || index === sums.length - 1) continue
    for (const offer of offers) {
      const to = at.get(keyOf(sum + offer.size))
      if (to === undefined || cost[index]! + offer.priceMinor >= cost[to]!) continue
      cost[to] = cost[index]! + offer.priceMinor
      last[to] = [index, offer]
    }
  }
  const end = sums.length - 1
  if (cost[end] === Number.POSITIVE_INFINITY) return null
  const counts = new Map<Offer, number>()
  for (let index = end; index > 0; index = last[index]![0]) counts.set(last[index]![1], (counts.get(last[index]![1]) ?? 0) + 1)
  return { suppliers, costMinor: cost[end]!, counts }
}
