import type { Told } from '../../core/choose/in-turns.ts'
import type { ReachNetwork } from '../../core/choose/reach-network.ts'
import type { LibraryFile } from '../../core/library/library.ts'
import type { Checked } from '../../core/problem/problem.ts'
import { Refused, type RoutesQuery } from '../api/client.ts'
import type { ReachReply, RoutesReply } from '../api/replies.ts'
import { streamReach, streamRoutes } from '../api/stream.ts'
import { EditionWatch } from './edition-watch.ts'
import type { Found, SearchAsked } from './library-here.ts'
import type { SearchAnswer, SearchOrder } from './search-orders.ts'

/** A search that is under way. */
export interface Finding<T> {
  /** Rejects with {@link Refused}, or never settles once it was left. */
  readonly answer: Promise<T>
  /** Ends it with what was found. */
  readonly stop: () => void
  /** Nobody waits for it any more. */
  readonly leave: () => void
}

type OnTold = (event: Told) => void
interface Waiting {
  readonly onTold: OnTold
  readonly onFound: (answer: Checked<Found> | 'elsewhere') => void
}

let worker: Worker | null = null
/** The worker holds the library, and searches go to it. */
let searchesHere = false
const editions = new EditionWatch()
let onChanged: () => void = () => {}
let asked = 0
const waiting = new Map<number, Waiting>()

/**
 * Starts the worker that searches, which fetches the whole library by itself, once the page is drawn. Until it has come, and where the
 * library is too large, the server searches.
 *
 * @param changed the library is another than at the search before, and not by this page's doing
 */
export function startSearcher(changed: () => void): void {
  onChanged = changed
  whenIdle(begin)
}

function begin(): void {
  const begun = new Worker(new URL('./search-worker.ts', import.meta.url), { type: 'module' })
  begun.addEventListener('message', ({ data }: MessageEvent<SearchAnswer>) => {
    if (data.kind === 'ready') order({ kind: 'bring', address: new URL('./api/v1/library', document.baseURI).href })
    else if (data.kind === 'library') {
      // Where the server failed this once, the next search has the library brought.
      searchesHere = !data.tooLarge
      editions.begin(data.edition)
    } else take(data)
  })
  begun.addEventListener('error', () => {
    // The server answers as before.
    searchesHere = false
    for (const one of [...waiting.values()]) one.onFound('elsewhere')
    waiting.clear()
  })
  worker = begun
}

/** This page has just changed the library. */
export const expectChange = (): void => editions.expect(asked)

function take(answer: Exclude<SearchAnswer, { kind: 'ready' | 'library' }>): void {
  const one = waiting.get(answer.id)
  if (answer.kind === 'told') {
    one?.onTold(answer.event)
    return
  }
  waiting.delete(answer.id)
  if (answer.kind === 'elsewhere') {
    if (answer.tooLarge) searchesHere = false
    one?.onFound('elsewhere')
    return
  }
  one?.onFound(answer.answer)
  if (editions.answered(answer.id, answer.edition)) onChanged()
}

const order = (what: SearchOrder): void => worker?.postMessage(what)

/** Routes as they are found, here or on the server. */
export function findRoutes(query: RoutesQuery, onTold: OnTold): Finding<RoutesReply> {
  return finding<RoutesReply>({ what: 'routes', query }, onTold, (left, enough) => streamRoutes(query, onTold, left, enough))
}

/** Everything a start can become. */
export function findReach(from: string, maxSteps: number | null, carried: LibraryFile | null, onTold: OnTold): Finding<ReachReply> {
  const query = { from, ...(maxSteps === null ? {} : { maxSteps }), ...(carried === null ? {} : { carried }) }
  return finding<ReachNetwork>({ what: 'reach', query }, onTold, (left, enough) => streamReach(query, onTold, left, enough))
}

function finding<T extends Found>(
  what: SearchAsked,
  onTold: OnTold,
  onServer: (left: AbortSignal, enough: Promise<void>) => Promise<T>,
): Finding<T> {
  const id = ++asked
  const left = new AbortController()
  let enough: () => void = () => {}
  const stopped = new Promise<void>(resolve => {
    enough = resolve
  })
  const answer = new Promise<T>((resolve, reject) => {
    const there = (): void => void onServer(left.signal, stopped).then(resolve, fault => left.signal.aborted || reject(fault))
    // What a plan brings along is held against the rules and screened on the server, which then searches with it.
    if (!searchesHere || what.query.carried !== undefined) {
      there()
      return
    }
    waiting.set(id, {
      onTold,
      onFound: found => {
        if (found === 'elsewhere') there()
        else if (found.ok) resolve(found.value as T)
        else reject(new Refused(found.problems, 422))
      },
    })
    order({ kind: 'search', id, asked: what })
  })
  return {
    answer,
    stop: () => {
      enough()
      order({ kind: 'stop', id })
    },
    leave: () => {
      left.abort()
      waiting.delete(id)
      order({ kind: 'leave', id })
    },
  }
}
/** Once the page is drawn and has nothing better to do. */
function whenIdle(work: () => void): void {
  const idle = (): void => {
    if ('requestIdleCallback' in globalThis) requestIdleCallback(work, { timeout: 5000 })
    else setTimeout(work, 1000)
  }
  if (document.readyState === 'complete') idle()
  else addEventListener('load', idle, { once: true })
}
