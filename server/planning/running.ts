import { randomUUID } from 'node:crypto'

/** A search that can be told to make do with what it has. */
export interface RunningSearch {
  /** Known to whoever asked alone. */
  readonly id: string
  readonly shouldStop: () => boolean
  /** It is over, however it ended. */
  readonly over: () => void
}

/** The searches of one server that are running now. */
export class Running {
  readonly #stopping = new Map<string, boolean>()

  begin(): RunningSearch {
    const id = randomUUID()
    this.#stopping.set(id, false)
    return { id, shouldStop: () => this.#stopping.get(id) ?? true, over: () => void this.#stopping.delete(id) }
  }

  /** @returns false where there is no such search, or no longer */
  stop(id: string): boolean {
    if (!this.#stopping.has(id)) return false
    this.#stopping.set(id, true)
    return true
  }

  get count(): number {
    return this.#stopping.size
  }
}
