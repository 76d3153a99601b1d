import { type LibraryHere, type LibraryReply, libraryHere, searchHere } from './library-here.ts'
import type { SearchAnswer, SearchOrder } from './search-orders.ts'
import { solvedBeside } from './solved-beside.ts'

/**
 * Searches routes beside the page and beside the worker that reckons, in the whole library. Before each search the server is asked whether
 * the library is still the same; only where it does not answer the one that is here serves on.
 */
let address: string | null = null
let here: LibraryHere | null = null
/** Searches that run, with what was said of them since. */
const running = new Map<number, { stopped: boolean; readonly left: AbortController }>()

const say = (answer: SearchAnswer): void => postMessage(answer)

addEventListener('message', ({ data }: MessageEvent<SearchOrder>) => {
  if (data.kind === 'bring') {
    address = data.address
    void bring().then(() => say({ kind: 'library', edition: here?.edition ?? null }))
  } else if (data.kind === 'search') void search(data)
  else if (data.kind === 'leave') running.get(data.id)?.left.abort()
  else {
    const one = running.get(data.id)
    if (one !== undefined) one.stopped = true
  }
})

// What is sent before this line runs may be lost while modules are still being fetched.
say({ kind: 'ready' })

async function bring(): Promise<void> {
  if (address === null) return
  try {
    const known = here === null ? {} : { 'if-none-match': `"${here.edition}"` }
    const reply = await fetch(address, { headers: known, cache: here === null ? 'default' : 'no-store' })
    if (reply.status === 304) return
    here = reply.ok ? libraryHere((await reply.json()) as LibraryReply) : null
  } catch {
    // The server is silent: nobody can have changed the library through it.
  }
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
    await bring()
    if (here === null) {
      say({ kind: 'elsewhere', id })
      return
    }
    const { edition } = here
    let began = performance.now()
    const turns = searchHere(here, asked, () => own.stopped, {
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
      if (turn.done) {
        say({ kind: 'found', id, edition, answer: turn.value })
        return
      }
      if (turn.value.kind === 'progress' && performance.now() - said < progressMs) continue
      said = performance.now()
      say({ kind: 'told', id, event: turn.value })
    }
  } catch (fault) {
    if (!(fault instanceof Left)) throw fault
  } finally {
    running.delete(id)
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
