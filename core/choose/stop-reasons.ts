import type { Traits } from '../hazards/traits.ts'
import { type Library, transformationOf } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import { materialsOfStep } from './forbidden.ts'

/**
 * Why steps are not planned: the lists by their full names, with the reason of each; each substance once a list.
 *
 * @param steps  transformations that a stop row may meet
 * @param where  what was asked for
 */
export function stopReasons(
  { library, traits }: { readonly library: Library; readonly traits: ReadonlyMap<string, Traits> },
  steps: readonly string[],
  where: readonly string[],
): Problem[] {
  const reasons = new Map<string, Problem>()
  for (const step of steps) {
    for (const material of materialsOfStep(transformationOf(library, step))) {
      for (const match of traits.get(material)?.regulated ?? []) {
        if (match.action !== 'stop') continue
        reasons.set(`${material}|${match.list}`, {
          code: 'stopped-by-list',
          where: [...where, step, material],
          what: `Every route needs a step that this tool does not plan: ${material} stands on ${match.list} (${match.category}).`,
          why: `${match.reason}. ${match.legal}`,
          cure: 'Choose another target or another start; no option lifts this.',
        })
      }
    }
  }
  return [...reasons.values()]
}
