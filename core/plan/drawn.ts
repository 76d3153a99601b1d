import { type Drawn, flowThrough, yieldDraws } from '../route/spread.ts'
import type { Amounts } from './amounts.ts'

/**
 * The 10,000 joint draws of a plan's amounts.
 *
 * @param only the goals in question; steps that none of them needs are left out, and with them the draws of the other goals
 */
export function drawnOf(amounts: Amounts, seed: number, only?: readonly number[]): Drawn {
  const needed = only && new Set(only.flatMap(goal => amounts.merged.stepsOfGoal[goal] ?? []))
  const steps = needed ? amounts.steps.filter(s => needed.has(s.transformation)) : amounts.steps
  const yields = new Map(
    steps.map(s => {
      const belief = amounts.beliefs.get(s.transformation)!
      return [s.transformation, yieldDraws(s.transformation, belief, seed, Math.max(1, s.batches), 1 + (s.logged?.batchesDone ?? 0))]
    }),
  )
  const { flowing } = amounts
  return flowThrough(needed ? { ...flowing, steps: flowing.steps.filter(s => needed.has(s.flow.transformation)) } : flowing, yields)
}

/** Goals at given yields with the charges as planned, g: what the other hand would get from the same plan. */
export function goalsAt(amounts: Amounts, yields: ReadonlyMap<string, number>): readonly number[] {
  const one = new Map(amounts.steps.map(s => [s.transformation, Float64Array.of(yields.get(s.transformation) ?? 0)]))
  return flowThrough(amounts.flowing, one).goalG.map(draws => draws[0] ?? 0)
}
