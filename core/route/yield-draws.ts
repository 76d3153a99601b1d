import { type Belief, toYields } from '../yields/belief.ts'
import { drawCount, strata, stratumScores } from '../yields/draw.ts'
import { mostBatches } from './batches.ts'

const kept = new Map<string, Float64Array>()
/** Draws kept: moving an amount leaves every yield as it was; 80 kB each. */
const mostKept = 192

/**
 * Yield of a step in each of the 10,000 joint draws: one bench part shared by its batches, one run part a batch, averaged.
 *
 * @param firstRun number of the first batch still to run, from 1: logged batches keep their streams to themselves
 * @returns the same array for the same arguments, not to be written to
 */
export function yieldDraws(transformation: string, belief: Belief, seed: number, batches = 1, firstRun = 1): Float64Array {
  const { isolation, m, sLow, sHigh, benchMean, benchVariance, runVariance } = belief
  const name = [transformation, seed, isolation, m, sLow, sHigh, benchMean, benchVariance, runVariance].join(' ')
  // A plan with more batches is refused; until it is, so many stand for all.
  const drawn = Math.min(batches, mostBatches)
  const ofRun = (run: number) => keptOr(`${name} r${run}`, () => drawnYields(transformation, belief, seed, run))
  if (drawn <= 1) return drawn === 1 ? ofRun(firstRun) : new Float64Array(drawCount)
  // Plans that differ in their batches share what they can: only the mean is taken anew.
  return keptOr(`${name} ${drawn} ${firstRun}`, () => {
    const mean = ofRun(firstRun).slice()
    for (let batch = 1; batch < drawn; batch++) {
      const yields = ofRun(firstRun + batch)
      for (let k = 0; k < drawCount; k++) mean[k] = mean[k]! + yields[k]!
    }
    for (let k = 0; k < drawCount; k++) mean[k] = mean[k]! / drawn
    return mean
  })
}

function keptOr(name: string, make: () => Float64Array): Float64Array {
  const before = kept.get(name)
  if (before) return before
  const draws = make()
  if (kept.size >= mostKept) kept.delete(kept.keys().next().value!)
  kept.set(name, draws)
  return draws
}

function drawnYields(transformation: string, belief: Belief, seed: number, run: number): Float64Array {
  const score = stratumScores()
  const bench = strata(transformation, 'b', seed)
  const own = strata(transformation, `r${run}`, seed)
  const benchSd = Math.sqrt(belief.benchVariance)
  const runSd = Math.sqrt(belief.runVariance)
  const { benchMean } = belief
  const yields = new Float64Array(drawCount)
  for (let k = 0; k < drawCount; k++) yields[k] = benchMean + benchSd * score[bench[k]!]! + runSd * score[own[k]!]!
  toYields(belief, yields)
  return yields
}
