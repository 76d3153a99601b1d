import { type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Told } from '../../core/choose/in-turns.ts'
import type { NamedReachRow } from '../../core/choose/reach-row.ts'
import type { RouteRow } from '../../core/choose/route-row.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { Refused } from '../api/client.ts'
import type { Finding } from './searcher.ts'

/** How a search fares that takes longer than a moment. */
export interface Looking {
  /** Rows of the list so far, in order; none where the axis only re-orders. */
  readonly rows: readonly RouteRow[]
  /** Compounds that the start can become so far, best first. */
  readonly reached: readonly NamedReachRow[]
  readonly found: number
  /** What is being done with how many of how many, where that is known. */
  readonly of: NonNullable<Extract<Told, { kind: 'progress' }>['of']> | null
  /** Nothing that is still to come has a smaller value; null = not known. */
  readonly bound: number | null
  /** It was told to stop, and is about to. */
  readonly stopping: boolean
}

/** An answer as it comes in: the last one stays while the next is waited for. */
export interface Asked<T> {
  readonly answer: T | null
  readonly waiting: boolean
  readonly problems: readonly Problem[]
  /** While it is waited for, once a moment has passed. */
  readonly looking?: Looking
  /** The answer is of a search that was stopped before its end. */
  readonly stopped?: boolean
}

const unasked: Asked<never> = { answer: null, waiting: false, problems: [] }

/** A search that is over sooner shows nothing of itself; a longer one is told of as often. */
const momentMs = 250

/** A question that is asked again when its key changes; nothing is kept of what was answered before. */
export class Asking<T> {
  readonly #state: Signal<Asked<T>> = signal<Asked<T>>(unasked)
  #key: string | null = null
  #again: (() => void) | null = null
  #now: { readonly finding: Finding<T>; stopped: boolean } | null = null
  #timer: ReturnType<typeof setTimeout> | undefined
  #looking: Looking = nothingYet

  get state(): ReadonlySignal<Asked<T>> {
    return this.#state
  }

  /** @param keep  let the old answer stand meanwhile: it is about the same thing, only older */
  ask(key: string, question: (onTold: (event: Told) => void) => Finding<T>, keep = true): void {
    if (key === this.#key) return
    this.#key = key
    const go = (): void => {
      this.#leave()
      this.#state.value = { answer: keep ? this.#state.peek().answer : null, waiting: true, problems: [] }
      this.#looking = nothingYet
      const finding = question(event => {
        if (this.#now?.finding === finding) this.#told(event)
      })
      const now = { finding, stopped: false }
      this.#now = now
      this.#timer = setTimeout(() => this.#show(), momentMs)
      finding.answer.then(
        answer => this.#settle(now, { answer, waiting: false, problems: [], ...(now.stopped ? { stopped: true } : {}) }),
        fault => this.#settle(now, { answer: null, waiting: false, problems: problemsOf(fault) }),
      )
    }
    this.#again = go
    go()
  }

  /** Asks the same once more: after the server was silent. */
  again(): void {
    this.#again?.()
  }

  /** Has the search make do with what it found. */
  stop(): void {
    if (this.#now === null || this.#now.stopped) return
    this.#now.stopped = true
    this.#now.finding.stop()
    this.#looking = { ...this.#looking, stopping: true }
    this.#show()
  }

  /** What was answered before no longer counts: the library has changed. */
  forget(): void {
    this.#key = null
  }

  clear(): void {
    this.#leave()
    this.#key = null
    this.#again = null
    this.#state.value = unasked
  }

  #told(event: Told): void {
    const { rows, reached, found } = this.#looking
    if (event.kind === 'row') this.#looking = { ...this.#looking, rows: [...rows, event.row], found: Math.max(found, rows.length + 1) }
    else if (event.kind === 'reached') {
      const all = [...reached, ...event.rows]
      this.#looking = { ...this.#looking, reached: all, found: Math.max(found, all.length) }
    } else this.#looking = { ...this.#looking, found: event.found, bound: event.bound, of: event.of ?? null }
  }

  #show(): void {
    clearTimeout(this.#timer)
    if (this.#now === null) return
    if (this.#state.peek().looking !== this.#looking) this.#state.value = { ...this.#state.peek(), looking: this.#looking }
    this.#timer = setTimeout(() => this.#show(), momentMs)
  }

  #settle(of: { readonly finding: Finding<T> }, state: Asked<T>): void {
    if (this.#now !== of) return
    clearTimeout(this.#timer)
    this.#now = null
    this.#state.value = state
  }

  #leave(): void {
    clearTimeout(this.#timer)
    this.#now?.finding.leave()
    this.#now = null
  }
}

const nothingYet: Looking = { rows: [], reached: [], found: 0, of: null, bound: null, stopping: false }

/** What went wrong, in words; anything that is no refusal of the server is our own mistake and is told as such. */
export function problemsOf(fault: unknown): readonly Problem[] {
  if (fault instanceof Refused) return fault.problems
  return [
    {
      code: 'page-failed',
      where: ['this page'],
      what: 'Something went wrong in the page itself.',
      why: fault instanceof Error ? fault.message : String(fault),
      cure: 'Load the page again; what you wrote is kept in this browser.',
    },
  ]
}
