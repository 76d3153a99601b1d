import { describe, expect, it } from 'vitest'
import { yieldDraws } from '../../core/route/yield-draws.ts'
import { beliefOf, yieldAt } from '../../core/yields/belief.ts'
import { drawCount, scores } from '../../core/yields/draw.ts'
import { percentiles } from '../../core/yields/percentiles.ts'
import { updated } from '../../core/yields/update.ts'
import { checkValuesOf } from '../support/check-values.ts'

/** Distribution function of the standard normal, by Simpson's rule from 0: independent of the inverse under test. */
function normalShare(z: number): number {
  const n = 200
  const h = z / n
  const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)
  let sum = density(0) + density(z)
  for (let i = 1; i < n; i++) sum += (i % 2 === 0 ? 2 : 4) * density(i * h)
  return 0.5 + (sum * h) / 3
}
const shares = new Map<number, number>()
/** A uniform variable on 0 to 1 from a stream; the 10,000 strata are looked up. */
const uniform = (z: number): number => {
  const before = shares.get(z)
  if (before !== undefined) return before
  const share = normalShare(z)
  shares.set(z, share)
  return share
}

/** Mean and standard deviation of a model over the product's own streams, averaged over many seeds so that the draws' noise is below the tolerance. */
function moments(inputs: number, model: (z: readonly number[]) => number, seeds: number): { mean: number; u: number } {
  let sum = 0
  let square = 0
  const centre = model(new Array(inputs).fill(0))
  for (let seed = 1; seed <= seeds; seed++) {
    const streams = Array.from({ length: inputs }, (_, i) => scores(`input-${i}`, 'b', seed))
    for (let k = 0; k < drawCount; k++) {
      const d = model(streams.map(s => s[k]!)) - centre
      sum += d
      square += d * d
    }
  }
  const n = seeds * drawCount
  return { mean: centre + sum / n, u: Math.sqrt((square - (sum * sum) / n) / (n - 1)) }
}

describe('the draws are a real Monte Carlo', () => {
  it.each(checkValuesOf('monte-carlo', 2).filter(v => v.id === 'unc-jcgm101-additive'))('$id', ({ expected, tolerance }) => {
    const { mean, u } = moments(4, z => z[0]! + z[1]! + z[2]! + z[3]!, 20)
    expect(Math.abs(mean - expected.mean)).toBeLessThanOrEqual(tolerance.abs!)
    expect(Math.abs(u - expected.u)).toBeLessThanOrEqual(tolerance.abs!)
  })

  it.each(checkValuesOf('monte-carlo', 2).filter(v => v.id === 'unc-jcgm101-mass'))('$id', ({ inputs, expected, tolerance }) => {
    const { mRc, dmRc, rhoA, rhoW, rhoR } = inputs.inputs
    const flat = ([low, high]: [number, number], z: number): number => low + (high - low) * uniform(z)
    const { mean, u } = moments(
      5,
      z => {
        const a = flat(rhoA.rectangular, z[2]!)
        const buoyancy = (a - 1.2) * (1 / flat(rhoW.rectangular, z[3]!) - 1 / flat(rhoR.rectangular, z[4]!))
        return (mRc.normal[0] + mRc.normal[1] * z[0]! + dmRc.normal[0] + dmRc.normal[1] * z[1]!) * (1 + buoyancy) - 100_000
      },
      20,
    )
    expect(Math.abs(mean - expected.mean)).toBeLessThanOrEqual(tolerance.abs!)
    expect(Math.abs(u - expected.uMonteCarlo)).toBeLessThanOrEqual(tolerance.abs!)
  })

  it.each(checkValuesOf('uncertainty', 3).filter(v => v.id === 'unc-product-two'))('$id', ({ inputs, expected, tolerance }) => {
    const { values, standardUncertainty: sd } = inputs
    const { mean, u } = moments(2, z => (values.x1 + sd.x1 * z[0]!) * (values.x2 + sd.x2 * z[1]!), 200)
    expect(Math.abs(mean - expected.y)).toBeLessThanOrEqual(tolerance.rel! * expected.y)
    expect(Math.abs(u - expected.uExactIndependent)).toBeLessThanOrEqual(tolerance.rel! * expected.uExactIndependent)
  })

  it.each(checkValuesOf('uncertainty', 3).filter(v => v.id === 'unc-gum-h1'))('$id', ({ inputs, expected, tolerance }) => {
    const { values, standardUncertainty: sd } = inputs
    const at = (name: string, z: number): number => values[name] + sd[name] * z
    const { mean, u } = moments(
      6,
      z =>
        at('ls', z[0]!) +
        at('d', z[1]!) -
        at('ls', z[0]!) * (at('dalpha', z[2]!) * at('theta', z[3]!) + at('alphas', z[4]!) * at('dtheta', z[5]!)),
      60,
    )
    expect(Math.abs(mean - expected.value)).toBeLessThanOrEqual(tolerance.rel! * expected.value)
    expect(Math.abs(u - expected.uSecondOrder)).toBeLessThanOrEqual(tolerance.rel! * expected.uSecondOrder)
  })

  it.each(checkValuesOf('uncertainty', 3).filter(v => v.id === 'unc-eurachem-a1'))('$id', ({ inputs, expected, tolerance }) => {
    const { values } = inputs
    const { m, P, V } = inputs.inputs
    const sdP = P.rectangularHalfWidth / Math.sqrt(3)
    const sdV = Math.hypot(V.triangularHalfWidth / Math.sqrt(6), V.repeatability, V.rectangularHalfWidthTemperature / Math.sqrt(3))
    const { mean, u } = moments(
      3,
      z => (1000 * (values.m + m.standardUncertainty * z[0]!) * (values.P + sdP * z[1]!)) / (values.V + sdV * z[2]!),
      60,
    )
    expect(Math.abs(mean - expected.c)).toBeLessThanOrEqual(tolerance.rel! * expected.c)
    expect(Math.abs(u - expected.u)).toBeLessThanOrEqual(tolerance.rel! * expected.u)
  })

  it.each(checkValuesOf('yield-uncertainty', 1))('$id', ({ inputs, expected, tolerance }) => {
    const steps: { mean: number; sd: number }[] = inputs.steps
    const { mean, u } = moments(3, z => steps.reduce((product, s, i) => product * (s.mean + s.sd * z[i]!), 1), 100)
    expect(Math.abs(mean - expected.mean)).toBeLessThanOrEqual(tolerance.rel! * expected.mean)
    expect(Math.abs(u - expected.sdExact)).toBeLessThanOrEqual(tolerance.rel! * expected.sdExact)
  })

  // A beta variable of whole parameters is an order statistic of uniform ones: Beta(2,1) the larger of two, Beta(2,2) the middle of three.
  it.each([
    ['q-beta-1', (u: readonly number[]) => Math.max(u[0]!, u[1]!)],
    ['q-beta-3', (u: readonly number[]) => [...u].sort((a, b) => a - b)[1]!],
  ] as const)('%s, as an order statistic of the streams', (id, statistic) => {
    const { inputs, expected } = checkValuesOf('quantile-beta', 4).find(v => v.id === id)!
    const found: number[] = []
    for (let seed = 1; seed <= 20; seed++) {
      const streams = ['x', 'y', 'z'].map(step => scores(step, 'r1', seed))
      for (let k = 0; k < drawCount; k++) found.push(statistic(streams.map(s => uniform(s[k]!))))
    }
    found.sort((a, b) => a - b)
    // 200,000 draws: the standard error of a quantile is sqrt(p (1 - p) / n) over the density, here 0.0006 and less; four of them.
    expect(Math.abs(found[Math.round(inputs.p * found.length)]! - expected.x)).toBeLessThan(0.0024)
  })
})

/** An own generator for the simulated truth, so that the product's streams do not judge themselves: mulberry32, from memory. */
function otherDraws(seed: number): () => number {
  let a = seed
  const next = (): number => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  // Box and Muller 1958.
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next())
}

describe('coverage: P10 to P90 holds 80 % of what happens', () => {
  const prior = beliefOf({ low: 0.62, typical: 0.8, high: 0.9 }, false, 0.5)
  const plans = 2000

  it.each([
    ['one batch', 1, 0],
    ['five batches', 5, 0],
    ['one batch after five logged runs', 1, 5],
    ['five batches after five logged runs', 5, 5],
  ])('%s', (_name, batches, logged) => {
    const normal = otherDraws(20_260_000 + 10 * batches + logged)
    let within = 0
    for (let plan = 0; plan < plans; plan++) {
      const b = Math.SQRT1_2 * normal()
      const run = (): number => yieldAt(prior, b + Math.SQRT1_2 * normal())
      const belief = updated(prior, Array.from({ length: logged }, run))
      // Without a log all plans share one band.
      const { p10, p90 } = percentiles(yieldDraws('some-step', belief, 1, batches, 1 + logged))
      const outcome = Array.from({ length: batches }, run).reduce((sum, y) => sum + y, 0) / batches
      if (outcome >= p10 && outcome <= p90) within++
    }
    expect(Math.abs(within / plans - 0.8)).toBeLessThanOrEqual(0.03)
  })
})
