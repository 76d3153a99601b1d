import type { Library } from '../library/library.ts'
import type { Plan } from './plan.ts'
import { reckoned } from './reckoned.ts'

/** How much of the start the mass goals of a plan take. Grams of compound. */
export interface StartNeeded {
  /** For the confidence asked for. */
  readonly startG: number
  /** With charges at typical yields, and the chance that then all goals come out. */
  readonly typicalG: number
  readonly typicalChance: number | null
}

/**
 * The start needed to reach all mass goals together with a confidence, whatever is in hand; beside it the one at typical yields. Shares and
 * `rest` take no part.
 *
 * @param confidence above 0 and below 1
 * @throws PlanRefused for a plan without a mass goal, or one that cannot be reckoned
 */
export function startNeeded(library: Library, plan: Plan, confidence: number): StartNeeded {
  const goals = plan.goals.filter(g => g.amount.kind === 'mass')
  const at = (wanted: number | null) =>
    reckoned(library, {
      ...plan,
      goals,
      start: { ...plan.start, massG: null },
      log: [],
      settings: { ...plan.settings, confidence: wanted },
    })
  const typical = at(null)
  return { startG: at(confidence).start.massG, typicalG: typical.start.massG, typicalChance: typical.chanceAll }
}
