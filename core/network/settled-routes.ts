import { upTo } from './best-few.ts'
import { type DistinctBest, distinctBest } from './distinct-best.ts'
import type { InPieces } from './pieces.ts'
import type { RouteStream } from './ranked.ts'
import type { RankedRoute } from './ranked-route.ts'

export interface SettledRoute extends RankedRoute {
  /** No route that comes later has a smaller value. */
  readonly proven: boolean
}

export interface SettlingOptions {
  readonly maxSteps?: number
  /** Work allowed at one time, in partial routes. */
  readonly budget?: number
  readonly shouldStop?: () => boolean
}

const defaultBudget = 60_000
/** Routes settled at the first time beside those handed out before; later so many times as many. */
const atFirst = 12
const later = 3
/** Above so many arcs it is not tried: labels alone, made anew for each set of cuts, take a second. */
const mostArcs = 200_000

/**
 * Routes by a sum over distinct steps where best first did not come to its end: good ones are guessed and, no further than these, the best are
 * settled depth first, a few at first and more as more are asked for. What is not settled is handed out as the guess it is.
 */
export class SettledRoutes {
  /** All routes have been handed out. */
  complete = false
  /** The last call ended at a pause: ask again. */
  paused = false
  private readonly handedOut: Set<string>
  private count: number
  private known: readonly RankedRoute[] | null = null
  private settling: InPieces<DistinctBest> | null = null
  private best: DistinctBest | null = null
  /** Still to be handed out, the last first; the guesses after them all. */
  private waiting: RankedRoute[] = []
  private guesses: RankedRoute[] = []

  /**
   * @param stream    what best first came to
   * @param handedOut its routes, by their arcs
   * @param guess     good routes, which need not be the best
   */
  constructor(
    private readonly stream: RouteStream,
    handedOut: Iterable<string>,
    private readonly guess: () => InPieces<readonly RankedRoute[]>,
    private readonly options: SettlingOptions,
  ) {
    this.handedOut = new Set(handedOut)
    this.count = this.handedOut.size + atFirst
  }

  /** Lower bound of every route still to come. */
  get bound(): number {
    if (this.best === null) return this.stream.bound
    const next = this.waiting[this.waiting.length - 1] ?? this.guesses[this.guesses.length - 1]
    return Math.max(this.stream.bound, Math.min(this.best.bound, next?.value ?? Number.POSITIVE_INFINITY))
  }

  /** @param work less than Infinity: pauses where a search does */
  next(work: number): SettledRoute | null {
    this.paused = false
    for (;;) {
      while (this.best === null) {
        this.settling ??= this.settle()
        const piece = this.settling.next()
        if (piece.done) this.settled(piece.value)
        else if (work < Number.POSITIVE_INFINITY) {
          this.paused = true
          return null
        }
      }
      const { bound, isWhole } = this.best
      if (isWhole && this.waiting.length === 0 && bound < Number.POSITIVE_INFINITY) {
        this.count = later * this.count
        this.best = null
        this.settling = null
        continue
      }
      const settled = this.waiting.pop()
      const next = settled ?? this.guesses.pop()
      if (next === undefined) {
        this.complete = isWhole
        return null
      }
      this.handedOut.add(next.arcs.join())
      return { ...next, proven: settled !== undefined && next.value <= upTo(bound) }
    }
  }

  private settled(best: DistinctBest): void {
    this.best = best
    const listed = new Set(this.handedOut)
    for (const route of best.routes) listed.add(route.arcs.join())
    this.waiting = best.routes.filter(route => !this.handedOut.has(route.arcs.join())).reverse()
    this.guesses = this.known!.filter(route => !listed.has(route.arcs.join())).reverse()
  }

  private *settle(): InPieces<DistinctBest> {
    this.known ??= yield* this.guess()
    const { search, target } = this.stream
    const { space, labels, layers } = search
    if (space.own.length > mostArcs) return { routes: [], bound: 0, isWhole: false }
    return yield* distinctBest(space, labels.value, layers, target, {
      budget: defaultBudget,
      ...this.options,
      count: this.count,
      known: this.known,
    })
  }
}
