import type { Network } from './network.ts'
import type { InPieces } from './pieces.ts'
import type { RankedRoute } from './ranked-route.ts'
import { routeValue } from './route-value.ts'
import type { Weights } from './space.ts'

/** Routes drawn by the sum that counts a shared step at each use, before they are valued with each step once. */
const drawn = 100
/** No more than so many steps in all: a long route takes long, and the next one differs from it in one step. */
const drawnSteps = 4000
/** Steps of the routes that re-pricing finds, one after the other, before it ends. */
const repricedSteps = 1000
/** Rounds of re-pricing from one route: each was seen to end by itself long before. */
const mostRounds = 12
/** Routes from which re-pricing sets out. */
const seeds = 5
/** Steps of the best that are made dear in turn. */
const mostDear = 12
/** So many times its own figure counts a step made dear. */
const dearness = 4

/**
 * Good routes by a value that counts each step once, where the exact search did not come to its end. Draws the best by the plain sum, which
 * counts a shared step at each use, and values them; then re-prices: what a route does already is set to nought and the search is run again,
 * so that branches learn to share.
 *
 * Pauses wherever a search does, so that whoever asks may look at other things meanwhile.
 *
 * @param draw  the best routes by given weights, in order, until there are enough of them or of their steps
 * @returns best first; good, but not proven
 */
export function* bySharing(
  network: Network,
  weights: Weights,
  start: number,
  target: number,
  draw: (weights: Weights, count: number, steps: number) => InPieces<readonly RankedRoute[]>,
): InPieces<readonly RankedRoute[]> {
  const uses = network.body.length
  const plainSum = (own: Float64Array): Weights => ({
    form: 'sum',
    own,
    factor: new Float64Array(uses).fill(1),
    bought: new Float64Array(uses),
    made: new Float64Array(uses),
    start: new Float64Array(uses),
  })
  const found = new Map<string, RankedRoute>()
  const keep = (route: RankedRoute): RankedRoute => {
    const valued = { arcs: route.arcs, value: routeValue(network, weights, start, target, route.arcs) }
    found.set(route.arcs.join(), valued)
    return valued
  }
  for (const route of yield* draw(plainSum(weights.own), drawn, drawnSteps)) keep(route)
  let left = repricedSteps
  const bestBy = function* (prices: Float64Array): InPieces<RankedRoute | null> {
    const route = left > 0 ? (yield* draw(plainSum(prices), 1, left))[0] : undefined
    if (route === undefined) return null
    left -= route.arcs.length
    return keep(route)
  }
  for (const seed of inOrder(found).slice(0, seeds)) {
    let best = seed
    for (let round = 0; round < mostRounds; round++) {
      const next = yield* bestBy(repriced(weights.own, best.arcs, null))
      if (next === null || next.value >= best.value - 1e-9) break
      best = next
    }
  }
  // From the best of all that, each step in turn made dear: a way round it may share more.
  const best = inOrder(found)[0]
  for (const dear of best?.arcs.slice(0, mostDear) ?? []) yield* bestBy(repriced(weights.own, best!.arcs, dear))
  return inOrder(found)
}

/** Own figures with what is done already at nought, and one of these steps dear. */
function repriced(own: Float64Array, done: readonly number[], dear: number | null): Float64Array {
  const prices = own.slice()
  for (const a of done) prices[a] = a === dear ? dearness * own[a]! : 0
  return prices
}

const inOrder = (found: ReadonlyMap<string, RankedRoute>): RankedRoute[] =>
  [...found.values()].sort((a, b) => a.value - b.value || a.arcs.length - b.arcs.length || (a.arcs.join() < b.arcs.join() ? -1 : 1))
