/** What packs on top cost where an order must come to a certain sum. */
export interface Filling {
  /** The least sum of packs that is no smaller than this; infinite where there are none. */
  least(shortMinor: number): number
  /** Packs that come to exactly that sum: so many of each price, by its place in the list. */
  packs(shortMinor: number): readonly number[]
}

/** Sums looked at, in units of the common divisor. */
const mostSums = 4_000_000

/**
 * Sums that packs of these prices can come to, each as often as wanted.
 *
 * Beyond the first run of reachable sums as long as the smallest price, every sum is reachable, so that the list ends early.
 *
 * @param prices whole minor units, above 0
 * @param upTo   no sum beyond this is asked for
 * @returns null where the list would be too long
 */
export function fillingOf(prices: readonly number[], upTo: number): Filling | null {
  const [first = 0] = prices
  if (first === 0) return { least: short => (short <= 0 ? 0 : Number.POSITIVE_INFINITY), packs: () => [] }
  const unit = prices.reduce(divisor)
  const own = prices.map(price => price / unit)
  const smallest = Math.min(...own)
  const end = Math.ceil(upTo / unit) + Math.max(...own)
  // By sum: the price by which it was reached, from 1; 0 = not reachable.
  const by: number[] = [-1]
  let run = 1
  for (let sum = 1; sum <= end && run < smallest; sum++) {
    if (sum > mostSums) return null
    let reached = 0
    for (let at = 0; at < own.length && reached === 0; at++) if (sum >= own[at]! && by[sum - own[at]!] !== 0) reached = at + 1
    by.push(reached)
    run = reached === 0 ? 0 : run + 1
  }
  const leastUnits = (short: number): number => {
    let sum = Math.ceil(short / unit - 1e-9)
    while (sum < by.length && by[sum] === 0) sum++
    return sum
  }
  return {
    least: short => (short <= 0 ? 0 : leastUnits(short) * unit),
    packs: short => {
      const counts = prices.map(() => 0)
      if (short <= 0) return counts
      const at = own.indexOf(smallest)
      let sum = leastUnits(short)
      while (sum >= by.length) {
        sum -= smallest
        counts[at]!++
      }
      for (; sum > 0; sum -= own[by[sum]! - 1]!) counts[by[sum]! - 1]!++
      return counts
    },
  }
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))
