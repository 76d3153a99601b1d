import { hazardCounts } from '../hazards/counts.ts'
import type { RegulatedHit } from '../hazards/hazard-list.ts'
import { stopsAmong } from '../hazards/regulated.ts'
import type { Traits } from '../hazards/traits.ts'
import type { Library } from '../library/library.ts'
import { indexIn, networkOf } from '../network/network.ts'
import { weightsFor } from '../network/objectives.ts'
import { reachedBy } from '../network/reach.ts'
import { GainingCircle, routeSearch } from '../network/routes.ts'
import { defaultSettings, type Settings } from '../plan/settings.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { materialsOfRoute } from '../route/materials.ts'
import { overallYieldOnStart } from '../route/overall-yield.ts'
import type { Route } from '../route/route.ts'
import { workingOrder } from '../route/working-order.ts'
import { believedYields } from './believed.ts'
import { stoppedArcs } from './forbidden.ts'
import { gainingCircle } from './problems.ts'
import { startOf } from './query.ts'
import { flagsOf, type RouteFlag } from './route-flags.ts'
import type { Search } from './searching.ts'

/** One compound that the start can become, as `waybench reach` lists it. */
export interface ReachRow {
  readonly compound: string
  /** Steps, yield and route of the default route first by `start`; null = not proven within the budget. */
  readonly steps: number | null
  readonly bestYieldOnStart: number | null
  readonly route: readonly string[] | null
  /** Number of default routes; with `counted` false there are at least so many. */
  readonly routes: number
  readonly counted: boolean
  /** A real route confirms the row. */
  readonly proven: boolean
  readonly flags: readonly RouteFlag[]
}

export type ReachAnswer =
  | { readonly kind: 'reach'; readonly reach: readonly ReachRow[] }
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

/**
 * Everything a start can become by default routes, best overall yield first; pauses after each compound.
 *
 * @returns problems for a query that cannot be read
 */
export function* reachList(input: ReachInput): Search<Checked<ReachAnswer>> {
  const { library, traits, query, settings = defaultSettings, shouldStop } = input
  const problems: Problem[] = []
  const start = startOf(library, query.from, problems)
  if (query.maxSteps !== undefined && !(Number.isInteger(query.maxSteps) && query.maxSteps > 0)) {
    problems.push({
      code: 'not-a-count',
      where: ['--max-steps', String(query.maxSteps)],
      what: `${query.maxSteps} is no whole number above 0.`,
      why: 'It counts steps.',
      cure: 'Give a whole number such as 5.',
    })
  }
  if (start === null || problems.length > 0) return bad(problems)
  const stopped = stopsAmong(traits, [...new Set([query.from, start])])
  if (stopped.length > 0) return good({ kind: 'stopped', stopped })

  const network = networkOf(library)
  const masked = stoppedArcs({ library, network, traits, settings })
  const yields = believedYields(library, settings)
  const weights = weightsFor('start', { library, network, yields })
  const rows: ReachRow[] = []
  try {
    const search = routeSearch(network, weights, {
      start: indexIn(network.compounds, start),
      mode: 'default',
      masked,
      make: [],
      mustPass: [],
    })
    const options = { ...(query.maxSteps !== undefined && { maxSteps: query.maxSteps }), ...(shouldStop && { shouldStop }) }
    for (const found of reachedBy(search, network.compounds.length, options)) {
      yield { kind: 'progress', found: rows.length, work: found.compound, bound: null }
      const compound = network.compounds[found.compound]!
      if (found.first === null) {
        rows.push({ compound, steps: null, bestYieldOnStart: null, route: null, routes: 0, counted: false, proven: false, flags: [] })
        continue
      }
      const steps = workingOrder(
        library,
        start,
        found.first.arcs.map(a => network.arcs[a]!),
      )
      const route: Route = { start, target: compound, steps }
      const materials = materialsOfRoute(library, route)
      rows.push({
        compound,
        steps: steps.length,
        bestYieldOnStart: overallYieldOnStart(library, route, yields),
        route: steps.map(s => s.transformation),
        routes: found.routes,
        counted: found.counted,
        proven: true,
        flags: flagsOf(library, traits, materials, settings, hazardCounts(library, materials), null),
      })
    }
  } catch (error) {
    if (error instanceof GainingCircle) return bad([gainingCircle(error)])
    throw error
  }
  rows.sort(
    (a, b) =>
      (b.bestYieldOnStart ?? -1) - (a.bestYieldOnStart ?? -1) || (a.steps ?? 0) - (b.steps ?? 0) || (a.compound < b.compound ? -1 : 1),
  )
  return good({ kind: 'reach', reach: rows })
}
