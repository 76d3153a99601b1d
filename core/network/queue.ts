import { Heap } from './heap.ts'
import type { Findings } from './partial.ts'

/**
 * Routes that tie within 1e-9 are ordered by fewer steps: each step adds this part of the value to the key. A thousand steps stay inside
 * the 1e-9, and one step lies far above the rounding of a sum.
 */
export const stepPart = 1e-12

/**
 * Partial routes and groups of them, by their bounds. A partial route that nothing queued can beat is kept in hand instead of being queued,
 * for it would come out again at once.
 */
export class RouteQueue {
  /** What was taken out last: a partial route, and the rank from which on it is a group; -1 = the partial route itself. */
  state = -1
  rank = -1
  diving = false
  private readonly heap = new Heap(256)
  private readonly states: number[] = []
  private readonly ranks: number[] = []
  private readonly bounds: number[] = []
  private readonly steps: number[] = []
  private inHand = -1
  private inHandKey = Number.POSITIVE_INFINITY

  /** The smallest key; Infinity where nothing is left. */
  get minKey(): number {
    return Math.min(this.heap.minKey, this.inHandKey)
  }

  keyOf(bound: number, { steps, mustMake, left }: Findings): number {
    // Diving, what is decided counts for progress, and what is left against it. Measured: with a half the search drowns where branches share
    // much (what is left is counted at each use), with an eighth it runs into long ways round.
    return bound + stepPart * (this.diving ? left / 4 - steps : steps + mustMake) * (1 + Math.abs(bound))
  }

  put(found: Findings, state: number, rank: number): void {
    const key = this.keyOf(found.bound, found)
    if (rank < 0 && this.inHandKey === Number.POSITIVE_INFINITY && key <= this.heap.minKey) {
      this.inHand = state
      this.inHandKey = key
      return
    }
    this.states.push(state)
    this.ranks.push(rank)
    this.bounds.push(found.bound)
    this.steps.push(found.steps)
    this.heap.push(key, this.states.length - 1)
  }

  /** Takes out what has the smallest key. */
  take(): void {
    if (this.inHandKey <= this.heap.minKey) {
      this.state = this.inHand
      this.rank = -1
      this.inHandKey = Number.POSITIVE_INFINITY
      return
    }
    const entry = this.heap.pop()
    this.state = this.states[entry]!
    this.rank = this.ranks[entry]!
  }

  /**
   * On a plateau, where nearly all partial routes have one value, the order by fewer steps goes through all of them before one is complete.
   * The queue is emptied, and from now on the one nearest to being complete comes first; among equal values the order by steps is given up,
   * and that by value kept.
   */
  dive(): void {
    this.diving = true
    this.heap.clear()
    this.inHandKey = Number.POSITIVE_INFINITY
    for (const list of [this.states, this.ranks, this.bounds, this.steps]) list.length = 0
  }
}
