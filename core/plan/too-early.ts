import { type Library, materialOf, transformationOf } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import type { GainedUses } from '../shopping/gained-uses.ts'

/** Notes on second products that stand on the shelf of the plan and come too late for a step that takes them. */
export const tooEarlyNotes = (library: Library, { tooEarly }: Pick<GainedUses, 'tooEarly'>): readonly Problem[] =>
  tooEarly.map(({ material, gainedIn, step }) => ({
    code: 'gained-too-late',
    where: ['shelf', material, step],
    what: `${materialOf(library, material).name} of “${transformationOf(library, gainedIn).name}” is not there yet for “${transformationOf(library, step).name}”, which comes before it: it is bought for that step.`,
    why: 'A second product can be used only once the step that gains it is done.',
    cure: 'Buy it for this run, and keep what is gained for the next one.',
  }))
