import type { DrawArrays } from '../route/draw-arrays.ts'
import { type Drawn, flowThrough } from '../route/spread.ts'
import { yieldDraws } from '../route/yield-draws.ts'
import type { Amounts } from './amounts.ts'

/** The 10,000 joint draws of a plan's amounts. */
export function drawnOf(amounts: Amounts, seed: number): Drawn {
  return flowThrough(amounts.flowing, yieldsOf(amounts, seed, amounts.steps))
}

/**
 * The same for some goals alone; steps that none of them needs are left out, and with them the draws of the other goals.
 *
 * @param goals  by index
 * @param arrays where the draws are put: they hold until these start over
 */
export function goalsDrawn(amounts: Amounts, seed: number, goals: readonly number[], arrays: DrawArrays): readonly Float64Array[] {
  const needed = new Set(goals.flatMap(goal => amounts.merged.stepsOfGoal[goal] ?? []))
  const yields = yieldsOf(
    amounts,
    seed,
    amounts.steps.filter(s => needed.has(s.transformation)),
  )
  const { flowing } = amounts
  const steps = flowing.steps.filter(s => needed.has(s.flow.transformation))
  return flowThrough({ ...flowing, steps }, yields, { goals: new Set(goals), arrays }).goalG
}

function yieldsOf(amounts: Amounts, seed: number, steps: Amounts['steps']): ReadonlyMap<string, Float64Array> {
  return new Map(
    steps.map(s => {
      const belief = amounts.beliefs.get(s.transformation)!
      return [s.transformation, yieldDraws(s.transformation, belief, seed, Math.max(1, s.batches), 1 + (s.logged?.batchesDone ?? 0))]
    }),
  )
}

/** Goals at given yields with the charges as planned, g: what the other hand would get from the same plan. */
export function goalsAt(amounts: Amounts, yields: ReadonlyMap<string, number>): readonly number[] {
  const one = new Map(amounts.steps.map(s => [s.transformation, Float64Array.of(yields.get(s.transformation) ?? 0)]))
  return flowThrough(amounts.flowing, one).goalG.map(draws => draws[0] ?? 0)
}
