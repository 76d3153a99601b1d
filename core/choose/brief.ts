import { hazardCounts } from '../hazards/counts.ts'
import type { HazardCounts } from '../hazards/hazard-list.ts'
import type { OrderedRoute } from '../network/routes.ts'
import { boughtBy, madeBy } from '../route/made-bought.ts'
import { materialsOfRoute } from '../route/materials.ts'
import { longestLinearYield, overallYieldOnStart } from '../route/overall-yield.ts'
import type { Route } from '../route/route.ts'
import { workingOrder } from '../route/working-order.ts'
import { hasOpenAmounts } from './at-least.ts'
import type { Axis } from './query.ts'
import { flagsOf } from './route-flags.ts'
import type { RouteRow } from './route-row.ts'
import type { Search, Searching } from './searching.ts'

/** What every drawn route is looked at for; the rest of a row is worked out where it is listed. */
export interface Brief {
  /** Place in which it was drawn. */
  readonly index: number
  readonly arcs: readonly number[]
  readonly route: Route
  readonly value: number | null
  readonly proven: boolean
  readonly overallYield: number
  readonly materials: ReturnType<typeof materialsOfRoute>
  readonly hazard: HazardCounts
}

export function briefOf({ input, network, asked, yields }: Searching, found: OrderedRoute, index: number): Brief {
  const { library } = input
  const ids = found.arcs.map(a => network.arcs[a]!)
  const route: Route = { start: asked.start, target: asked.target, steps: workingOrder(library, asked.start, ids) }
  const materials = materialsOfRoute(library, route)
  const overallYield = overallYieldOnStart(library, route, yields)
  return { index, ...found, route, overallYield, materials, hazard: hazardCounts(library, materials) }
}

/** Briefs worked out between two pauses: a long route takes milliseconds. */
const briefsATurn = 8

/**
 * Briefs of routes in the order in which they were drawn.
 *
 * @param told those that were worked out before
 * @returns fewer where the search is to stop; the first at least
 */
export function* briefsOf(
  searching: Searching,
  routes: readonly OrderedRoute[],
  told: ReadonlyMap<OrderedRoute, Brief> = new Map(),
): Search<Brief[]> {
  const briefs: Brief[] = []
  for (const [index, route] of routes.entries()) {
    const known = told.get(route)
    if (known === undefined && index % briefsATurn === briefsATurn - 1) {
      yield { kind: 'progress', found: routes.length, work: index, bound: null }
      if (searching.input.shouldStop?.()) break
    }
    briefs.push(known ?? briefOf(searching, route, index))
  }
  return briefs
}

/** The figure of an axis as it is told: mass in is reckoned per mole and told over the product. */
export function figureOf({ input, asked }: Searching, axis: Axis, value: number | null): number | null {
  if (value === null || axis !== 'mass-intensity') return value
  const molarMass = input.library.molarMass.get(asked.target)
  return molarMass === undefined ? null : value / molarMass
}

export function rowOf(searching: Searching, one: Brief): RouteRow {
  const { input, asked, yields, settings, axis } = searching
  const { library, traits } = input
  const value = asked.by === 'hazard' ? null : asked.by === 'yield' ? one.overallYield : figureOf(searching, axis, one.value)
  const byLines = asked.by === 'cost' || asked.by === 'mass-intensity'
  const atLeast = byLines && value !== null && hasOpenAmounts(library, one.route, yields)
  return {
    steps: one.route.steps.map(s => s.transformation),
    overallYieldOnStart: one.overallYield,
    longestLinearYield: longestLinearYield(library, one.route, yields),
    made: madeBy(library, one.route),
    bought: boughtBy(library, one.route),
    value,
    ...(atLeast && { valueAtLeast: true }),
    hazard: one.hazard,
    flags: [
      ...flagsOf(library, traits, one.materials, settings, one.hazard, one.value === null ? unknownValue(asked.by) : null),
      ...(atLeast ? [{ kind: 'value-at-least' as const, material: null, text: atLeastValue }] : []),
    ],
  }
}

const unknownValue = (axis: Axis): string => `The library does not know all that "${axis}" asks of this route, which therefore stands last.`
const atLeastValue = 'The source leaves some amounts open, and no rule of thumb reaches them: the figure is at least this much.'
