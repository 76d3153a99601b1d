import type { Told } from '../../core/choose/in-turns.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { type CheapestBody, post, type ReachQuery, Refused, type RoutesQuery, refusalOf, silent } from './client.ts'
import type { CheapestReply, ReachReply, RoutesReply } from './replies.ts'

/** One line of the stream. */
type Line<T> =
  | { readonly search: string }
  | { readonly row: Extract<Told, { kind: 'row' }>['row']; readonly place: number }
  | { readonly rows: Extract<Told, { kind: 'reached' }>['rows'] }
  | { readonly progress: Omit<Extract<Told, { kind: 'progress' }>, 'kind'> }
  | { readonly done: T }
  | { readonly problems: readonly Problem[] }

/** Routes as the server finds them. */
export const streamRoutes = (
  query: RoutesQuery,
  onEvent: (event: Told) => void,
  left: AbortSignal,
  enough: Promise<void>,
): Promise<RoutesReply> => streamed('routes', query, onEvent, left, enough)

/** What a start can become, as the server confirms it. */
export const streamReach = (
  query: ReachQuery,
  onEvent: (event: Told) => void,
  left: AbortSignal,
  enough: Promise<void>,
): Promise<ReachReply> => streamed('reach', query, onEvent, left, enough)

/** The cheapest way to all goals, with how many ways were reckoned of how many there are. */
export const streamCheapest = (
  body: CheapestBody,
  onEvent: (event: Told) => void,
  left: AbortSignal,
  enough: Promise<void>,
): Promise<CheapestReply> => streamed('cheapest', body, onEvent, left, enough)

/**
 * A search of the server, as it goes on.
 *
 * @param left  ends the search by leaving it
 * @param enough resolves once whoever asked would rather have what there is
 * @throws Refused
 */
async function streamed<T>(
  path: 'routes' | 'reach' | 'cheapest',
  query: unknown,
  onEvent: (event: Told) => void,
  left: AbortSignal,
  enough: Promise<void>,
): Promise<T> {
  const reply = await fetch(`./api/v1/${path}/stream`, { ...post(query), signal: left }).catch(fault => {
    throw left.aborted ? fault : new Refused([silent], 0)
  })
  if (!reply.ok || reply.body === null) throw await refusalOf(reply)
  for await (const line of linesOf<T>(reply.body)) {
    if ('search' in line) void enough.then(() => fetch(`./api/v1/${path}/stream/${line.search}`, { method: 'DELETE' }).catch(() => {}))
    else if ('row' in line) onEvent({ kind: 'row', ...line })
    else if ('rows' in line) onEvent({ kind: 'reached', ...line })
    else if ('progress' in line) onEvent({ kind: 'progress', ...line.progress })
    else if ('done' in line) return line.done
    else throw new Refused(line.problems, 422)
  }
  throw new Refused([silent], 0)
}

/** Lines of JSON, however the network cuts them. */
async function* linesOf<T>(body: ReadableStream<Uint8Array>): AsyncGenerator<Line<T>> {
  const reader = body.getReader()
  const decoder = new TextDecoder()
  // A long line comes in many pieces: put together once it is whole, not at each of them.
  let begun: string[] = []
  for (;;) {
    const { done, value } = await reader.read().catch(() => ({ done: true, value: undefined }) as const)
    const [first = '', ...others] = decoder.decode(value, { stream: !done }).split('\n')
    begun.push(first)
    for (const next of others) {
      const line = begun.join('')
      if (line !== '') yield JSON.parse(line) as Line<T>
      begun = [next]
    }
    if (done) return
  }
}
