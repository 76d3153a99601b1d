/** Enough that a bucket holds a few tens of ten thousand draws. */
const bucketCount = 512
const counts = new Uint32Array(bucketCount)
/** By bucket: its place among those that are filled, or -1. */
const filled = new Int32Array(bucketCount)
const quantiles = [0.1, 0.5, 0.9] as const

/**
 * Three quantiles (type 7) of many draws, without sorting them: a plan asks this of every step and goal at each move of a slider. Draws are
 * counted into buckets of equal width, and only the buckets in which a wanted order statistic lies are put in order.
 *
 * @param draws finite; left as they are
 * @returns quantiles at 0.1, 0.5 and 0.9
 */
export function percentiles(draws: Float64Array): { readonly p10: number; readonly median: number; readonly p90: number } {
  const n = draws.length
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < n; i++) {
    const value = draws[i]!
    if (value < least) least = value
    if (value > most) most = value
  }
  if (least === most) return { p10: least, median: least, p90: least }
  // Rounding keeps the order, so that no value of a lower bucket is above one of a higher.
  const scale = (bucketCount - 1) / (most - least)
  counts.fill(0)
  for (let i = 0; i < n; i++) counts[((draws[i]! - least) * scale) | 0]!++
  const ranks = quantiles.flatMap(p => [Math.floor((n - 1) * p), Math.min(n - 1, Math.floor((n - 1) * p) + 1)])
  const values = orderStatistics(draws, ranks, least, scale)
  const [p10, median, p90] = quantiles.map((p, i) => {
    const low = values[2 * i]!
    const rank = (n - 1) * p
    return rank === Math.floor(rank) ? low : low + (rank - Math.floor(rank)) * (values[2 * i + 1]! - low)
  })
  return { p10: p10!, median: median!, p90: p90! }
}

/** The values of ranks, from 0 and ascending, by the buckets counted before: one more pass fills the buckets in which they lie. */
function orderStatistics(draws: Float64Array, ranks: readonly number[], least: number, scale: number): readonly number[] {
  filled.fill(-1)
  const buckets: { readonly before: number; readonly values: Float64Array; count: number }[] = []
  let bucket = 0
  let before = 0
  const inBucket = ranks.map(rank => {
    while (before + counts[bucket]! <= rank) before += counts[bucket++]!
    if (filled[bucket] === -1) {
      filled[bucket] = buckets.length
      buckets.push({ before, values: new Float64Array(counts[bucket]!), count: 0 })
    }
    return filled[bucket]!
  })
  for (let i = 0; i < draws.length; i++) {
    const value = draws[i]!
    const at = filled[((value - least) * scale) | 0]!
    if (at === -1) continue
    const into = buckets[at]!
    into.values[into.count++] = value
  }
  for (const { values } of buckets) values.sort()
  return ranks.map((rank, i) => buckets[inBucket[i]!]!.values[rank - buckets[inBucket[i]!]!.before]!)
}

/** Share of draws at or above a wanted value; a rounding error of 1 part in 10^9 counts as reached. */
export function chanceOf(draws: Float64Array, wanted: number): number {
  const least = wanted * (1 - 1e-9)
  let reached = 0
  for (let i = 0; i < draws.length; i++) if (draws[i]! >= least) reached++
  return reached / draws.length
}
