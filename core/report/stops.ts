import type { RegulatedHit } from '../hazards/hazard-list.ts'
import type { Library } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import { sentence } from './words.ts'

/** What ends planning, with the full name of the list and the reason; no way round it is told. */
export const stopProblems = (library: Library, hits: readonly RegulatedHit[]): readonly Problem[] =>
  hits.map(hit => ({
    code: 'stopped',
    where: ['regulated', hit.material],
    what: `Planning ends here: ${library.materials.get(hit.material)?.name ?? hit.material} is on ${hit.list}, ${hit.category}.`,
    why: sentence(hit.reason),
    cure: 'No plan with this substance in any role is reckoned.',
  }))
