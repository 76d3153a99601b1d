/** Enough that a bucket holds a few tens of ten thousand draws. */
const bucketCount = 512
const counts = new Uint32Array(bucketCount)

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
  const at = (p: number): number => {
    const rank = (n - 1) * p
    const below = Math.floor(rank)
    const low = orderStatistic(draws, below, least, scale)
    return rank === below ? low : low + (rank - below) * (orderStatistic(draws, below + 1, least, scale) - low)
  }
  return { p10: at(0.1), median: at(0.5), p90: at(0.9) }
}

/** The value of a rank, from 0, by the buckets counted before. */
function orderStatistic(draws: Float64Array, rank: number, least: number, scale: number): number {
  let bucket = 0
  let before = 0
  while (before + counts[bucket]! <= rank) before += counts[bucket++]!
  const inside = new Float64Array(counts[bucket]!)
  for (let i = 0, k = 0; k < inside.length; i++) {
    const value = draws[i]!
    if ((((value - least) * scale) | 0) === bucket) inside[k++] = value
  }
  return inside.sort()[rank - before]!
}

/** Share of draws at or above a wanted value; a rounding error of 1 part in 10^9 counts as reached. */
export function chanceOf(draws: Float64Array, wanted: number): number {
  const least = wanted * (1 - 1e-9)
  let reached = 0
  for (let i = 0; i < draws.length; i++) if (draws[i]! >= least) reached++
  return reached / draws.length
}
