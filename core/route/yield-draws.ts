import { type Belief, toYields } from '../yields/belief.ts'
import { drawCount, scores } from '../yields/draw.ts'
import { mostBatches } from './batches.ts'

const kept = new Map<string, Float64Array>()
/** Draws kept: moving an amount leaves every yield as it was; 80 kB each. */
const mostKept = 128

/**
 * Yield of a step in each of the 10,000 joint draws: one bench part shared by its batches, one run part a batch, averaged.
 *
 * @param firstRun number of the first batch still to run, from 1: logged batches keep their streams to themselves
 * @returns the same array for the same arguments, not to be written to
 */
export function yieldDraws(transformation: string, belief: Belief, seed: number, batches = 1, firstRun = 1): Float64Array {
  const { isolation, m, sLow, sHigh, benchMean, benchVariance, runVariance } = belief
  const name = [transformation, seed, batches, firstRun, isolation, m, sLow, sHigh, benchMean, benchVariance, runVariance].join(' ')
  const before = kept.get(name)
  if (before) return before
  const yields = drawnYields(transformation, belief, seed, batches, firstRun)
  if (kept.size >= mostKept) kept.delete(kept.keys().next().value!)
  kept.set(name, yields)
  return yields
}

const ofOneRun = new Float64Array(drawCount)

function drawnYields(transformation: string, belief: Belief, seed: number, batches: number, firstRun: number): Float64Array {
  const bench = scores(transformation, 'b', seed)
  const benchSd = Math.sqrt(belief.benchVariance)
  const runSd = Math.sqrt(belief.runVariance)
  let sum: Float64Array | null = null
  // A plan with more batches is refused; until it is, so many stand for all.
  const drawn = Math.min(batches, mostBatches)
  for (let batch = 0; batch < drawn; batch++) {
    const runs = scores(transformation, `r${firstRun + batch}`, seed)
    const yields: Float64Array = sum === null ? new Float64Array(drawCount) : ofOneRun
    for (let k = 0; k < drawCount; k++) yields[k] = belief.benchMean + benchSd * bench[k]! + runSd * runs[k]!
    toYields(belief, yields)
    if (sum === null) sum = yields
    else for (let k = 0; k < drawCount; k++) sum[k] = sum[k]! + yields[k]!
  }
  if (sum === null) return new Float64Array(drawCount)
  if (drawn > 1) for (let k = 0; k < drawCount; k++) sum[k] = sum[k]! / drawn
  return sum
}
