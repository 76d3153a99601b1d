import type { Library } from '../library/library.ts'
import { mergedSteps } from '../plan/merged-steps.ts'
import type { Goal } from '../plan/plan.ts'

/**
 * The first way to serve all goals at once: of the routes listed for each, in their order, those that one plan can hold together (each
 * compound made in one way). Earlier goals keep their better routes longest.
 *
 * @param choices  for each goal, the goal with each of its routes, best first
 * @returns one choice a goal; null where no combination fits
 */
export function together(library: Library, choices: readonly (readonly Goal[])[]): readonly Goal[] | null {
  const chosen: Goal[] = []
  const serve = (at: number): boolean => {
    if (at === choices.length) return true
    for (const goal of choices[at]!) {
      chosen.push(goal)
      if (mergedSteps(library, chosen).ok && serve(at + 1)) return true
      chosen.pop()
    }
    return false
  }
  return serve(0) ? chosen : null
}
