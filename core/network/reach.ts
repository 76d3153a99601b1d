import type { RouteSearch } from './ranked.ts'
import type { RankedRoute } from './ranked-route.ts'
import { targetNode } from './space.ts'

/** One compound that the start can become. */
export interface Reached {
  readonly compound: number
  /** The best route, which proves the row; null = not proven within the budget: there may be none. */
  readonly first: RankedRoute | null
  /** The best value that is possible at all: that of the first route, or the bound. */
  readonly value: number
  /** Routes counted, and whether these are all. */
  readonly routes: number
  readonly counted: boolean
}

export interface ReachOptions {
  readonly maxSteps?: number
  /** Work allowed for each compound. */
  readonly budget?: number
  /** No more routes are counted for one compound. */
  readonly countUpTo?: number
  readonly shouldStop?: () => boolean
}

/**
 * What the start of a search can become, one compound after the other, in order of number. The labels alone are bounds, not answers (a branch
 * may need what it makes): each row is confirmed by a real route.
 *
 * @param compounds how many the network has
 */
export function* reachedBy(search: RouteSearch, compounds: number, options: ReachOptions = {}): Generator<Reached> {
  const { countUpTo = 1000, budget = 5000, maxSteps, shouldStop } = options
  for (let compound = 0; compound < compounds; compound++) {
    if (compound === search.space.start) continue
    const node = targetNode(search.space, compound)
    if (search.labels.value[node] === Number.POSITIVE_INFINITY) continue
    if (shouldStop?.()) return
    const stream = search.routesTo(node, { budget, ...(maxSteps !== undefined && { maxSteps }), ...(shouldStop && { shouldStop }) })
    const first = stream.next()
    if (first === null) {
      if (!stream.complete) yield { compound, first, value: stream.bound, routes: 0, counted: false }
      continue
    }
    let routes = 1
    while (routes < countUpTo && stream.next() !== null) routes++
    yield { compound, first, value: first.value, routes, counted: stream.complete }
  }
}
