import { compareCounts, hazardCounts } from '../hazards/counts.ts'
import type { HazardCounts, RegulatedHit } from '../hazards/hazard-list.ts'
import { regulatedAmong, stopsAmong } from '../hazards/regulated.ts'
import type { HazardTables } from '../hazards/tables.ts'
import type { Traits } from '../hazards/traits.ts'
import type { Library } from '../library/library.ts'
import { beside, masksTogether } from '../network/filter.ts'
import { indexIn, type Network, networkOf } from '../network/network.ts'
import { type ProvenAxis, weightsFor } from '../network/objectives.ts'
import { GainingCircle, type OrderedRoute, OrderedRoutes, type RoutesAsked } from '../network/routes.ts'
import { defaultSettings, type Settings } from '../plan/settings.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { boughtBy, madeBy } from '../route/made-bought.ts'
import { materialsOfRoute } from '../route/materials.ts'
import { longestLinearYield, overallYieldOnStart, type Yields } from '../route/overall-yield.ts'
import type { Route } from '../route/route.ts'
import { workingOrder } from '../route/working-order.ts'
import type { PacksFile } from '../shopping/packs.ts'
import { linePrices } from '../shopping/unit-price.ts'
import { forbiddenArcs, stoppedArcs } from './forbidden.ts'
import { noRoute } from './no-route.ts'
import { gainingCircle, undecided } from './problems.ts'
import { isProven, type ReadQuery, type RoutesQuery, readQuery } from './query.ts'
import { flagsOf, type RouteFlag } from './route-flags.ts'

/** One route as `waybench routes` lists it. */
export interface RouteRow {
  /** Transformation ids in working order. */
  readonly steps: readonly string[]
  readonly overallYieldOnStart: number
  readonly longestLinearYield: number
  /** Compounds. */
  readonly made: readonly string[]
  /** Materials as charged. */
  readonly bought: readonly string[]
  /** The figure of the axis: mol of start per mol of target, steps, hours, minor units per mol, mass in over product, fraction; null = none, or unknown. */
  readonly value: number | null
  readonly hazard: HazardCounts
  readonly flags: readonly RouteFlag[]
}

/** A gentler route near the first: its row, its place in the order of the axis, and what it costs. */
export interface GentlestRoute extends RouteRow {
  readonly place: number
  /** Points of overall yield on start that it lies below the first; negative where it lies above. */
  readonly yieldPointsLost: number
}

export interface RouteRows {
  readonly routes: readonly RouteRow[]
  /** No further route exists. */
  readonly complete: boolean
  /** The order of these rows is proven; false = the search was ended and some of them are only the best found. */
  readonly proven: boolean
  /** No route that is not listed has a smaller value; absent where the list is complete, or the axis proves nothing. */
  readonly bound?: number
  readonly gentlest?: GentlestRoute
}

/** Rows; or an answer that there are none, with the reason; or a substance that ends planning. */
export type RoutesAnswer =
  | ({ readonly kind: 'routes' } & RouteRows)
  | { readonly kind: 'none'; readonly problems: readonly Problem[] }
  | { readonly kind: 'stopped'; readonly stopped: readonly RegulatedHit[] }

export interface RoutesInput {
  readonly library: Library
  /** Not looked at yet by the rows themselves; the lists that stop stand in the traits. */
  readonly tables?: HazardTables
  readonly traits: ReadonlyMap<string, Traits>
  readonly query: RoutesQuery
  readonly packs?: PacksFile | null
  readonly settings?: Settings
  /** Work allowed a search, in partial routes taken up. */
  readonly budget?: number
  readonly shouldStop?: () => boolean
}

/** Routes drawn beyond those listed, to name a gentler one and one that the buyer may have. */
const drawnAtLeast = 60
/** Routes drawn where the axis only re-orders what was found. */
const drawnToReorder = 500

/**
 * Routes from one material to another: the JSON of `waybench routes`.
 *
 * @returns problems for a query that cannot be read; `none` where no route exists or is left, saying why; `stopped` where a list ends planning
 *   with the start or the target itself
 */
export function routeRows(input: RoutesInput): Checked<RoutesAnswer> {
  const { library, traits, query, settings = defaultSettings } = input
  const read = readQuery(library, traits, query)
  if (!read.ok) return read
  const asked = read.value
  const stopped = stopsAmong(traits, [...new Set([query.from, asked.start, query.to, asked.target])])
  if (stopped.length > 0) return good({ kind: 'stopped', stopped })

  const network = networkOf(library)
  const masks = { library, network, traits, settings }
  const stops = stoppedArcs(masks)
  const forbidden = forbiddenArcs(masks, query)
  try {
    const drawing = drawingFor(input, network, asked)
    const found = draw(drawing, masksTogether(stops, forbidden), asked.makeAll ? 'all' : 'default', query.maxSteps)
    if (found.routes.length > 0) return good({ kind: 'routes', ...listed(drawing, found) })
    if (!found.complete) return good({ kind: 'none', problems: [undecided(query, found.bound)] })
    const exists = (masked: Uint8Array, mode: RoutesAsked['mode'], maxSteps?: number, free?: boolean) =>
      draw(free ? { ...drawing, asked: { ...asked, mustPass: [], make: [] } } : drawing, masked, mode, maxSteps, 1).routes.length > 0
    return good({ kind: 'none', problems: noRoute({ library, network, traits, query, asked, stops, forbidden, exists }) })
  } catch (error) {
    if (error instanceof GainingCircle) return bad([gainingCircle(error)])
    throw error
  }
}

interface Drawing {
  readonly input: RoutesInput
  readonly network: Network
  readonly asked: ReadQuery
  readonly yields: Yields
  readonly axis: ProvenAxis
}

function drawingFor(input: RoutesInput, network: Network, asked: ReadQuery): Drawing {
  const own = Object.entries((input.settings ?? defaultSettings).yields)
  const yields = new Map(own.map(([transformation, percent]) => [transformation, percent.typical / 100]))
  return { input, network, asked, yields, axis: isProven(asked.by) ? asked.by : 'start' }
}

interface Drawn {
  readonly routes: readonly OrderedRoute[]
  readonly complete: boolean
  readonly bound: number | null
}

function draw(drawing: Drawing, masked: Uint8Array, mode: RoutesAsked['mode'], maxSteps: number | undefined, most?: number): Drawn {
  const { input, network, asked, yields, axis } = drawing
  const { library, query } = input
  const at = (id: string) => indexIn(network.compounds, id)
  const target = at(asked.target)
  const mask = masksTogether(masked, beside(network, target))
  const weights = weightsFor(axis, {
    library,
    network,
    masked: mask,
    yields,
    priceOf: axis === 'cost' ? linePrices(library, input.packs ?? null) : () => null,
  })
  const routes = new OrderedRoutes(
    network,
    weights,
    weightsFor('steps', { library, network, masked: mask }),
    { start: at(asked.start), mode, masked: mask, make: asked.make.map(at), mustPass: asked.mustPass.map(at) },
    target,
    {
      ...(maxSteps !== undefined && { maxSteps }),
      ...(input.budget !== undefined && { budget: input.budget }),
      ...(input.shouldStop && { shouldStop: input.shouldStop }),
    },
  )
  const wanted = most ?? Math.max(query.count ?? defaultCount, asked.by === axis ? drawnAtLeast : drawnToReorder)
  const found: OrderedRoute[] = []
  while (found.length < wanted) {
    const route = routes.next()
    if (route === null) break
    found.push(route)
  }
  // One more is looked for, so that a list which ends exactly here is known to be complete.
  const next = found.length === wanted ? routes.next() : null
  return { routes: found, complete: next === null && routes.complete, bound: next ? next.value : routes.bound }
}

export const defaultCount = 10

/** Rows of what was drawn, in the order of the axis, cut to the count asked for. */
function listed(drawing: Drawing, drawn: Drawn): RouteRows {
  const { input, network, asked, axis } = drawing
  const { library, query, traits, settings = defaultSettings } = input
  const molarMass = library.molarMass.get(asked.target)
  const figure = (value: number | null): number | null => {
    if (value === null || axis !== 'mass-intensity') return value
    return molarMass === undefined ? null : value / molarMass
  }
  const briefs = drawn.routes.map((found, index) => brief(drawing, network, found, index))
  if (asked.by === 'yield') briefs.sort((a, b) => b.overallYield - a.overallYield || a.index - b.index)
  if (asked.by === 'hazard') briefs.sort((a, b) => compareCounts(a.hazard, b.hazard) || a.index - b.index)

  const row = (one: Brief): RouteRow => {
    const value = asked.by === 'hazard' ? null : asked.by === 'yield' ? one.overallYield : figure(one.value)
    const unknown =
      one.value === null ? `The library does not know all that "${asked.by}" asks of this route, which therefore stands last.` : null
    return {
      steps: one.route.steps.map(s => s.transformation),
      overallYieldOnStart: one.overallYield,
      longestLinearYield: longestLinearYield(library, one.route, drawing.yields),
      made: madeBy(library, one.route),
      bought: boughtBy(library, one.route),
      value,
      hazard: one.hazard,
      flags: flagsOf(library, traits, one.materials, settings, one.hazard, unknown),
    }
  }
  const count = query.count ?? defaultCount
  const routes = briefs.slice(0, count).map(row)
  const whole = drawn.complete && drawn.routes.length <= count
  const bound = whole || asked.by !== axis ? null : figure(drawn.routes[count]?.value ?? drawn.bound)
  const gentlest = gentlestOf(briefs, row, one => regulatedAmong(traits, one.materials, settings).some(hit => hit.barred))
  return {
    routes: namingTheNext(routes, briefs, row),
    complete: whole,
    proven: drawn.routes.slice(0, count).every(route => route.proven),
    ...(bound !== null && { bound }),
    ...(gentlest && { gentlest }),
  }
}

/** What every drawn route is looked at for; the rest of a row is worked out where it is listed. */
interface Brief {
  readonly index: number
  readonly route: Route
  readonly value: number | null
  readonly overallYield: number
  readonly materials: ReturnType<typeof materialsOfRoute>
  readonly hazard: HazardCounts
}

function brief({ input, asked, yields }: Drawing, network: Network, found: OrderedRoute, index: number): Brief {
  const { library } = input
  const steps = workingOrder(
    library,
    asked.start,
    found.arcs.map(a => network.arcs[a]!),
  )
  const route: Route = { start: asked.start, target: asked.target, steps }
  const materials = materialsOfRoute(library, route)
  return {
    index,
    route,
    value: found.value,
    overallYield: overallYieldOnStart(library, route, yields),
    materials,
    hazard: hazardCounts(library, materials),
  }
}

/**
 * Of those within ten points of the first one's overall yield on start, the gentlest, where that is not the first itself. What the buyer may
 * not have is never recommended.
 */
function gentlestOf(briefs: readonly Brief[], row: (one: Brief) => RouteRow, isBarred: (one: Brief) => boolean): GentlestRoute | null {
  const first = briefs[0]!
  let gentlest = first
  for (const one of briefs) {
    if (one.overallYield >= first.overallYield - 0.1 - 1e-9 && compareCounts(one.hazard, gentlest.hazard) < 0 && !isBarred(one))
      gentlest = one
  }
  if (gentlest === first) return null
  const yieldPointsLost = 100 * (first.overallYield - gentlest.overallYield)
  return { ...row(gentlest), place: briefs.indexOf(gentlest) + 1, yieldPointsLost }
}

/** Where the public cannot have a route, its flag names the next one that they can. */
function namingTheNext(routes: readonly RouteRow[], briefs: readonly Brief[], row: (one: Brief) => RouteRow): readonly RouteRow[] {
  const isBarred = (one: RouteRow) => one.flags.some(flag => flag.kind === 'barred')
  if (!routes.some(isBarred)) return routes
  const places = new Map<number, boolean>(routes.map((one, index) => [index, isBarred(one)]))
  const barredAt = (index: number): boolean => {
    const known = places.get(index)
    if (known !== undefined) return known
    const barred = isBarred(row(briefs[index]!))
    places.set(index, barred)
    return barred
  }
  return routes.map((one, index) => {
    if (!isBarred(one)) return one
    let next = index + 1
    while (next < briefs.length && barredAt(next)) next++
    const free = briefs[next]
    const text = free
      ? ` The next route that they can have is number ${next + 1}: ${free.route.steps.map(s => s.transformation).join(', ')}.`
      : ' No later route that was looked at is free of this.'
    return { ...one, flags: one.flags.map((flag, i) => (i === 0 ? { ...flag, text: flag.text + text } : flag)) }
  })
}
