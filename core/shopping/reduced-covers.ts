import type { Offer } from './offers.ts'

/** What is to be bought of one material, and the packs to choose from. */
export interface Wanted {
  readonly offers: readonly Offer[]
  /** In the unit of the offers, above 0, rounding taken off. */
  readonly amount: number
}

/** So many of each offer, in the order of the offers given. */
export interface PacksTaken {
  readonly counts: readonly number[]
  /** At the prices asked with. */
  readonly cost: number
}

/** Branches for one material; more means packs far too small for the need. */
const mostBranches = 50_000

/** Offers with their price as reckoned here, the cheapest by unit first, and for each place the cheapest unit price from there on. */
function ordered(offers: readonly Offer[], priceOf: (offer: Offer) => number) {
  const order = offers
    .map((offer, at) => ({ at, size: offer.size, price: priceOf(offer) }))
    .sort((a, b) => a.price / a.size - b.price / b.size || b.size - a.size || a.at - b.at)
  return order
}

/**
 * The packs that cover an amount at the least sum of prices, which need not be whole.
 *
 * @returns null without offers, or where it takes too much work
 */
export function leastPacks({ offers, amount }: Wanted, priceOf: (offer: Offer) => number): PacksTaken | null {
  const order = ordered(offers, priceOf)
  const counts = offers.map(() => 0)
  let best = Number.POSITIVE_INFINITY
  let bestCounts: readonly number[] | null = null
  let branches = 0
  const walk = (at: number, left: number, cost: number): boolean => {
    if (++branches > mostBranches) return false
    if (left <= 0) {
      if (cost < best) {
        best = cost
        bestCounts = [...counts]
      }
      return true
    }
    const offer = order[at]
    if (offer === undefined || cost + (left * offer.price) / offer.size >= best) return true
    for (let count = Math.ceil(left / offer.size); count >= 0; count--) {
      counts[offer.at] = count
      const goesOn = walk(at + 1, left - count * offer.size, cost + count * offer.price)
      counts[offer.at] = 0
      if (!goesOn) return false
    }
    return true
  }
  return walk(0, amount, 0) && bestCounts !== null ? { counts: bestCounts, cost: best } : null
}

/**
 * Every way to cover an amount at no more than `most`, but for packs on top of a cover: a way that holds another one of these is that one
 * with packs added.
 *
 * @param limit ways and branches at the most
 * @returns null beyond the limit
 */
export function packsWithin(
  { offers, amount }: Wanted,
  priceOf: (offer: Offer) => number,
  most: number,
  limit: number,
): readonly PacksTaken[] | null {
  const order = ordered(offers, priceOf)
  const counts = offers.map(() => 0)
  const found: PacksTaken[] = []
  let branches = 0
  const walk = (at: number, left: number, cost: number): boolean => {
    if (++branches > limit * 4) return false
    if (left <= 0) {
      found.push({ counts: [...counts], cost })
      return found.length <= limit
    }
    const offer = order[at]
    if (offer === undefined || cost + (left * offer.price) / offer.size > most) return true
    for (let count = 0; count <= Math.ceil(left / offer.size); count++) {
      if (cost + count * offer.price > most) break
      counts[offer.at] = count
      const goesOn = walk(at + 1, left - count * offer.size, cost + count * offer.price)
      counts[offer.at] = 0
      if (!goesOn) return false
    }
    return true
  }
  return walk(0, amount, 0) ? found : null
}
