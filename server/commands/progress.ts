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
    terminal.err(`Still searching: ${event.found} ${what} found${bound}. Ctrl+C ends it.\n`)
  }
}
