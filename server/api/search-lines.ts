import { Readable } from 'node:stream'
import type { Problem } from '../../core/problem/problem.ts'
import { jsonInPieces } from '../json-in-pieces.ts'
import type { RunningSearch } from '../planning/running.ts'
import type { Told } from '../planning/searching.ts'
import { Refusal } from '../refusal.ts'

export const noSearch = (id: string): Problem => ({
  code: 'search-unknown',
  where: [id],
  what: 'There is no such search, or it is over.',
  why: 'Only a search that is running can be stopped.',
  cure: 'Take the id from the first line of the stream.',
})

/** Time between two lines of progress, so that a long search does not fill the line. */
const progressMs = 250

/**
 * A search as lines of JSON: its id, what it tells, and last what it came to.
 *
 * @param done the reply that its answer makes; a Refusal becomes the last line
 */
async function* linesOf<T>(
  search: RunningSearch,
  turns: AsyncGenerator<Told, T>,
  done: (answer: T) => object,
): AsyncGenerator<string, void> {
  let said = performance.now()
  let begun = false
  const opening = (): string => {
    const first = begun ? '' : `${JSON.stringify({ search: search.id })}\n`
    begun = true
    return first
  }
  const line = (told: object): string => `${opening()}${JSON.stringify(told)}\n`
  try {
    for (;;) {
      const turn = await turns.next()
      if (turn.done) {
        let answer: object
        try {
          answer = done(turn.value)
        } catch (fault) {
          if (!begun || !(fault instanceof Refusal)) throw fault
          yield line({ problems: fault.problems })
          return
        }
        yield `${opening()}{"done":`
        yield* jsonInPieces(answer)
        yield '}\n'
        return
      }
      const { kind, ...event } = turn.value
      if (kind === 'progress' && performance.now() - said < progressMs) continue
      if (kind === 'progress') said = performance.now()
      yield line(kind === 'progress' ? { progress: event } : event)
    }
  } finally {
    search.over()
  }
}

async function* withFirst(first: IteratorResult<string, void>, rest: AsyncGenerator<string, void>): AsyncGenerator<string, void> {
  try {
    if (!first.done) yield first.value
    yield* rest
  } finally {
    await rest.return()
  }
}

/** What a running search answers with: its first line is waited for, so that what is refused at once is refused as everywhere. */
export async function streamed<T>(search: RunningSearch, turns: AsyncGenerator<Told, T>, done: (answer: T) => object): Promise<Readable> {
  const lines = linesOf(search, turns, done)
  const first = await lines.next()
  return Readable.from(withFirst(first, lines), { objectMode: false })
}
