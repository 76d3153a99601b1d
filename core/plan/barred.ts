import type { RegulatedHit } from '../hazards/hazard-list.ts'
import type { Library } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'

/** What the buyer of this plan may not have, each material once: it stands before everything else that is to be said of the plan. */
export function barredNotes(library: Library, hits: readonly RegulatedHit[]): readonly Problem[] {
  const barred = hits.filter(hit => hit.barred)
  return [...new Map(barred.map(hit => [hit.material, hit])).values()].map(hit => ({
    code: 'barred-for-buyer',
    where: ['settings', 'buyer', hit.material],
    what: `The public cannot have ${library.materials.get(hit.material)?.name ?? hit.material}.`,
    why: `${hit.reason.charAt(0).toUpperCase()}${hit.reason.slice(1)} (${hit.list}).`,
    cure: 'Take a way without it: the list of routes names the next one that the public can have.',
  }))
}
