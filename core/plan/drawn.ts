import { type Drawn, flowThrough, yieldDraws } from '../route/spread.ts'
import type { Amounts } from './amounts.ts'

/** The 10,000 joint draws of a plan's amounts. */
export function drawnOf(amounts: Amounts, seed: number): Drawn {
  const yields = new Map(
    amounts.steps.map(s => {
      const belief = amounts.beliefs.get(s.transformation)!
      return [s.transformation, yieldDraws(s.transformation, belief, seed, Math.max(1, s.batches), 1 + (s.logged?.batchesDone ?? 0))]
    }),
  )
  return flowThrough(amounts.flowing, yields)
}

/** Goals at given yields with the charges as planned, g: what the other hand would get from the same plan. */
export function goalsAt(amounts: Amounts, yields: ReadonlyMap<string, number>): readonly number[] {
  const one = new Map(amounts.steps.map(s => [s.transformation, Float64Array.of(yields.get(s.transformation) ?? 0)]))
  return flowThrough(amounts.flowing, one).goalG.map(draws => draws[0] ?? 0)
}
