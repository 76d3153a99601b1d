import { effect, signal } from '@preact/signals'
import type { Problem } from '../../core/problem/problem.ts'
import { longestText, tooLong } from '../../core/reading/preparation-problems.ts'
import { problemsOf } from '../state/asked.ts'
import { entryServer, type Reading } from './api.ts'
import { textOf, writing } from './draft.ts'

/** The reader's last answer, and whether it is of what stands there now. */
export interface ReadingState {
  readonly reading: Reading | null
  readonly fresh: boolean
  /** The server did not answer. */
  readonly problems: readonly Problem[]
}

export const readingState = signal<ReadingState>({ reading: null, fresh: true, problems: [] })

/** New materials that are to be saved with what is written: it is read as though the library held them. */
export const readWith = signal<readonly unknown[]>([])

/** Letters come faster than this, ms. */
const restMs = 180

let watching = false
/** Counts what changed on the server's side, so that the same text is read anew. */
const edition = signal(0)
export const readAgain = (): void => {
  edition.value++
}

/** Reads what is written as it is written; called when the entry page first stands. */
export function watchWriting(): void {
  if (watching) return
  watching = true
  effect(() => {
    edition.value
    const text = textOf(writing.value)
    const materials = readWith.value
    if (text.trim() === '') {
      readingState.value = { reading: null, fresh: true, problems: [] }
      return
    }
    if (text.length > longestText) {
      readingState.value = { reading: null, fresh: true, problems: [tooLong(text.length)] }
      return
    }
    readingState.value = { ...readingState.peek(), fresh: false }
    const stop = new AbortController()
    const timer = setTimeout(() => {
      entryServer.read(text, materials, stop.signal).then(
        reading => {
          readingState.value = { reading, fresh: true, problems: [] }
        },
        fault => {
          // What was read before stays in grey: nothing typed hangs on the answer.
          if (!stop.signal.aborted) readingState.value = { ...readingState.peek(), problems: problemsOf(fault) }
        },
      )
    }, restMs)
    return () => {
      clearTimeout(timer)
      stop.abort()
    }
  })
}
