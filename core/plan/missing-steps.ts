import type { Library } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import type { Plan } from './plan.ts'

/**
 * Transformations that a plan cannot be reckoned without and a library does not hold: a file written with that library would lose them.
 *
 * @returns ids of its routes and of its bench log, each once
 */
export function missingSteps(library: Pick<Library, 'transformations'>, plan: Pick<Plan, 'goals' | 'log'>): readonly string[] {
  const used = [...plan.goals.flatMap(goal => goal.route.steps.map(step => step.transformation)), ...plan.log.map(entry => entry.step)]
  return [...new Set(used)].filter(id => !library.transformations.has(id))
}

/** Why a plan is not written without the record of a step that it uses. */
export const stepMissing = (id: string): Problem => ({
  code: 'step-missing',
  where: ['transformation', id],
  what: `The plan uses "${id}", whose record is neither in the plan nor in the library.`,
  why: 'Kept without it, the plan could not be reckoned again.',
  cure: 'Choose another way, bring the record back, or open an earlier version that has it.',
})
