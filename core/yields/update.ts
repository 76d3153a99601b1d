import { type Belief, scoreOf } from './belief.ts'

/**
 * What own runs teach: each gives a score z = b + r by the inverse map, and b is updated by the normal-normal rule with known variances.
 * With equal halves: precision 2 + 2n, mean 2 sum(z) / (2 + 2n). The next run's score then has this mean and the variance of b plus that of r.
 *
 * @param yields of the runs, fractions; a failed run or one above theory is not among them
 * Source: normal model with known variance, e.g. Johnson, Ott, Dogucu: Bayes Rules!, chapter 5.
 */
export function updated(belief: Belief, yields: readonly number[]): Belief {
  if (yields.length === 0) return belief
  const sum = yields.reduce((total, y) => total + scoreOf(belief, y), 0)
  const { benchMean, benchVariance, runVariance } = belief
  const posterior = normalPosterior({ mean: benchMean, variance: benchVariance }, runVariance, sum / yields.length, yields.length)
  return { ...belief, benchMean: posterior.mean, benchVariance: posterior.variance, runs: belief.runs + yields.length }
}

/**
 * Posterior of a mean under a normal prior, from n observations of known variance. Variances of 0 mean "known exactly".
 *
 * @example normalPosterior({ mean: 6.5, variance: 0.16 }, 0.25, 5.735, 25) // mean 5.78, variance 0.00941
 */
export function normalPosterior(
  prior: { readonly mean: number; readonly variance: number },
  knownVariance: number,
  observedMean: number,
  n: number,
): { readonly mean: number; readonly variance: number } {
  if (prior.variance === 0 || n === 0) return prior
  if (knownVariance === 0) return { mean: observedMean, variance: 0 }
  const precision = 1 / prior.variance + n / knownVariance
  return { mean: (prior.mean / prior.variance + (n * observedMean) / knownVariance) / precision, variance: 1 / precision }
}
