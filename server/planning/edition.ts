import type { Library } from '../../core/library/library.ts'
import { planChanges } from '../../core/plan/changes.ts'
import type { Plan } from '../../core/plan/plan.ts'

/** A plan that goes back into its file: one version on, with what changed, unless nothing did. */
export function nextEdition(library: Library, before: Plan, after: Plan): Plan {
  const changed = planChanges(library, before, after)
  return changed.length === 0 ? after : { ...after, edition: { number: (before.edition?.number ?? 1) + 1, changed } }
}
