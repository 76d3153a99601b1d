import { type Labels, labelsInPieces, labelsOf } from './best.ts'
import { chainSpaceInPieces } from './chain-space.ts'
import type { Network } from './network.ts'
import { type FrontOptions, FrontSearch } from './non-dominated.ts'
import { atOnce, type InPieces } from './pieces.ts'
import { RouteSearch, type RouteStream, type SearchOptions } from './ranked.ts'
import type { RankedRoute } from './ranked-route.ts'
import { routeValue } from './route-value.ts'
import { SettledRoutes } from './settled-routes.ts'
import { bySharing } from './shared-steps.ts'
import { openSpace, type Space, targetNode, type Weights, withUnknownLast } from './space.ts'
import type { Must } from './through.ts'

/** Which routes from a start are asked for. Compounds and arcs are indices of the network. */
export interface RoutesAsked {
  readonly start: number
  /**
   * `default`: a chain, all else bought where it can be. `all`: every route that uses the start. `leaf`: every route that uses the start and
   * makes nothing that can be bought, which comes to the same as `default` where all that is made on the way cannot be bought.
   */
  readonly mode: 'default' | 'all' | 'leaf'
  /** By arc: 1 = forbidden. */
  readonly masked: Uint8Array
  /** Compounds that every route makes, and that are therefore not bought. */
  readonly make: readonly number[]
  /** Compounds that every route makes or starts from. */
  readonly mustPass: readonly number[]
}

/** A circle of compounds in which one round gives back more than it took: always a fault of the data. */
export class GainingCircle extends Error {
  constructor(readonly compounds: readonly string[]) {
    super(`one round of ${compounds.join(', ')} gives back more than it took`)
  }
}

/**
 * A search over all targets of what is asked.
 *
 * @throws GainingCircle; the doors answer it with a Problem
 */
export const routeSearch = (network: Network, weights: Weights, asked: RoutesAsked): RouteSearch =>
  atOnce(routeSearchInPieces(network, weights, asked))

/**
 * The same with pauses.
 *
 * @throws GainingCircle
 */
export function* routeSearchInPieces(network: Network, weights: Weights, asked: RoutesAsked): InPieces<RouteSearch> {
  const space = yield* spaceInPieces(network, weights, asked)
  return new RouteSearch(space, sound(yield* labelsInPieces(space), network), mustsOf(space, asked))
}

/**
 * The search for the routes that no other beats on all of several axes at once.
 *
 * @param weights one an axis; what an axis does not know counts as its worst
 * @throws GainingCircle
 */
export function unbeatenSearch(
  network: Network,
  weights: readonly Weights[],
  asked: RoutesAsked,
  target: number,
  options: FrontOptions,
): FrontSearch {
  const spaces = weights.map(one => spaceOf(network, withUnknownLast(one), asked))
  const labels = spaces.map(space => sound(labelsOf(space), network))
  return new FrontSearch(spaces, labels, mustsOf(spaces[0]!, asked), targetNode(spaces[0]!, target), options)
}

/** The network as one search walks it: what is asked laid on it. */
export const spaceOf = (network: Network, weights: Weights, asked: RoutesAsked): Space => atOnce(spaceInPieces(network, weights, asked))

function* spaceInPieces(network: Network, weights: Weights, asked: RoutesAsked): InPieces<Space> {
  const opened = new Uint8Array(network.compounds.length)
  for (const c of asked.make) opened[c] = 1
  const options = { start: asked.start, masked: asked.masked, opened, makeAll: asked.mode === 'all' }
  return asked.mode === 'default' ? yield* chainSpaceInPieces(network, weights, options) : openSpace(network, weights, options)
}

/** What every route that is asked for meets. */
export function mustsOf(space: Space, asked: RoutesAsked): readonly Must[] {
  const made = [...asked.make, ...asked.mustPass.filter(c => c !== asked.start)]
  const musts: Must[] = made.map(c => ({ start: false, nodes: nodesOf(space, c) }))
  // A chain begins at the start anyway.
  if (asked.mode !== 'default') musts.push({ start: true, nodes: [] })
  return musts
}

function sound(labels: Labels, network: Network): Labels {
  if (labels.circle) throw new GainingCircle([...new Set(labels.circle.map(node => network.compounds[node % network.compounds.length]!))])
  return labels
}

const nodesOf = (space: Space, compound: number): number[] => (space.twin === null ? [compound] : [compound, targetNode(space, compound)])

/** What best first finds by distinct steps it has found by then; the rest is left to what goes depth first. */
const distinctBudget = 2500
const guessBudget = 20_000

/** Partial routes taken up by guessing between two pauses. */
const guessedAtOnce = 500

/** The first routes, until there are enough of them or of their steps. */
function* firstOf(stream: RouteStream, count: number, steps: number): InPieces<RankedRoute[]> {
  const routes: RankedRoute[] = []
  let left = steps
  while (routes.length < count && left > 0) {
    const route = stream.next(guessedAtOnce)
    if (route !== null) {
      routes.push(route)
      left -= route.arcs.length
    } else if (stream.paused) yield
    else break
  }
  return routes
}

/** A route in the order of an axis; `value` null = the axis does not know all of it. */
export interface OrderedRoute {
  readonly arcs: readonly number[]
  readonly value: number | null
  /** No route that comes later has a smaller value. */
  readonly proven: boolean
}

/**
 * Routes to one target in the order of an axis: first those whose value is known, in order; then those of which something is unknown, by
 * fewer steps and then ids. Drawn one by one.
 */
export class OrderedRoutes {
  /** Null while the next one is being made ready, and once all is over. */
  private stream: RouteStream | null = null
  private making: InPieces<RouteStream> | null
  private readonly known: boolean
  private unknownPart = false
  private readonly handedOut = new Set<string>()
  private settled: SettledRoutes | null = null
  private workBefore = 0
  complete = false
  /** The last call ended because the work it was given was done: ask again. */
  paused = false
  /** Routes of one value come by fewer steps and then by ids; false once that order was given up on a large plateau. */
  tiesInOrder = true

  /**
   * @param byStep weights that count each step once and know everything: the order of what the axis does not know
   */
  constructor(
    private readonly network: Network,
    private readonly weights: Weights,
    private readonly byStep: Weights,
    private readonly asked: RoutesAsked,
    private readonly target: number,
    private readonly options: SearchOptions = {},
  ) {
    this.known = ![weights.own, weights.bought, weights.made, weights.start].some(list => list.some(Number.isNaN))
    this.making = this.streamOf(weights)
  }

  /** Lower bound of the routes still to come; null where that is not known. */
  get bound(): number | null {
    if (this.stream === null || this.unknownPart) return null
    const { bound } = this.settled ?? this.stream
    return bound === Number.POSITIVE_INFINITY ? null : bound
  }

  /** Partial routes taken up so far. */
  get work(): number {
    return this.workBefore + (this.stream?.pops ?? 0)
  }

  /**
   * @param work partial routes to take up before it pauses
   * @throws GainingCircle
   */
  next(work = Number.POSITIVE_INFINITY): OrderedRoute | null {
    this.paused = false
    while (this.making !== null) {
      const piece = this.making.next()
      if (piece.done) {
        this.stream = piece.value
        this.making = null
      } else if (work < Number.POSITIVE_INFINITY) {
        this.paused = true
        return null
      }
    }
    while (this.stream !== null) {
      const found = this.stream.next(work)
      this.tiesInOrder &&= this.stream.tiesInOrder
      if (found === null) {
        this.paused = this.stream.paused
        if (this.paused) return null
        if (!this.stream.complete) return this.further(this.stream, work)
        if (this.known || this.unknownPart) {
          this.complete = true
          this.stream = null
          return null
        }
        this.unknownPart = true
        this.workBefore += this.stream.pops
        this.making = this.streamOf(this.byStep)
        this.stream = null
        return this.next(work)
      }
      if (!this.unknownPart) return this.listed({ arcs: found.arcs, value: found.value, proven: true })
      if (Number.isNaN(this.valueOfRoute(found))) return this.listed({ arcs: found.arcs, value: null, proven: true })
    }
    return null
  }

  /** Where best first was ended, a sum over distinct steps is settled depth first; for sums and chains the search itself ends in time. */
  private further(stream: RouteStream, work: number): OrderedRoute | null {
    const { unknownPart, options } = this
    const sought = unknownPart ? this.byStep : this.weights
    if (sought.form !== 'distinct' || options.shouldStop?.()) return null
    const { settleBudget = options.budget } = options
    this.settled ??= new SettledRoutes(stream, this.handedOut, () => this.guessed(sought), {
      ...options,
      ...(settleBudget !== undefined && { budget: settleBudget }),
    })
    for (;;) {
      const next = this.settled.next(work)
      if (next === null) {
        this.paused = this.settled.paused
        this.complete = this.settled.complete
        return null
      }
      // What is known to the axis stands in the list already.
      if (!unknownPart || Number.isNaN(this.valueOfRoute(next))) return { ...next, value: unknownPart ? null : next.value }
    }
  }

  private *guessed(sought: Weights): InPieces<readonly RankedRoute[]> {
    const options = { ...this.options, budget: guessBudget }
    const draw = function* (this: OrderedRoutes, weights: Weights, count: number, steps: number) {
      yield
      return yield* firstOf(yield* this.streamOf(weights, options), count, steps)
    }.bind(this)
    return yield* bySharing(this.network, sought, this.asked.start, this.target, draw)
  }

  private listed(route: OrderedRoute): OrderedRoute {
    if (this.weights.form === 'distinct' || this.unknownPart) this.handedOut.add(route.arcs.join())
    return route
  }

  private valueOfRoute(route: RankedRoute): number {
    return routeValue(this.network, this.weights, this.asked.start, this.target, route.arcs)
  }

  /** Where nothing but the target can be bought and made, a route is no chain with things beside it, and is then found once, not once a chain. */
  private plainest(): RoutesAsked {
    const { network, asked, target } = this
    if (asked.mode !== 'default') return asked
    const make = new Set([...asked.make, target])
    const either = network.head.some((c, a) => !asked.masked[a] && network.buyable[c] === 1 && c !== asked.start && !make.has(c))
    return either ? asked : { ...asked, mode: 'leaf', make: [...make] }
  }

  private *streamOf(weights: Weights, options = this.options): InPieces<RouteStream> {
    const search = yield* routeSearchInPieces(this.network, weights, this.plainest())
    return search.routesTo(
      targetNode(search.space, this.target),
      weights.form === 'distinct' ? { budget: distinctBudget, ...options } : options,
    )
  }
}
