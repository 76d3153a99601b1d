import { setImmediate as breath } from 'node:timers/promises'
import { inTurns as inTurnsOf, type Told } from '../../core/choose/in-turns.ts'
import type { Search } from '../../core/choose/searching.ts'
import { solvedInThread } from '../solver/in-thread.ts'

export type { Told }

/** So long a search works before it lets the server look at what else has come. */
const turnMs = 12

/** Whoever asked has gone. The status is the one that web servers have for a request closed by its client. */
export class SearchCancelled extends Error {
  readonly statusCode = 499
}

/**
 * Runs a search in turns, between which the server answers others. Goes on only as fast as its events are taken.
 *
 * @param signal ends it at its next pause
 * @returns what the search returns
 * @throws SearchCancelled once the signal says so
 */
export function inTurns<T>(search: Search<T>, signal?: AbortSignal): AsyncGenerator<Told, T> {
  let began = performance.now()
  return inTurnsOf(search, {
    check: () => {
      if (signal?.aborted) throw new SearchCancelled()
    },
    solve: model => solvedInThread(model, signal),
    pause: () => {
      if (performance.now() - began <= turnMs) return null
      return breath().then(() => {
        began = performance.now()
      })
    },
  })
}

/** Runs a search in turns to its end. */
export async function searched<T>(search: Search<T>, signal?: AbortSignal, onEvent?: (event: Told) => void): Promise<T> {
  const turns = inTurns(search, signal)
  for (;;) {
    const turn = await turns.next()
    if (turn.done) return turn.value
    onEvent?.(turn.value)
  }
}
