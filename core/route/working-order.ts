import { type Library, transformationOf } from '../library/library.ts'
import type { Step } from './route.ts'

/**
 * Transformations in the order in which they can be worked: of those whose made reactants are there, the smallest id first.
 *
 * @param start compound in hand; it counts as there even where a transformation of the list makes it
 * @param transformations ids, in any order, each at most once
 * @throws RangeError for an unknown id or a circle; `routeOf` answers both with Problems
 */
export function workingOrder(library: Library, start: string, transformations: Iterable<string>): Step[] {
  const waiting = [...new Set(transformations)].sort(byId).map(id => transformationOf(library, id))
  const missing = new Map<string, number>()
  for (const t of waiting) missing.set(t.mainProduct, (missing.get(t.mainProduct) ?? 0) + 1)
  missing.delete(start)
  const steps: Step[] = []
  while (waiting.length > 0) {
    const next = waiting.findIndex(t => t.reactants.every(r => (missing.get(r.compound) ?? 0) === 0))
    const transformation = waiting[next]
    if (!transformation) throw new RangeError(`these steps go round in a circle: ${waiting.map(t => t.id).join(', ')}`)
    waiting.splice(next, 1)
    const left = (missing.get(transformation.mainProduct) ?? 1) - 1
    missing.set(transformation.mainProduct, left)
    steps.push({ transformation: transformation.id, makes: transformation.mainProduct })
  }
  return steps
}

/** Order of ids everywhere: by code unit, the same on every machine. */
export const byId = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
