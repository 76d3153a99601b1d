/** Low, typical and high yield: 10th, 50th and 90th percentile, as fractions. */
export interface YieldRange {
  readonly low: number
  readonly typical: number
  readonly high: number
}

/** Where a range comes from. */
export type YieldOrigin = 'library' | 'own' | 'reports' | 'first-time-shift'

/** What one run of a step may give: a monotone map of a normal score, and what is known of that score. */
export interface Belief {
  readonly isolation: boolean
  /** At score 0: logit of the typical yield, or for an isolation its logarithm. */
  readonly m: number
  /** Per unit of score below and above 0. */
  readonly sLow: number
  readonly sHigh: number
  /** What this bench is known to differ by: mean and variance of b; 0 and the bench's share without own runs. */
  readonly benchMean: number
  readonly benchVariance: number
  /** How one run differs from the next. */
  readonly runVariance: number
  /** Own runs it has learned from. */
  readonly runs: number
  /** The range it was made from, before own runs. */
  readonly range: YieldRange
  readonly origin: YieldOrigin
}

/** Score of the 90th percentile of a standard normal. From memory; a test holds it against the inverse normal. */
export const ninetiethScore = 1.28155

/**
 * A first attempt against the literature, where a step has fewer than three reports of its own: shift of logit(median) and spread.
 * Medians over the bundled reactions with three or more reports, rounded; a test recomputes both.
 */
export const firstTime = { shift: -0.6, spread: 1.1, reportsNeeded: 3, reportsForPercentiles: 5 } as const

/** Inside the map a yield of theory is kept within these, so that logit stays finite. */
const bounds = { least: 0.005, most: 0.995 }
/** A recovery has no upper bound but the whole; this keeps its logarithm finite where a source states a run that gave nothing. */
const leastRecovery = 1e-4
const leastSpread = 0.1

const logit = (fraction: number): number => Math.log(fraction / (1 - fraction))
const within = (fraction: number, isolation: boolean): number =>
  isolation ? Math.min(1, Math.max(leastRecovery, fraction)) : Math.min(bounds.most, Math.max(bounds.least, fraction))
const scale = (fraction: number, isolation: boolean): number =>
  isolation ? Math.log(within(fraction, true)) : logit(within(fraction, false))

/**
 * The prior belief about a yield.
 *
 * @param range       as fractions of theory, or grams per gram of feedstock for an isolation
 * @param benchShare  part of the score's variance that belongs to the bench, 0 to 1 (an assumption, one half unless set)
 * Source: definition 7 of the design; common practice, no source.
 */
export function beliefOf(range: YieldRange, isolation: boolean, benchShare: number, origin: YieldOrigin = 'library'): Belief {
  const m = scale(range.typical, isolation)
  const shifted = origin === 'first-time-shift'
  const sLow = shifted ? firstTime.spread : Math.max(leastSpread, (m - scale(range.low, isolation)) / ninetiethScore)
  const sHigh = shifted ? firstTime.spread : Math.max(leastSpread, (scale(range.high, isolation) - m) / ninetiethScore)
  const prior = { benchMean: 0, benchVariance: benchShare, runVariance: 1 - benchShare, runs: 0 }
  return { isolation, m, sLow, sHigh, ...prior, range, origin }
}

/** Yield at a normal score: fraction of theory, or grams per gram of feedstock. */
export function yieldAt(belief: Belief, score: number): number {
  const x = belief.m + score * (score < 0 ? belief.sLow : belief.sHigh)
  return within(belief.isolation ? Math.exp(x) : 1 / (1 + Math.exp(-x)), belief.isolation)
}

/** Turns normal scores into the yields that {@link yieldAt} gives for them, in place. */
export function toYields({ isolation, m, sLow, sHigh }: Belief, scores: Float64Array): void {
  for (let k = 0; k < scores.length; k++) {
    const score = scores[k]!
    const x = m + score * (score < 0 ? sLow : sHigh)
    scores[k] = isolation
      ? Math.min(1, Math.max(leastRecovery, Math.exp(x)))
      : Math.min(bounds.most, Math.max(bounds.least, 1 / (1 + Math.exp(-x))))
  }
}

/** Score of a yield, the inverse of {@link yieldAt}, clipped at 3 either way so that one odd run cannot carry the belief off. */
export function scoreOf(belief: Belief, yieldFraction: number): number {
  const d = scale(yieldFraction, belief.isolation) - belief.m
  return Math.max(-3, Math.min(3, d / (d < 0 ? belief.sLow : belief.sHigh)))
}

/** Quantiles of the next run: low, typical, high as the plan uses them. Without own runs these are the stated range. */
export function predicted(belief: Belief): YieldRange {
  if (belief.runs === 0) return belief.range
  const spread = ninetiethScore * Math.sqrt(belief.benchVariance + belief.runVariance)
  const { benchMean } = belief
  return { low: yieldAt(belief, benchMean - spread), typical: yieldAt(belief, benchMean), high: yieldAt(belief, benchMean + spread) }
}

/**
 * The range a first attempt gets: what people report where three or more do (median; 10th and 90th percentile by linear interpolation
 * from five on, else least and most), else the literature's, shifted.
 *
 * @param reports yields people really got, fractions
 */
export function firstTimeRange(
  range: YieldRange,
  isolation: boolean,
  reports: readonly number[],
): { readonly range: YieldRange; readonly origin: YieldOrigin } {
  if (reports.length >= firstTime.reportsNeeded) {
    const sorted = [...reports].sort((a, b) => a - b)
    const percentile = sorted.length >= firstTime.reportsForPercentiles
    const low = quantile(sorted, percentile ? 0.1 : 0)
    const high = quantile(sorted, percentile ? 0.9 : 1)
    return { range: { low, typical: quantile(sorted, 0.5), high }, origin: 'reports' }
  }
  const m = scale(range.typical, isolation) + firstTime.shift
  const back = (x: number): number => (isolation ? within(Math.exp(x), true) : 1 / (1 + Math.exp(-x)))
  const d = ninetiethScore * firstTime.spread
  return { range: { low: back(m - d), typical: back(m), high: back(m + d) }, origin: 'first-time-shift' }
}

/**
 * Quantile by linear interpolation between order statistics (type 7 of Hyndman and Fan 1996).
 *
 * @param sorted ascending, at least one value
 * @param p      0 to 1
 */
export function quantile(sorted: ArrayLike<number>, p: number): number {
  const at = (sorted.length - 1) * p
  const below = Math.floor(at)
  const low = sorted[below]
  if (low === undefined) throw new RangeError('a quantile of nothing')
  const high = sorted[below + 1]
  return high === undefined ? low : low + (at - below) * (high - low)
}
