import type { RegulatedList } from '../hazards/tables.ts'
import type { Traits } from '../hazards/traits.ts'
import type { Library } from '../library/library.ts'
import { beside, masksTogether } from '../network/filter.ts'
import { indexIn, type Network, networkOf } from '../network/network.ts'
import { type ProvenAxis, weighed, weightsFor } from '../network/objectives.ts'
import type { InPieces } from '../network/pieces.ts'
import { type OrderedRoute, OrderedRoutes, type RoutesAsked } from '../network/routes.ts'
import { sharedProgram } from '../network/shared-program.ts'
import type { Weights } from '../network/space.ts'
import { defaultSettings, type Settings } from '../plan/settings.ts'
import type { Yields } from '../route/overall-yield.ts'
import type { Route } from '../route/route.ts'
import type { PacksFile } from '../shopping/packs.ts'
import type { Solver } from '../shopping/shopping.ts'
import { linePrices } from '../shopping/unit-price.ts'
import { stepsApart } from './apart.ts'
import { openAmountsAt } from './at-least.ts'
import { believedYields } from './believed.ts'
import { isProven, type ReadQuery, type RoutesQuery } from './query.ts'
import type { NamedReachRow } from './reach-row.ts'
import type { RouteRow } from './route-row.ts'

export interface RoutesInput {
  readonly library: Library
  /** The regulated lists that are loaded, so that one without a material of the library may be named too. */
  readonly lists?: readonly RegulatedList[]
  readonly traits: ReadonlyMap<string, Traits>
  readonly query: RoutesQuery
  readonly packs?: PacksFile | null
  readonly settings?: Settings
  /** Work allowed a search, in partial routes taken up. */
  readonly budget?: number
  readonly shouldStop?: () => boolean
}

/** What a search has to say before it is done. */
export type SearchEvent =
  /** A row of the list, in order; what depends on later rows is told with the finished list. */
  | { readonly kind: 'row'; readonly place: number; readonly row: RouteRow }
  /** A place to look at other things: routes found, work done, and the least value that is still possible. */
  | {
      readonly kind: 'progress'
      readonly found: number
      readonly work: number
      readonly bound: number | null
      /** Where that is known: what is being done, with how many compounds it was done, of how many. */
      readonly of?: { readonly doing: 'confirming' | 'counting'; readonly done: number; readonly all: number }
    }
  /** Compounds that real routes have just confirmed; their routes are still to be counted. */
  | { readonly kind: 'reached'; readonly rows: readonly NamedReachRow[] }
  /** A model for the integer solver; whoever runs the search answers with what the solver says, or with nothing where there is none. */
  | { readonly kind: 'solve'; readonly model: string }
export type Solved = ReturnType<Solver>
/** A search that pauses at each event. */
export type Search<T> = Generator<SearchEvent, T, Solved | undefined>

/** Work that is part of a search: it pauses where the work does. */
export function* within<T>(work: InPieces<T>): Search<T> {
  for (let piece = work.next(); ; piece = work.next()) {
    if (piece.done) return piece.value
    yield { kind: 'progress', found: 0, work: 0, bound: null }
  }
}

/** Partial routes taken up for routes that are looked at and not listed. */
const spareWork = 20_000
/** Partial routes taken up between two events: some milliseconds. */
export const slice = 500

/** One query on one network. */
export interface Searching {
  readonly input: RoutesInput
  readonly settings: Settings
  readonly network: Network
  readonly asked: ReadQuery
  readonly yields: Yields
  /** Does the route buy something without an amount, or with the least one only? */
  readonly hasOpenAmounts: (route: Route) => boolean
  /** By which routes are drawn; `yield` and `hazard` re-order what is drawn by the start needed. */
  readonly axis: ProvenAxis
}

export function searchingFor(input: RoutesInput, asked: ReadQuery): Searching {
  const { library, settings = defaultSettings } = input
  const yields = believedYields(library, settings)
  return {
    input,
    settings,
    network: networkOf(library),
    asked,
    yields,
    hasOpenAmounts: openAmountsAt(library, yields),
    axis: isProven(asked.by) ? asked.by : 'start',
  }
}

/** Routes drawn in the order of the axis. */
export interface Drawn {
  readonly routes: readonly OrderedRoute[]
  readonly complete: boolean
  /** No route that was not drawn has a smaller value; null = not known. */
  readonly bound: number | null
  readonly tiesInOrder: boolean
}

export interface Terms {
  readonly masked: Uint8Array
  readonly mode: 'default' | 'all'
  readonly maxSteps: number | undefined
  readonly wanted: number
  /** Once so many are there, the rest of those wanted are worth only `spareWork`: they serve to name a gentler one. */
  readonly enough?: number
  /** Only routes at least so many steps different from every one before. */
  readonly apart?: number
  /** Told of each route as it is drawn; what it returns is an event of the search. */
  readonly onRoute?: (route: OrderedRoute, index: number) => SearchEvent | null
}

/** Draws routes one by one. */
export function* drawn(searching: Searching, terms: Terms): Search<Drawn> {
  const { network, axis } = searching
  const { apart = 1 } = terms
  const { asked, target } = askedOf(searching, terms)
  const weights = yield* weightsOf(searching, axis, asked.masked)
  const options = optionsOf(searching, terms.maxSteps)
  const byStep = weightsFor('steps', { library: searching.input.library, network, masked: asked.masked })
  yield { kind: 'progress', found: 0, work: 0, bound: null }
  const routes = new OrderedRoutes(network, weights, byStep, asked, target, options)
  const found: OrderedRoute[] = []
  const known = new Set<string>()
  let told = 0
  yield { kind: 'progress', found: 0, work: 0, bound: null }
  let spare: OrderedRoute | null = null
  let until = Number.POSITIVE_INFINITY
  // The search looks by itself only now and then, and a route that is told may take longer than many turns of it.
  while (spare === null && !searching.input.shouldStop?.()) {
    const route = routes.next(slice)
    if (route === null) {
      if (!routes.paused || routes.work > until) break
      yield { kind: 'progress', found: found.length, work: routes.work, bound: routes.bound }
    } else if (known.has(route.arcs.join()) || (apart > 1 && found.some(other => stepsApart(other.arcs, route.arcs) < apart))) {
    } else if (found.length === terms.wanted) {
      // One more is looked for, so that a list which ends exactly here is known to be complete.
      spare = route
    } else {
      found.push(route)
      known.add(route.arcs.join())
      if (found.length === terms.enough) until = routes.work + spareWork
      const event = terms.onRoute?.(route, found.length - 1) ?? null
      if (event !== null) yield event
    }
    // Routes that are not told of are found at no one's notice: what they took is told in time all the same.
    if (route !== null && routes.work > told + slice) {
      told = routes.work
      yield { kind: 'progress', found: found.length, work: told, bound: routes.bound }
    }
  }
  const whole = { routes: found, complete: spare === null && routes.complete, tiesInOrder: routes.tiesInOrder }
  const bound = spare?.proven ? spare.value : routes.bound
  // Whoever had enough of looking does not wait for a solver either.
  const prove = searching.input.query.prove && !searching.input.shouldStop?.()
  return prove ? yield* proven(searching, { ...whole, bound }, weights, asked, target, terms) : { ...whole, bound }
}

/** Has the integer solver settle what the search could not prove: the best by a sum over distinct steps. */
function* proven(
  { network }: Searching,
  drawn: Drawn,
  weights: Weights,
  asked: RoutesAsked,
  target: number,
  { maxSteps }: Terms,
): Search<Drawn> {
  const first = drawn.routes[0]
  if (weights.form !== 'distinct' || first === undefined || first.proven || first.value === null) return drawn
  const program = sharedProgram(network, weights, asked, target, first.value, maxSteps)
  const solved = program === null ? undefined : yield { kind: 'solve', model: program.model }
  if (program === null || (solved?.status !== 'optimal' && solved?.status !== 'feasible')) return drawn
  const route = program.routeIn(solved.columns)
  const isBetter = route !== null && route.value < first.value - 1e-9 * (1 + first.value)
  const best = isBetter ? route : { arcs: first.arcs, value: first.value }
  const isOptimal = solved.status === 'optimal' && route !== null
  return {
    ...drawn,
    routes: [{ ...best, proven: isOptimal }, ...drawn.routes.filter(other => other.arcs.join() !== best.arcs.join())],
    bound: Math.max(drawn.bound ?? 0, isOptimal ? best.value : (solved.bound ?? 0)),
  }
}

export function askedOf({ network, asked }: Searching, { masked, mode }: Terms): { asked: RoutesAsked; target: number } {
  const at = (id: string) => indexIn(network.compounds, id)
  const target = at(asked.target)
  const mask = masksTogether(masked, beside(network, target))
  return { target, asked: { start: at(asked.start), mode, masked: mask, make: asked.make.map(at), mustPass: asked.mustPass.map(at) } }
}

export function* weightsOf({ input, network, yields }: Searching, axis: ProvenAxis, masked: Uint8Array): Search<Weights> {
  const { library, packs = null } = input
  const priceOf = axis === 'cost' ? linePrices(library, packs) : () => null
  const weighing = weighed(axis, { library, network, masked, yields, priceOf })
  for (let step = weighing.next(); ; step = weighing.next()) {
    if (step.done) return step.value
    yield { kind: 'progress', found: 0, work: step.value, bound: null }
  }
}

export const optionsOf = ({ input: { budget, shouldStop } }: Searching, maxSteps: number | undefined) => ({
  ...(maxSteps !== undefined && { maxSteps }),
  ...(budget !== undefined && { budget }),
  ...(shouldStop && { shouldStop }),
})
