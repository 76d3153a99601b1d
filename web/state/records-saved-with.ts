import { computed, signal } from '@preact/signals'
import type { LibraryFile } from '../../core/library/library.ts'
import { isOwnBench } from '../../core/library/trust.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { keeping } from './facts.ts'
import { facts } from './facts-here.ts'
import { fileOfPlan } from './plan-file.ts'
import { sheet } from './store.ts'

/** What became of the library since the open plan was saved. */
export const changedSince = signal<readonly Problem[]>([])
/** The records that the open plan was saved with; null where it was saved with what the library holds. */
export const before = signal<LibraryFile | null>(null)

/** Of what changed, the records that the plan brings by the bench of whoever made it: they may be taken over, a yield over a bundled one too. */
export const ownChanged = computed<readonly Problem[]>(() => {
  const { materials = [], transformations = [] } = before.value ?? {}
  const own = new Set([...materials, ...transformations].filter(one => one.sources.some(isOwnBench)).map(one => one.id))
  return changedSince.value.filter(({ code, where }) => code === 'record-changed' && own.has(where[1] ?? ''))
})

/** The open plan as a file, with the records that it was saved with. */
export function fileAsSaved(): unknown {
  const old = before.peek()
  return fileOfPlan(sheet.peek(), old === null ? facts.peek() : keeping(facts.peek(), old))
}

/** The library here holds them by now as the plan was saved with them. */
export function noLongerChanged(ids: readonly string[]): void {
  changedSince.value = changedSince.peek().filter(({ where }) => !ids.includes(where[1] ?? ''))
}
