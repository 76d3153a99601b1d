import type { Library } from '../library/library.ts'
import { beliefAbout } from '../plan/beliefs.ts'
import type { Settings } from '../plan/settings.ts'
import type { Yields } from '../route/overall-yield.ts'

/**
 * Typical yields by which routes are ranked: own figures first, then those of the hand. For a practised one the library's stand where nothing
 * is listed; a first attempt has a figure of its own for every step.
 */
export function believedYields(library: Library, settings: Settings): Yields {
  const ids = settings.hand === 'first-time' ? library.transformations.keys() : Object.keys(settings.yields)
  return new Map([...ids].filter(id => library.transformations.has(id)).map(id => [id, beliefAbout(library, id, settings).range.typical]))
}
