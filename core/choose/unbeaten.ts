import { compareCounts } from '../hazards/counts.ts'
import { nonDominated } from '../network/non-dominated.ts'
import type { ProvenAxis } from '../network/objectives.ts'
import { routeValue } from '../network/route-value.ts'
import { unbeatenSearch } from '../network/routes.ts'
import type { Weights } from '../network/space.ts'
import { type Brief, briefsOf, figureOf } from './brief.ts'
import { type Axis, isProven } from './query.ts'
import { askedOf, drawn, optionsOf, type Search, type Searching, slice, type Terms, weightsOf } from './searching.ts'

/** Routes that no other beats on several axes at once. */
export interface Unbeaten {
  readonly routes: readonly { readonly brief: Brief; readonly values: Readonly<Partial<Record<Axis, number | null>>> }[]
  /** These are all of them; false = among the routes that were looked at. */
  readonly exact: boolean
}

/** Routes looked at where an axis is none that the search bounds. */
const mostCompared = 2000
/** Partial routes taken up by the search over several axes: what is not found by then is not found soon. */
const mostWork = 50_000
/** Routes drawn by each axis where that search did not come to its end. */
const drawnByEach = 100

/**
 * Searches the routes that are unbeaten on the axes together: no other is nowhere worse and somewhere better. Where the search bounds all the
 * axes it is exact within its budget; with overall yield or hazard among them, all routes are drawn and compared, and it is exact where
 * that is all of them. Unknown counts as the worst. Of routes with the same figures on all axes one is kept where the search is by bounds.
 */
export function* unbeaten(searching: Searching, axes: readonly Axis[], terms: Terms): Search<Unbeaten> {
  const { network } = searching
  const { asked, target } = askedOf(searching, terms)
  const proven = axes.filter(isProven)
  const weights = new Map<(typeof proven)[number], Weights>()
  for (const axis of proven) weights.set(axis, yield* weightsOf(searching, axis, asked.masked))
  let found: readonly { readonly arcs: readonly number[] }[]
  let exact: boolean
  if (proven.length === axes.length) {
    const options = { budget: mostWork, ...optionsOf(searching, terms.maxSteps) }
    const search = unbeatenSearch(network, [...weights.values()], asked, target, options)
    while (!search.advance(slice)) yield { kind: 'progress', found: search.size, work: search.pops, bound: null }
    const front = search.front()
    exact = front.complete
    found = exact ? front.routes : [...front.routes, ...(yield* bestByEach(searching, proven, terms))]
  } else {
    const all = yield* drawn({ ...searching, axis: 'start' }, { ...terms, wanted: mostCompared })
    found = all.routes
    exact = all.complete
  }
  const briefs = yield* briefsOf(
    searching,
    found.map(({ arcs }) => ({ arcs, value: 0, proven: exact })),
    axes.includes('yield'),
  )
  exact &&= briefs.length === found.length
  const gentleness = rankOfHazard(briefs)
  const figures = briefs.map(brief =>
    axes.map((axis): number => {
      if (axis === 'yield') return -brief.overallYield
      if (axis === 'hazard') return gentleness.get(brief)!
      const value = routeValue(network, weights.get(axis as (typeof proven)[number])!, asked.start, target, brief.arcs)
      return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value
    }),
  )
  const by = Math.max(0, axes.indexOf(searching.asked.by))
  const kept = nonDominated(figures).sort(
    (i, j) => order(figures[i]![by]!, figures[j]![by]!) || briefs[i]!.arcs.length - briefs[j]!.arcs.length || i - j,
  )
  const told = (axis: Axis, figure: number, brief: Brief): number | null => {
    if (axis === 'hazard') return null
    if (axis === 'yield') return brief.overallYield
    return figure === Number.POSITIVE_INFINITY ? null : figureOf(searching, axis, figure)
  }
  return {
    exact,
    routes: kept.map(i => ({
      brief: briefs[i]!.valued(axes[by] === 'yield' || axes[by] === 'hazard' ? 0 : known(figures[i]![by]!)),
      values: Object.fromEntries(axes.map((axis, at) => [axis, told(axis, figures[i]![at]!, briefs[i]!)])),
    })),
  }
}

/** Where not all unbeaten routes could be found, the best by each axis are compared with those that were. */
function* bestByEach(
  searching: Searching,
  axes: readonly ProvenAxis[],
  terms: Terms,
): Search<readonly { readonly arcs: readonly number[] }[]> {
  const best = new Map<string, { readonly arcs: readonly number[] }>()
  for (const axis of axes) {
    const { routes } = yield* drawn({ ...searching, axis }, { ...terms, wanted: drawnByEach })
    for (const route of routes) best.set(route.arcs.join(), route)
  }
  return [...best.values()]
}

const known = (figure: number): number | null => (figure === Number.POSITIVE_INFINITY ? null : figure)

/** Infinity less infinity is no order. */
const order = (a: number, b: number): number => (a === b ? 0 : a - b)

/** Hazards compared class by class, as numbers: the gentlest is 0. */
function rankOfHazard(briefs: readonly Brief[]): ReadonlyMap<Brief, number> {
  const ranks = new Map<Brief, number>()
  const sorted = [...briefs].sort((a, b) => compareCounts(a.hazard, b.hazard))
  let rank = 0
  for (const [i, brief] of sorted.entries()) {
    if (i > 0 && compareCounts(sorted[i - 1]!.hazard, brief.hazard) !== 0) rank++
    ranks.set(brief, rank)
  }
  return ranks
}
