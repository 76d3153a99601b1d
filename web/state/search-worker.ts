import type { Checked } from '../../core/problem/problem.ts'
import { type Found, type LibraryHere, type LibraryReply, libraryHere, type SearchAsked, searchHere } from './library-here.ts'
import type { SearchAnswer, SearchOrder } from './search-orders.ts'
import { solvedBeside } from './solved-beside.ts'

/**
 * Searches routes beside the page and beside the worker that reckons, in the whole library. Before each search and at its end the server is
 * asked whether the library is still the same; only where it is silent the one that is here serves on, and where it fails it searches itself.
 */
let address: string | null = null
let here: LibraryHere | null = null
let tooLarge = false
/** Questions to the server so far, and the newest that was answered: an answer that was overtaken is of an older library. */
let broughtLast = 0
let broughtNewest = 0
interface Running {
  stopped: boolean
  readonly left: AbortController
}

/** Searches that run, with what was said of them since. */
const running = new Map<number, Running>()

const say = (answer: SearchAnswer): void => postMessage(answer)

addEventListener('message', ({ data }: MessageEvent<SearchOrder>) => {
  if (data.kind === 'bring') {
    address = data.address
    void bring().then(() => say({ kind: 'library', edition: here?.edition ?? null, tooLarge }))
  } else if (data.kind === 'search') void search(data)
  else if (data.kind === 'leave') running.get(data.id)?.left.abort()
  else {
    const one = running.get(data.id)
    if (one !== undefined) one.stopped = true
  }
})

// What is sent before this line runs may be lost while modules are still being fetched.
say({ kind: 'ready' })

/** @returns false = the server failed to say whether the library is the same */
async function bring(): Promise<boolean> {
  if (address === null) return false
  const no = ++broughtLast
  try {
    const before = here
    const known = before === null ? {} : { 'if-none-match': `"${before.edition}"` }
    const reply = await fetch(address, { headers: known, cache: before === null ? 'default' : 'no-store' })
    if (reply.status !== 304 && !reply.ok) return false
    const brought = reply.status === 304 ? before : libraryHere((await reply.json()) as LibraryReply)
    if (no < broughtNewest) return true
    broughtNewest = no
    here = brought
    tooLarge = brought === null
  } catch {
    // The server is silent: nobody can have changed the library through it.
  }
  return true
}

/** So long it works before it looks whether it was told to stop. */
const turnMs = 12
/** Time between two words of progress. */
const progressMs = 100

class Left extends Error {}

async function search({ id, asked }: Extract<SearchOrder, { kind: 'search' }>): Promise<void> {
  const own = { stopped: false, left: new AbortController() }
  running.set(id, own)
  try {
    const same = await bring()
    let within: LibraryHere | null = here
    if (!same || within === null) {
      say({ kind: 'elsewhere', id, tooLarge })
      return
    }
    for (let first = true; within !== null; first = false) {
      const answer = await searched(id, asked, own, within, first)
      const { edition } = within
      // Where the server fails to say, what was found stands: the next search asks again.
      await bring()
      if (own.left.signal.aborted) return
      if (here === null || here.edition === edition) {
        say({ kind: 'found', id, edition, answer })
        return
      }
      within = here
    }
  } catch (fault) {
    if (!(fault instanceof Left)) throw fault
  } finally {
    running.delete(id)
  }
}

/** @param tellsRows  they are told as they come; of a search begun anew only the end is, for rows of the one before stand already */
async function searched(id: number, asked: SearchAsked, own: Running, within: LibraryHere, tellsRows: boolean): Promise<Checked<Found>> {
  let began = performance.now()
  const turns = searchHere(within, asked, () => own.stopped, {
    check: () => {
      if (own.left.signal.aborted) throw new Left()
    },
    solve: model => solvedBeside(model, own.left.signal, () => own.stopped),
    pause: () => {
      if (performance.now() - began < turnMs) return null
      return breath().then(() => {
        began = performance.now()
      })
    },
  })
  let said = 0
  for (;;) {
    const turn = await turns.next()
    if (turn.done) return turn.value
    if (turn.value.kind !== 'progress' && !tellsRows) continue
    if (turn.value.kind === 'progress' && performance.now() - said < progressMs) continue
    if (turn.value.kind === 'progress') said = performance.now()
    say({ kind: 'told', id, event: turn.value })
  }
}

/** Lets messages that have come meanwhile be taken in; a timer would wait four milliseconds each time. */
function breath(): Promise<void> {
  const { port1, port2 } = new MessageChannel()
  return new Promise(resolve => {
    port1.onmessage = () => {
      port1.close()
      resolve()
    }
    port2.postMessage(null)
  })
}
