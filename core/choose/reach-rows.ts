import { hazardCounts } from '../hazards/counts.ts'
import type { RegulatedHit } from '../hazards/hazard-list.ts'
import { stopsAmong } from '../hazards/regulated.ts'
import type { Traits } from '../hazards/traits.ts'
import { type Library, transformationOf } from '../library/library.ts'
import { leastSureYield } from '../library/trust.ts'
import { indexIn, networkInPieces } from '../network/network.ts'
import { weighed } from '../network/objectives.ts'
import { reachedBy } from '../network/reach.ts'
import { GainingCircle, type RoutesAsked, routeSearchInPieces } from '../network/routes.ts'
import { defaultSettings, type Settings } from '../plan/settings.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { materialsOfRoute } from '../route/materials.ts'
import { overallYieldOnStart } from '../route/overall-yield.ts'
import type { Route } from '../route/route.ts'
import { workingOrder } from '../route/working-order.ts'
import { believedYields } from './believed.ts'
import { stoppedInPieces } from './forbidden.ts'
import { isCount, notACount } from './not-a-count.ts'
import { gainingCircle } from './problems.ts'
import { startOf } from './query.ts'
import type { NamedReachRow, ReachRow } from './reach-row.ts'
import { flagsOf } from './route-flags.ts'
import { type Search, within } from './searching.ts'

export type ReachAnswer =
  /** `complete` false = it was stopped: some rows were not looked at, or their routes not counted. */
  | { readonly kind: 'reach'; readonly reach: readonly ReachRow[]; readonly complete: boolean }
  | { readonly kind: 'stopped'; readonly stopped: readonly RegulatedHit[] }

export interface ReachInput {
  readonly library: Library
  readonly traits: ReadonlyMap<string, Traits>
  readonly query: { readonly from: string; readonly maxSteps?: number }
  readonly settings?: Settings
  readonly shouldStop?: () => boolean
}

/** Everything a start can become, the whole list at once: the JSON of `waybench reach`. See {@link reachList}. */
export function reachRows(input: ReachInput): Checked<ReachAnswer> {
  const search = reachList(input)
  for (let step = search.next(); ; step = search.next()) if (step.done) return step.value
}

/** Rows told at once: one by one they would fill the line. */
const toldTogether = 50

/**
 * Everything a start can become by default routes, best overall yield first. Rows are told as real routes confirm them, their routes are
 * counted after that; what is not confirmed by then stands as not proven.
 *
 * @returns problems for a query that cannot be read
 */
export function* reachList(input: ReachInput): Search<Checked<ReachAnswer>> {
  const { library, traits, query, settings = defaultSettings, shouldStop } = input
  const problems: Problem[] = []
  const start = startOf(library, query.from, problems)
  if (query.maxSteps !== undefined && !isCount(query.maxSteps)) problems.push(notACount('maxSteps', query.maxSteps))
  if (start === null || problems.length > 0) return bad(problems)
  const stopped = stopsAmong(traits, [...new Set([query.from, start])])
  if (stopped.length > 0) return good({ kind: 'stopped', stopped })

  const network = yield* within(networkInPieces(library))
  const masked = yield* within(stoppedInPieces({ library, network, traits, settings }))
  const yields = believedYields(library, settings)
  const rows = new Map<number, ReachRow>()
  let confirmed = 0
  let fresh: NamedReachRow[] = []
  const told = function* (): Search<void> {
    if (fresh.length === 0) return
    const together = fresh
    fresh = []
    yield { kind: 'reached', rows: together }
  }
  let complete: boolean
  try {
    const asked: RoutesAsked = { start: indexIn(network.compounds, start), mode: 'default', masked, make: [], mustPass: [] }
    const weights = yield* within(weighed('start', { library, network, yields }))
    const search = yield* within(routeSearchInPieces(network, weights, asked))
    const options = { ...(query.maxSteps !== undefined && { maxSteps: query.maxSteps }), ...(shouldStop && { shouldStop }) }
    const reaching = reachedBy(search, network.compounds.length, options)
    for (;;) {
      const next = reaching.next()
      if (next.done) {
        complete = next.value
        break
      }
      const found = next.value
      if (found.kind === 'at') {
        const { doing, done, all, work } = found
        yield* told()
        yield { kind: 'progress', found: confirmed, work, bound: null, of: { doing, done, all } }
        continue
      }
      if (found.kind === 'counted') {
        rows.set(found.compound, { ...rows.get(found.compound)!, routes: found.routes, counted: found.counted })
        continue
      }
      const compound = network.compounds[found.compound]!
      if (found.first === null) {
        rows.set(found.compound, unproven(compound))
        continue
      }
      const steps = workingOrder(
        library,
        start,
        found.first.arcs.map(a => network.arcs[a]!),
      )
      const route: Route = { start, target: compound, steps }
      const materials = materialsOfRoute(library, route)
      const row: ReachRow = {
        compound,
        steps: steps.length,
        bestYieldOnStart: overallYieldOnStart(library, route, yields),
        yieldTrust: leastSureYield(steps.map(step => transformationOf(library, step.transformation))),
        route: steps.map(s => s.transformation),
        routes: 1,
        counted: false,
        proven: true,
        flags: flagsOf(library, traits, materials, settings, hazardCounts(library, materials), null),
      }
      rows.set(found.compound, row)
      confirmed++
      fresh.push({ ...row, name: library.materials.get(compound)?.name ?? compound })
      if (fresh.length === toldTogether) yield* told()
    }
    yield* told()
  } catch (error) {
    if (error instanceof GainingCircle) return bad([gainingCircle(error)])
    throw error
  }
  const reach = [...rows.values()].sort(
    (a, b) =>
      (b.bestYieldOnStart ?? -1) - (a.bestYieldOnStart ?? -1) || (a.steps ?? 0) - (b.steps ?? 0) || (a.compound < b.compound ? -1 : 1),
  )
  return good({ kind: 'reach', reach, complete })
}

const unproven = (compound: string): ReachRow => ({
  compound,
  steps: null,
  bestYieldOnStart: null,
  yieldTrust: null,
  route: null,
  routes: 0,
  counted: false,
  proven: false,
  flags: [],
})
