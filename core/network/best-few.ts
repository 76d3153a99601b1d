import { compareArcs, type RankedRoute } from './ranked-route.ts'
import type { Space } from './space.ts'

/** Values nearer than this, in parts of themselves, are equal: see the queue of ranked routes. */
const tie = 1e-9

/** The largest value that counts as equal. */
export const upTo = (value: number): number => value + tie * (1 + Math.abs(value))

/** The best few of the routes that come by, by a sum over distinct steps; of equal value fewer steps first, then by ids. */
export class BestFew {
  readonly routes: RankedRoute[] = []
  /** Nothing worth more is let in any more. */
  limit = Number.POSITIVE_INFINITY
  private readonly known = new Set<string>()
  /** By arc of the library's network. */
  private readonly own = new Map<number, number>()

  constructor(
    { arcOf, own }: Space,
    private readonly count: number,
  ) {
    for (let a = 0; a < own.length; a++) if (arcOf[a]! >= 0) this.own.set(arcOf[a]!, own[a]!)
  }

  /** @param arcs of the library's network, in order */
  keep(arcs: readonly number[]): void {
    const key = arcs.join()
    if (this.known.has(key)) return
    this.known.add(key)
    const { routes } = this
    const route = { arcs, value: arcs.reduce((sum, arc) => sum + this.own.get(arc)!, 0) }
    let at = routes.length
    while (at > 0 && isBefore(route, routes[at - 1]!)) at--
    routes.splice(at, 0, route)
    if (routes.length > this.count) routes.pop()
    if (routes.length < this.count) return
    this.limit = upTo(this.last)
  }

  /** The least that a route which was let pass may be worth. */
  get last(): number {
    return this.routes.length < this.count ? Number.POSITIVE_INFINITY : this.routes[this.routes.length - 1]!.value
  }
}

const isBefore = (a: RankedRoute, b: RankedRoute): boolean =>
  Math.abs(a.value - b.value) > tie * (1 + Math.abs(a.value)) ? a.value < b.value : compareArcs(a.arcs, b.arcs) < 0
