import type { Search, SearchEvent, Solved } from './searching.ts'

/** What a search tells while it runs; what it asks of the solver is answered by whoever runs it. */
export type Told = Exclude<SearchEvent, { kind: 'solve' }>

/** How a search is run where others want their turn as well: the clock and the threads are the machine's, and are handed in. */
export interface Turns {
  /** At each event: nothing to wait for, or a promise that resolves once the others have had their turn. */
  readonly pause: () => Promise<void> | null
  /** Solves a model elsewhere; undefined = there is no solver, and the search goes on with what it proves by itself. */
  readonly solve: (model: string) => Promise<Solved | undefined>
  /** Looked at after each event; throws to end the search there. */
  readonly check: () => void
}

/**
 * Runs a search in turns. Goes on only as fast as its events are taken.
 *
 * @returns what the search returns
 * @throws whatever `check` throws
 */
export async function* inTurns<T>(search: Search<T>, { pause, solve, check }: Turns): AsyncGenerator<Told, T> {
  let step = search.next()
  while (!step.done) {
    check()
    const event = step.value
    if (event.kind === 'solve') {
      const solved = await solve(event.model)
      check()
      step = search.next(solved)
      continue
    }
    yield event
    const waiting = pause()
    if (waiting !== null) await waiting
    step = search.next()
  }
  return step.value
}
