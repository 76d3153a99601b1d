import { computed, signal } from '@preact/signals'
import type { RecordDifference } from '../../core/library/differences.ts'
import type { LibraryFile } from '../../core/library/library.ts'
import { isOwnWord } from '../../core/library/own-word.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { keeping } from './facts.ts'
import { facts } from './facts-here.ts'
import { fileOfPlan } from './plan-file.ts'
import { sheet } from './store.ts'

/** What became of the library since the open plan was saved. */
export const changedSince = signal<readonly Problem[]>([])
/** The records that the open plan was saved with; null where it was saved with what the library holds. */
export const before = signal<LibraryFile | null>(null)

/**
 * Of what changed, the records that the plan brings by the bench of whoever made it: they may be taken over, a yield or a density over a
 * bundled one too.
 */
export const ownChanged = computed<readonly Problem[]>(() => {
  const { materials = [], transformations = [] } = before.value ?? {}
  const own = [...keysIn('materials', materials), ...keysIn('transformations', transformations)]
  return changedSince.value.filter(change => change.code === 'record-changed' && own.includes(keyOf(change)))
})

/** A step may have the id of what it makes: a record is told by its list too. */
const keyOf = ({ where: [list, id] }: Problem): string => `${list} ${id}`
const keysIn = (list: RecordDifference['list'], records: LibraryFile[typeof list]): readonly string[] =>
  records.filter(isOwnWord).map(({ id }) => `${list} ${id}`)

/** The open plan as a file, with the records that it was saved with. */
export function fileAsSaved(): unknown {
  const old = before.peek()
  return fileOfPlan(sheet.peek(), old === null ? facts.peek() : keeping(facts.peek(), old))
}

/** The library here holds them by now as the plan was saved with them. */
export function noLongerChanged(taken: readonly Pick<RecordDifference, 'list' | 'id'>[]): void {
  const keys = taken.map(({ list, id }) => `${list} ${id}`)
  changedSince.value = changedSince.peek().filter(change => !keys.includes(keyOf(change)))
}
