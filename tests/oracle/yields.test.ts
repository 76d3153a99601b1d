import { errorFunction, medianSorted, quantile as quantileOfStatistics, quantileSorted, sampleStandardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { beliefOf, firstTime, ninetiethScore, predicted, quantile, yieldAt } from '../../core/yields/belief.ts'
import { drawCount, fnv1a, scores } from '../../core/yields/draw.ts'
import { normalScore } from '../../core/yields/normal.ts'
import { nthSmallest } from '../../core/yields/nth-smallest.ts'
import { percentiles } from '../../core/yields/percentiles.ts'
import { normalPosterior, updated } from '../../core/yields/update.ts'
import { bundled } from '../../server/library/bundled.ts'
import { checkValuesOf } from '../support/check-values.ts'

describe('inverse normal', () => {
  it.each([
    // Published with the algorithm: Wichura 1988, AS 241, values quoted in the R documentation of qnorm; from memory.
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167814],
    [1e-20, -9.26234008979841],
    // NIST/SEMATECH e-Handbook, table of the normal distribution: 1.960 and 2.576, here to all digits, from memory.
    [0.975, 1.959963984540054],
    [0.995, 2.5758293035489],
    [0.5, 0],
  ])('at %f', (p, score) => {
    expect(normalScore(p)).toBeCloseTo(score, 12)
  })

  it('undoes the error function of an independent library', () => {
    // That one states an error of at most 1.2e-7.
    for (let p = 0.01; p < 1; p += 0.01) {
      expect(Math.abs((1 + errorFunction(normalScore(p) / Math.SQRT2)) / 2 - p)).toBeLessThan(1.2e-7)
    }
  })

  it('gives the score of the 90th percentile that the maps use', () => {
    expect(normalScore(0.9)).toBeCloseTo(ninetiethScore, 5)
  })

  it.each(checkValuesOf('quantile-lognormal', 4))('$id', ({ inputs, expected, tolerance }) => {
    const x = Math.exp(inputs.mu + inputs.sigma * normalScore(inputs.p))
    expect(Math.abs(x - expected.x)).toBeLessThanOrEqual(tolerance.rel! * expected.x)
  })
})

describe('quantiles', () => {
  // Hyndman and Fan 1996, type 7: 1, 2, 3, 4 has quartiles 1.75, 2.5, 3.25, as R prints them.
  it('are of type 7', () => {
    expect([0.25, 0.5, 0.75].map(p => quantile([1, 2, 3, 4], p))).toEqual([1.75, 2.5, 3.25])
  })

  it('by selection are those by sorting, and near those of an independent library', () => {
    for (const part of ['b', 'r1', 'r2', 'r3']) {
      const draws = scores('some-step', part, 7).map(z => 1 / (1 + Math.exp(-1 - 0.7 * z)))
      const found = percentiles(draws)
      const sorted = [...draws].sort((a, b) => a - b)
      expect(found).toEqual({ p10: quantile(sorted, 0.1), median: quantile(sorted, 0.5), p90: quantile(sorted, 0.9) })
      expect(found.median).toBe(medianSorted(sorted))
      // Another type of quantile: it may lie one order statistic off.
      expect(Math.abs(found.p10 - quantileSorted(sorted, 0.1))).toBeLessThanOrEqual(sorted[1000]! - sorted[998]!)
      expect(Math.abs(found.p90 - quantileOfStatistics(sorted, 0.9))).toBeLessThanOrEqual(sorted[9001]! - sorted[8998]!)
    }
  })

  it('and single ranks by selection are those of a sorted list: ties, rising, falling, infinite', () => {
    const lists = [
      scores('some-step', 'b', 7),
      Float64Array.from({ length: 1001 }, (_, i) => i % 7),
      Float64Array.from({ length: 1000 }, (_, i) => i),
      Float64Array.from({ length: 1000 }, (_, i) => 1 / (i % 11)),
    ]
    for (const list of lists) {
      const sorted = Float64Array.from(list).sort()
      for (let rank = 0; rank < list.length; rank += 83) {
        expect(nthSmallest(Float64Array.from(list), rank)).toBe(sorted[rank])
        expect(nthSmallest(list.toReversed(), rank)).toBe(sorted[rank])
      }
      expect(nthSmallest(Float64Array.from(list), list.length - 1)).toBe(sorted.at(-1))
    }
  })

  it('stand over ties, short lists and draws that were sorted before', () => {
    expect(percentiles(Float64Array.of(5, 5, 5, 5))).toEqual({ p10: 5, median: 5, p90: 5 })
    expect(percentiles(Float64Array.of(3))).toEqual({ p10: 3, median: 3, p90: 3 })
    const rising = Float64Array.from({ length: 101 }, (_, i) => i)
    expect(percentiles(rising)).toEqual({ p10: 10, median: 50, p90: 90 })
    expect(percentiles(rising.toReversed())).toEqual({ p10: 10, median: 50, p90: 90 })
  })
})

describe('streams of scores', () => {
  // Check values of RFC 9923 (FNV), 32 bits, variant 1a.
  it.each([
    ['', 0x811c9dc5],
    ['a', 0xe40c292c],
    ['foobar', 0xbf9cf968],
  ])('hash "%s" by FNV-1a', (text, hash) => {
    expect(fnv1a(text)).toBe(hash)
  })

  it('are the 10,000 strata, each once', () => {
    const sorted = scores('some-step', 'b', 3).toSorted()
    expect(sorted).toHaveLength(drawCount)
    for (let k = 0; k < drawCount; k++) expect(sorted[k]).toBe(normalScore((k + 0.5) / drawCount))
  })

  it('are the same for the same step, part and seed, and others for others', () => {
    const one = scores('some-step', 'b', 3)
    expect(scores('some-step', 'b', 3)).toEqual(one)
    for (const other of [scores('some-step', 'r1', 3), scores('other-step', 'b', 3), scores('some-step', 'b', 4)])
      expect(other).not.toEqual(one)
  })

  // 1 / sqrt(10,000) is the standard deviation of a correlation of independent draws; four of them.
  it('are independent of one another', () => {
    const all = ['b', 'r1', 'r2'].flatMap(part => ['x', 'y', 'z'].map(step => scores(step, part, 1)))
    for (const [i, a] of all.entries()) {
      for (const b of all.slice(i + 1)) {
        const correlation = a.reduce((sum, z, k) => sum + z * b[k]!, 0) / drawCount
        expect(Math.abs(correlation)).toBeLessThan(0.04)
      }
    }
  })
})

describe('a belief', () => {
  const logit = (y: number): number => Math.log(y / (1 - y))

  it('has low, typical and high at its 10th, 50th and 90th percentile exactly', () => {
    const range = { low: 0.6, typical: 0.8, high: 0.92 }
    const belief = beliefOf(range, false, 0.5)
    expect(yieldAt(belief, -ninetiethScore)).toBeCloseTo(0.6, 12)
    expect(yieldAt(belief, 0)).toBeCloseTo(0.8, 12)
    expect(yieldAt(belief, ninetiethScore)).toBeCloseTo(0.92, 12)
    const recovery = beliefOf({ low: 0.01, typical: 0.014, high: 0.03 }, true, 0.5)
    expect(yieldAt(recovery, ninetiethScore)).toBeCloseTo(0.03, 12)
    expect(yieldAt(recovery, 20)).toBe(1)
  })

  it.each(checkValuesOf('bayes-normal', 2))('is updated by the normal rule: $id', ({ inputs, expected, tolerance }) => {
    const found = normalPosterior({ mean: inputs.priorMean, variance: inputs.priorSd ** 2 }, inputs.knownSd ** 2, inputs.dataMean, inputs.n)
    const within = (got: number, want: number): void => {
      expect(Math.abs(got - want)).toBeLessThanOrEqual(tolerance.rel! * want)
    }
    within(found.variance, expected.variance)
    within(Math.sqrt(found.variance), expected.sd)
    within(found.mean, expected.mean)
  })

  it('with equal halves has precision 2 + 2n and mean 2 sum(z) / (2 + 2n)', () => {
    const prior = beliefOf({ low: 0.6, typical: 0.8, high: 0.92 }, false, 0.5)
    const scoresOfRuns = [-1.2, 0.4, -0.7]
    const after = updated(
      prior,
      scoresOfRuns.map(z => yieldAt(prior, z)),
    )
    expect(after.benchVariance).toBeCloseTo(1 / 8, 12)
    expect(after.benchMean).toBeCloseTo((2 * -1.5) / 8, 9)
    expect(after.benchVariance + after.runVariance).toBeCloseTo(1 / 8 + 1 / 2, 12)
    expect(predicted(after).typical).toBeCloseTo(yieldAt(prior, -0.375), 9)
  })

  it('clips what one odd run can say at three', () => {
    const prior = beliefOf({ low: 0.6, typical: 0.8, high: 0.92 }, false, 0.5)
    expect(updated(prior, [0.01]).benchMean).toBeCloseTo((2 * -3) / 4, 12)
  })

  it('takes the shift and spread of a first attempt from what is reported of the bundled reactions', () => {
    const reported = [...bundled().library.transformations.values()].filter(t => t.kind === 'reaction' && (t.reports?.length ?? 0) >= 3)
    expect(reported).toHaveLength(51)
    const kept = (percent: number): number => Math.min(0.995, Math.max(0.005, percent / 100))
    const middle = (list: number[]): number => medianSorted(list.sort((a, b) => a - b))
    const shifts = reported.map(t => logit(middle(t.reports!.map(r => kept(r.percent)))) - logit(kept(t.yieldPercent.typical)))
    const spreads = reported.map(t => sampleStandardDeviation(t.reports!.map(r => logit(kept(r.percent)))))
    expect(middle(shifts)).toBeCloseTo(-0.596, 3)
    expect(middle(spreads)).toBeCloseTo(1.075, 3)
    expect(firstTime.shift).toBe(Math.round(middle(shifts) * 20) / 20)
    expect(firstTime.spread).toBe(Math.round(middle(spreads) * 10) / 10)
  })
})
