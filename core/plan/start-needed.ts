import type { Library } from '../library/library.ts'
import { glanced } from './confidence.ts'
import { checkedPlan } from './goals.ts'
import type { Plan } from './plan.ts'

/** How much of the start the mass goals of a plan take. Grams of compound. */
export interface StartNeeded {
  /** Chance that all mass goals come out together. */
  readonly confidence: number
  readonly startG: number
  /** With charges at typical yields, and the chance that then all goals come out. */
  readonly typicalG: number
  readonly typicalChance: number
}

/** What is told where nobody asks for another: nine times in ten. */
export const usualConfidence = 0.9

/**
 * The start needed to reach all mass goals together with a confidence, whatever is in hand; beside it the one at typical yields. Shares and
 * `rest` take no part, nor does what was logged.
 *
 * @param confidence above 0 and below 1
 * @returns null for a plan without a mass goal, or where no amount reaches the confidence
 */
export function startNeeded(library: Library, plan: Plan, confidence: number): StartNeeded | null {
  const goals = plan.goals.filter(g => g.amount.kind === 'mass')
  if (goals.length === 0) return null
  let answers = known.get(library)
  if (!answers) {
    answers = new Map()
    known.set(library, answers)
  }
  // What is in hand is no part of it: a slider over the start asks the same again and again.
  const name = JSON.stringify([goals, plan.start.material, plan.settings, plan.seed, confidence])
  let answer = answers.get(name)
  if (answer === undefined) {
    answer = reckoned(library, { ...plan, goals }, confidence)
    if (answers.size >= mostKnown) answers.delete(answers.keys().next().value!)
    answers.set(name, answer)
  }
  return answer
}

const known = new WeakMap<Library, Map<string, StartNeeded | null>>()
const mostKnown = 64

function reckoned(library: Library, plan: Plan, confidence: number): StartNeeded | null {
  const { topUps: _topUps, repeats: _repeats, ...rest } = plan
  const bare: Plan = { ...rest, start: { ...plan.start, massG: null }, log: [] }
  const checked = checkedPlan(library, bare)
  if (!checked.ok) return null
  const input = { library, plan: bare, merged: checked.value, settings: plan.settings }
  const { plain: typical, sure } = glanced(input, confidence)
  if (sure.limited || typical.chanceAll === null) return null
  const { startG } = sure.amounts.division
  return { confidence, startG, typicalG: typical.amounts.division.startG, typicalChance: typical.chanceAll }
}
