import { computed, signal } from '@preact/signals'
import type { LibraryFile } from '../../core/library/library.ts'
import type { SliceReply } from '../api/replies.ts'

interface Brought {
  readonly steps: ReadonlySet<string>
  readonly materials: ReadonlySet<string>
}
const none: Brought = { steps: new Set(), materials: new Set() }

/** Records that the open plan brought along: the server takes those of them that it does not hold. */
export const carried = signal<LibraryFile | null>(null)
/** What the library does not hold, and a plan goes on with its own record of: the library never was told of it, or has it no more. */
export const brought = signal<Brought>(none)

/** Of a slice, what only the plan brings. */
export function noteBrought({ brought: steps = [], broughtMaterials: materials = [] }: SliceReply): void {
  const known = brought.peek()
  if (steps.every(id => known.steps.has(id)) && materials.every(id => known.materials.has(id))) return
  brought.value = { steps: new Set([...known.steps, ...steps]), materials: new Set([...known.materials, ...materials]) }
}

/** Another library: what it lacks is to be seen anew. */
export const forgetBrought = (): void => {
  brought.value = none
}

const idsBrought = computed<readonly string[]>(() => {
  const { steps, materials } = brought.value
  const { transformations = [], materials: carriedMaterials = [] } = carried.value ?? {}
  return [...transformations.filter(one => steps.has(one.id)), ...carriedMaterials.filter(one => materials.has(one.id))].map(one => one.id)
})

/** What a search must be told besides what it looks for: the plan's own records, where the library lacks some of them. */
export const carriedInSearch = computed(() => (idsBrought.value.length > 0 ? carried.value : null))

/** Tells such searches apart: each save makes the records anew, the same ones. */
export const carriedKey = computed(() => [...idsBrought.value].sort().join(' '))
