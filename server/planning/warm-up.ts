import type { Workshop } from '../library/workshop.ts'
import { depictionsOf } from './drawings.ts'

/** So many structures are drawn ahead; the rest of a large library is drawn when it is asked for. */
const mostDrawn = 1000

/**
 * Does between requests what the first page would otherwise wait for: the toolkit needs about a second before its first drawing, and
 * drawings and traits are kept once made.
 *
 * @returns stops it
 */
export function warmUp({ library, traits }: Workshop): () => void {
  const materials = [...library.materials.values()].slice(0, mostDrawn)
  let at = 0
  let next: NodeJS.Immediate | null = null
  const step = (): void => {
    if (at === 1) traits()
    const material = materials[at++]
    if (material === undefined) return
    depictionsOf({ ...library, materials: new Map([[material.id, material]]) })
    next = setImmediate(step).unref()
  }
  next = setImmediate(step).unref()
  return () => {
    if (next !== null) clearImmediate(next)
    at = materials.length
  }
}
