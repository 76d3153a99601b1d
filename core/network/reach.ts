import { labelsInPieces } from './best.ts'
import { type InPieces, sortedInPieces } from './pieces.ts'
import type { RouteSearch } from './ranked.ts'
import type { RankedRoute } from './ranked-route.ts'
import { type Space, targetNode } from './space.ts'

/** What is told while it is found out what a start can become. */
export type Reaching =
  /** The best route, which proves that the compound can be made; null = not proven within the budget, or not looked at: there may be none. */
  | { readonly kind: 'confirmed'; readonly compound: number; readonly first: RankedRoute | null }
  /** Routes to a confirmed compound, and whether these are all. */
  | { readonly kind: 'counted'; readonly compound: number; readonly routes: number; readonly counted: boolean }
  /** A place to look at other things: compounds of this round done, of how many, and partial routes taken up in all. */
  | { readonly kind: 'at'; readonly doing: 'confirming' | 'counting'; readonly done: number; readonly all: number; readonly work: number }

export interface ReachOptions {
  readonly maxSteps?: number
  /** Work allowed for each compound in each round, in partial routes taken up. */
  readonly budget?: number
  /** Work allowed for all compounds of one round together. */
  readonly wholeBudget?: number
  /** No more routes are counted for one compound. */
  readonly countUpTo?: number
  readonly shouldStop?: () => boolean
}

/** Partial routes taken up between two pauses: some milliseconds where routes are long. */
const slice = 20
/** However many compounds share a budget, each has so much of it. */
const leastShare = 200

/**
 * What the start of a search can become: first every compound is confirmed, in the order of its label, then the routes to those confirmed are
 * counted. The labels alone are bounds, not answers (a branch may need what it makes): each compound is confirmed by a real route.
 *
 * @param compounds how many the network has
 * @returns false where it was stopped: what was not looked at is told as not proven, and its routes as not counted
 */
export function* reachedBy(search: RouteSearch, compounds: number, options: ReachOptions = {}): Generator<Reaching, boolean> {
  const { countUpTo = 1000, budget = 5000, wholeBudget = 5_000_000, maxSteps, shouldStop } = options
  let work = 0
  const streamTo = (compound: number, most: number) =>
    search.routesTo(targetNode(search.space, compound), {
      budget: most,
      ...(maxSteps !== undefined && { maxSteps }),
      ...(shouldStop && { shouldStop }),
    })

  const finding = inReach(search, compounds, maxSteps)
  let found = finding.next()
  for (; !found.done; found = finding.next()) yield { kind: 'at', doing: 'confirming', done: 0, all: 0, work }
  const candidates = found.value
  const confirmed: number[] = []
  const confirming = new Shares(candidates.length, budget, wholeBudget)
  for (const [at, compound] of candidates.entries()) {
    if (shouldStop?.()) {
      for (const rest of candidates.slice(at)) yield { kind: 'confirmed', compound: rest, first: null }
      return false
    }
    const stream = streamTo(compound, confirming.next())
    let first = stream.next(slice)
    while (first === null && stream.paused) {
      yield { kind: 'at', doing: 'confirming', done: at, all: candidates.length, work: work + stream.pops }
      first = stream.next(slice)
    }
    confirming.took(stream.pops)
    work += stream.pops
    if (first !== null) confirmed.push(compound)
    if (first !== null || !stream.complete) yield { kind: 'confirmed', compound, first }
    if (at % slice === 0) yield { kind: 'at', doing: 'confirming', done: at, all: candidates.length, work }
  }

  const counting = new Shares(confirmed.length, budget, wholeBudget)
  for (const [at, compound] of confirmed.entries()) {
    const stream = streamTo(compound, counting.next())
    let routes = 0
    let told = 0
    while (routes < countUpTo) {
      if (shouldStop?.()) return false
      if (stream.next(slice) !== null) routes++
      else if (!stream.paused) break
      if (stream.pops - told < slice) continue
      told = stream.pops
      yield { kind: 'at', doing: 'counting', done: at, all: confirmed.length, work: work + told }
    }
    counting.took(stream.pops)
    work += stream.pops
    // Where its share did not reach even to the first, the route that confirmed it is there all the same.
    yield { kind: 'counted', compound, routes: Math.max(1, routes), counted: stream.complete }
  }
  return true
}

/** One budget for many: what the first do not use is left to the others. */
class Shares {
  constructor(
    private waiting: number,
    private readonly most: number,
    private left: number,
  ) {}

  next(): number {
    return Math.min(this.most, Math.max(leastShare, Math.floor(this.left / this.waiting)))
  }

  took(work: number): void {
    this.waiting--
    this.left -= work
  }
}

/** Compounds that the labels leave possible, best first. */
function* inReach({ space, labels }: RouteSearch, compounds: number, maxSteps: number | undefined): InPieces<readonly number[]> {
  const chain = maxSteps === undefined ? null : yield* longestChains(space)
  const possible: number[] = []
  const first = targetNode(space, 0)
  for (let compound = 0; compound < compounds; compound++) {
    const node = first + compound
    if (compound === space.start || labels.value[node] === Number.POSITIVE_INFINITY) continue
    if (chain === null || chain[node]! <= maxSteps!) possible.push(compound)
  }
  return yield* sortedInPieces(possible, (a, b) => labels.value[first + a]! - labels.value[first + b]! || a - b)
}

/** By node, the least that the longest chain of steps in a route to it can be: no route has fewer steps. */
function* longestChains(space: Space): InPieces<Float64Array> {
  const { arcOf, leaf, factor } = space
  const own = new Float64Array(arcOf.length)
  for (let a = 0; a < own.length; a++) own[a] = arcOf[a]! < 0 ? 0 : 1
  const free = new Float64Array(leaf.length)
  for (let u = 0; u < free.length; u++) free[u] = leaf[u]! < Number.POSITIVE_INFINITY ? 0 : Number.POSITIVE_INFINITY
  const ones = new Float64Array(factor.length).fill(1)
  return (yield* labelsInPieces({ ...space, form: 'max', own, factor: ones, made: new Float64Array(factor.length), leaf: free })).value
}
