import { compareCounts } from '../hazards/counts.ts'
import type { RegulatedHit } from '../hazards/hazard-list.ts'
import { regulatedAmong, stopsAmong } from '../hazards/regulated.ts'
import { masksTogether } from '../network/filter.ts'
import { networkInPieces } from '../network/network.ts'
import { GainingCircle, type OrderedRoute } from '../network/routes.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { atLeastApart } from './apart.ts'
import { Brief, briefsOf, figureOf, rowOf } from './brief.ts'
import { forbiddenInPieces, stoppedInPieces } from './forbidden.ts'
import { noRoute } from './no-route.ts'
import { gainingCircle, undecided } from './problems.ts'
import { type Axis, isProven, readQuery } from './query.ts'
import type { RouteRow } from './route-row.ts'
import { drawn, type RoutesInput, type Search, type Searching, searchingFor, type Terms, within } from './searching.ts'
import { unbeaten } from './unbeaten.ts'

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
  /** Routes of one value stand by fewer steps and then by ids; false = that order was given up among very many of one value. */
  readonly tiesInOrder: boolean
  /** Is the first row proven the best on its axis? If not, how far it may lie above the proven bound at most; null = not known. */
  readonly best: { readonly proven: boolean; readonly atMostAbovePercent: number | null }
  /** No route that is not listed has a smaller value; absent where the list is complete, or the axis proves nothing. */
  readonly bound?: number
  readonly gentlest?: GentlestRoute
  /** Where the list holds only what is unbeaten on several axes at once: which, and whether these are all such routes or only of those looked at. */
  readonly unbeaten?: { readonly axes: readonly Axis[]; readonly exact: boolean }
  /** Where the list was thinned: the least number of steps by which any two of these routes differ. */
  readonly apart?: number
}

/** Rows; or an answer that there are none, with the reason; or a substance that ends planning. */
export type RoutesAnswer =
  | ({ readonly kind: 'routes' } & RouteRows)
  | { readonly kind: 'none'; readonly problems: readonly Problem[] }
  | { readonly kind: 'stopped'; readonly stopped: readonly RegulatedHit[] }

/** Routes drawn beyond those listed, to name a gentler one and one that the buyer may have. */
const drawnAtLeast = 60
/** Routes drawn where the axis only re-orders what was found. */
const drawnToReorder = 500
export const defaultCount = 10

/**
 * Routes from one material to another, as they are found: a search that pauses at each row of the list and now and then between, and returns
 * the finished list. Whoever runs it may stop it at any pause by leaving it.
 *
 * @returns problems for a query that cannot be read; `none` where no route exists or is left, saying why; `stopped` where a list ends planning
 *   with the start or the target itself
 */
export function* routeList(input: RoutesInput): Search<Checked<RoutesAnswer>> {
  const { library, traits, query } = input
  const read = readQuery(library, traits, query, input.lists)
  if (!read.ok) return read
  const asked = read.value
  const stopped = stopsAmong(traits, [...new Set([query.from, asked.start, query.to, asked.target])])
  if (stopped.length > 0) return good({ kind: 'stopped', stopped })

  yield* within(networkInPieces(library))
  const searching = searchingFor(input, asked)
  const { network, settings } = searching
  const masks = { library, network, traits, settings }
  const stops = yield* within(stoppedInPieces(masks))
  const forbidden = yield* within(forbiddenInPieces(masks, query))
  yield { kind: 'progress', found: 0, work: 0, bound: null }
  try {
    const terms: Terms = {
      masked: masksTogether(stops, forbidden),
      mode: asked.makeAll ? 'all' : 'default',
      maxSteps: query.maxSteps,
      wanted: wantedOf(searching),
    }
    const found = yield* query.unbeaten && query.unbeaten.length > 0
      ? unbeatenRows(searching, query.unbeaten, terms)
      : orderedRows(searching, terms)
    if (found.rows !== null) return good({ kind: 'routes', ...found.rows })
    if (!found.complete) return good({ kind: 'none', problems: [undecided(query, found.bound)] })
    function* exists(masked: Uint8Array, mode: Terms['mode'], maxSteps?: number, free?: boolean): Search<boolean> {
      const loosened = free ? { ...searching, asked: { ...asked, mustPass: [], make: [] } } : searching
      return (yield* drawn(loosened, { masked, mode, maxSteps, wanted: 1 })).routes.length > 0
    }
    return good({ kind: 'none', problems: yield* noRoute({ library, network, traits, query, asked, stops, forbidden, exists }) })
  } catch (error) {
    if (error instanceof GainingCircle) return bad([gainingCircle(error)])
    throw error
  }
}

interface Listed {
  /** Null = no route was found. */
  readonly rows: RouteRows | null
  readonly complete: boolean
  readonly bound: number | null
}

/** Rows that were told while the search went on, by the route as drawn. */
interface Told {
  readonly briefs: Map<OrderedRoute, Brief>
  readonly rows: Map<Brief, RouteRow>
}

const reorders = ({ asked, axis }: Searching): boolean => asked.by !== axis

function wantedOf(searching: Searching): number {
  return Math.max(searching.input.query.count ?? defaultCount, reorders(searching) ? drawnToReorder : drawnAtLeast)
}

/** Rows in the order of one axis. */
function* orderedRows(searching: Searching, terms: Terms): Search<Listed> {
  const { input, asked } = searching
  const { query } = input
  const count = query.count ?? defaultCount
  const apart = query.apart ?? 1
  const reordered = reorders(searching)
  const told: Told = { briefs: new Map(), rows: new Map() }
  const all = yield* drawn(searching, {
    ...terms,
    apart: reordered ? 1 : apart,
    ...(reordered ? {} : { enough: count }),
    onRoute: (route, index) => {
      if (reordered || index >= count) return null
      const brief = new Brief(searching, route, index)
      const row = rowOf(searching, brief)
      told.briefs.set(route, brief)
      told.rows.set(brief, row)
      return { kind: 'row', place: index + 1, row }
    },
  })
  if (all.routes.length === 0) return { rows: null, complete: all.complete, bound: all.bound }
  let briefs = inOrderOfTies(all.tiesInOrder, yield* briefsOf(searching, all.routes, asked.by === 'yield', told.briefs))
  const complete = all.complete && briefs.length === all.routes.length
  if (asked.by === 'yield') briefs.sort((a, b) => b.overallYield - a.overallYield || a.index - b.index)
  if (asked.by === 'hazard') briefs.sort((a, b) => compareCounts(a.hazard, b.hazard) || a.index - b.index)
  if (reordered) briefs = atLeastApart(briefs, apart, one => one.arcs)
  const whole = complete && briefs.length <= count
  // As drawn: a search that was stopped may have left it without a brief.
  const next = all.routes[count]
  const least = next === undefined || !next.proven ? all.bound : next.value
  const bound = whole || reordered ? null : figureOf(searching, searching.axis, least)
  return {
    complete,
    bound,
    rows: {
      ...rowsOf(searching, briefs, count, one => told.rows.get(one) ?? rowOf(searching, one)),
      complete: whole,
      proven: reordered ? complete : briefs.slice(0, count).every(one => one.proven),
      tiesInOrder: all.tiesInOrder,
      best: reordered ? { proven: complete, atMostAbovePercent: null } : bestOf(briefs[0]!, all.bound),
      ...(bound !== null && { bound }),
      ...(apart > 1 && { apart }),
    },
  }
}

/** Rows that are unbeaten on several axes at once. */
function* unbeatenRows(asking: Searching, axes: readonly Axis[], terms: Terms): Search<Listed> {
  const { query } = asking.input
  // Rows stand by one of the axes that are compared.
  const by = axes.includes(asking.asked.by) ? asking.asked.by : axes[0]!
  const searching: Searching = { ...asking, asked: { ...asking.asked, by }, axis: isProven(by) ? by : 'start' }
  const count = query.count ?? defaultCount
  const found = yield* unbeaten(searching, axes, terms)
  if (found.routes.length === 0) return { rows: null, complete: found.exact, bound: null }
  const apart = query.apart ?? 1
  const kept = atLeastApart(found.routes, apart, one => one.brief.arcs)
  const values = new Map(kept.map(one => [one.brief, one.values]))
  const briefs = kept.map(one => one.brief)
  return {
    complete: found.exact,
    bound: null,
    rows: {
      ...rowsOf(searching, briefs, count, one => ({ ...rowOf(searching, one), values: values.get(one)! })),
      complete: found.exact && briefs.length <= count,
      proven: found.exact,
      tiesInOrder: true,
      best: { proven: found.exact, atMostAbovePercent: null },
      unbeaten: { axes, exact: found.exact },
      ...(apart > 1 && { apart }),
    },
  }
}

/** Rows of what was drawn, cut to the count asked for, with the gentlest near the first. */
function rowsOf(
  searching: Searching,
  briefs: readonly Brief[],
  count: number,
  row: (one: Brief) => RouteRow,
): Pick<RouteRows, 'routes' | 'gentlest'> {
  const { traits } = searching.input
  const isBarred = (one: Brief) => regulatedAmong(traits, one.notable, searching.settings).some(hit => hit.barred)
  const gentlest = gentlestOf(briefs, row, isBarred)
  return { routes: namingTheNext(briefs.slice(0, count).map(row), briefs, isBarred), ...(gentlest && { gentlest }) }
}

/** Where the order among equal values was given up, that much of it is put right as lies among what was drawn. */
function inOrderOfTies(isSo: boolean, briefs: Brief[]): Brief[] {
  if (isSo) return briefs
  const tied = (a: Brief, b: Brief) => a.proven && b.proven && a.value !== null && b.value !== null && Math.abs(a.value - b.value) <= 1e-9
  for (let first = 0; first < briefs.length; ) {
    let end = first + 1
    while (end < briefs.length && tied(briefs[first]!, briefs[end]!)) end++
    const group = briefs.slice(first, end).sort((a, b) => a.arcs.length - b.arcs.length || (a.arcs.join() < b.arcs.join() ? -1 : 1))
    briefs.splice(first, group.length, ...group)
    first = end
  }
  return briefs
}

/** How sure it is that the first is the best. */
function bestOf(first: Brief, bound: number | null): RouteRows['best'] {
  if (first.proven) return { proven: true, atMostAbovePercent: 0 }
  const least = bound !== null && bound > 0 && first.value !== null
  return { proven: false, atMostAbovePercent: least ? Math.max(0, 100 * (first.value / bound - 1)) : null }
}

/**
 * Of those within ten points of the first one's overall yield on start, the gentlest, where that is not the first itself. What the buyer may
 * not have is never recommended.
 */
function gentlestOf(briefs: readonly Brief[], row: (one: Brief) => RouteRow, isBarred: (one: Brief) => boolean): GentlestRoute | null {
  const first = briefs[0]!
  let gentlest = first
  for (const one of briefs) {
    if (compareCounts(one.hazard, gentlest.hazard) < 0 && one.overallYield >= first.overallYield - 0.1 - 1e-9 && !isBarred(one))
      gentlest = one
  }
  if (gentlest === first) return null
  const yieldPointsLost = 100 * (first.overallYield - gentlest.overallYield)
  return { ...row(gentlest), place: briefs.indexOf(gentlest) + 1, yieldPointsLost }
}

/** Where the public cannot have a route, its flag names the next one that they can. */
function namingTheNext(routes: readonly RouteRow[], briefs: readonly Brief[], isBarred: (one: Brief) => boolean): readonly RouteRow[] {
  const places = new Map(routes.map((one, index) => [index, one.flags.some(flag => flag.kind === 'barred')]))
  const barredAt = (index: number): boolean => {
    const known = places.get(index)
    if (known !== undefined) return known
    const barred = isBarred(briefs[index]!)
    places.set(index, barred)
    return barred
  }
  return routes.map((one, index) => {
    if (!barredAt(index)) return one
    let next = index + 1
    while (next < briefs.length && barredAt(next)) next++
    const free = briefs[next]
    const text = free
      ? ` The next route that they can have is number ${next + 1}: ${free.route.steps.map(s => s.transformation).join(', ')}.`
      : ' No later route that was looked at is free of this.'
    return { ...one, flags: one.flags.map((flag, i) => (i === 0 ? { ...flag, text: flag.text + text } : flag)) }
  })
}
