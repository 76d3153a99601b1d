import { stepStops } from '../../core/choose/forbidden.ts'
import type { Traits } from '../../core/hazards/traits.ts'
import type { Library, LibraryFile } from '../../core/library/library.ts'
import { withoutProcedure } from '../../core/library/without-procedure.ts'
import { sliceFile } from '../../core/plan/slice.ts'

/** A library, or a slice of one, as it is handed out: a step that a list ends planning with is there, and not how it is done. */
export function handedOut(library: Library, traits: ReadonlyMap<string, Traits>): LibraryFile {
  const file = sliceFile(library)
  const stops = stepStops(traits)
  return { ...file, transformations: file.transformations.map(step => (stops(step) ? withoutProcedure(library, step) : step)) }
}
