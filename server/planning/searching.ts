import { setImmediate as breath } from 'node:timers/promises'
import type { Search, SearchEvent } from '../../core/choose/searching.ts'
import { solvedInThread } from '../solver/in-thread.ts'

/** So long a search works before it lets the server look at what else has come. */
const turnMs = 12

/** What a search tells while it runs; what it asks of the solver is answered here. */
export type Told = Exclude<SearchEvent, { kind: 'solve' }>

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
export async function* inTurns<T>(search: Search<T>, signal?: AbortSignal): AsyncGenerator<Told, T> {
  let began = performance.now()
  let step = search.next()
  while (!step.done) {
    if (signal?.aborted) throw new SearchCancelled()
    const event = step.value
    if (event.kind === 'solve') {
      const solved = await solvedInThread(event.model, signal)
      if (signal?.aborted) throw new SearchCancelled()
      step = search.next(solved)
      continue
    }
    yield event
    if (performance.now() - began > turnMs) {
      await breath()
      began = performance.now()
    }
    step = search.next()
  }
  return step.value
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
