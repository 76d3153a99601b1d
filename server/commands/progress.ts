import type { Told } from '../planning/searching.ts'
import type { Terminal } from './command.ts'

/** A search that takes longer than this says how it fares, and says it again as often. */
const everyMs = 1000

/** Tells on standard error how a long search fares; a short one says nothing. */
export function progressOn(terminal: Terminal, what: 'routes' | 'compounds'): (event: Told) => void {
  let said = performance.now()
  return event => {
    if (event.kind !== 'progress' || performance.now() - said < everyMs) return
    said = performance.now()
    const bound = event.bound === null ? '' : `; none that is left lies below ${Number(event.bound.toPrecision(4))}`
    const of = event.of === undefined || event.of.all === 0 ? '' : `; ${doing[event.of.doing]} ${event.of.done} of ${event.of.all}`
    terminal.err(`Still searching: ${event.found} ${what} found${bound}${of}. Ctrl+C ends it with what there is.\n`)
  }
}

const doing = { confirming: 'looked at', counting: 'routes counted for' } as const

/** Runs a search that the first Ctrl+C has make do with what it found; a second one ends the program. */
export async function untilInterrupted<T>(terminal: Terminal, search: (shouldStop: () => boolean) => Promise<T>): Promise<T> {
  let stopped = false
  const over = terminal.onInterrupt(() => {
    stopped = true
  })
  try {
    return await search(() => stopped)
  } finally {
    over()
  }
}
