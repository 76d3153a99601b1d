import { type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { Problem } from '../../core/problem/problem.ts'
import { Refused } from '../api/client.ts'

/** An answer of the server as it comes in: the last one stays while the next is waited for. */
export interface Asked<T> {
  readonly answer: T | null
  readonly waiting: boolean
  readonly problems: readonly Problem[]
}

const unasked: Asked<never> = { answer: null, waiting: false, problems: [] }

/** A question to the server that is asked again when its key changes, answered from memory where it was asked before. */
export class Asking<T> {
  readonly #state: Signal<Asked<T>> = signal<Asked<T>>(unasked)
  readonly #known = new Map<string, T>()
  #key: string | null = null
  #again: (() => void) | null = null

  get state(): ReadonlySignal<Asked<T>> {
    return this.#state
  }

  /** @param keep  let the old answer stand meanwhile: it is about the same thing, only older */
  ask(key: string, question: () => Promise<T>, keep = true): void {
    if (key === this.#key) return
    this.#key = key
    const known = this.#known.get(key)
    if (known !== undefined) {
      this.#state.value = { answer: known, waiting: false, problems: [] }
      return
    }
    const go = (): void => {
      this.#state.value = { answer: keep ? this.#state.value.answer : null, waiting: true, problems: [] }
      question().then(
        answer => {
          this.#known.set(key, answer)
          if (key === this.#key) this.#state.value = { answer, waiting: false, problems: [] }
        },
        fault => {
          if (key === this.#key) this.#state.value = { answer: null, waiting: false, problems: problemsOf(fault) }
        },
      )
    }
    this.#again = go
    go()
  }

  /** Asks the same once more: after the server was silent. */
  again(): void {
    this.#again?.()
  }

  /** What was answered before no longer counts: the library has changed. */
  forget(): void {
    this.#known.clear()
    this.#key = null
  }

  clear(): void {
    this.#key = null
    this.#again = null
    this.#state.value = unasked
  }
}

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
