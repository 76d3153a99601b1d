import type { HazardCounts } from '../hazards/hazard-list.ts'
import { hazardTally } from '../hazards/tally.ts'
import { transformationOf } from '../library/library.ts'
import { trustInYield } from '../library/trust.ts'
import type { OrderedRoute } from '../network/routes.ts'
import { boughtBy, madeBy } from '../route/made-bought.ts'
import { materialsOfRoute, type RouteMaterial } from '../route/materials.ts'
import { longestLinearYield, overallYieldOnStart } from '../route/overall-yield.ts'
import type { Route } from '../route/route.ts'
import { workingOrder } from '../route/working-order.ts'
import type { Axis } from './query.ts'
import { flagsOf, isNotable } from './route-flags.ts'
import type { RouteRow } from './route-row.ts'
import type { Search, Searching } from './searching.ts'

/** What a drawn route is looked at for, each worked out when it is first asked for; the rest of a row is worked out where it is listed. */
export class Brief {
  readonly index: number
  readonly arcs: readonly number[]
  readonly value: number | null
  readonly proven: boolean
  readonly hazard: HazardCounts
  readonly #searching: Searching
  #route: Route | null = null
  #overallYield: number | null = null
  #notable: readonly RouteMaterial[] | null = null

  /** @param index place in which it was drawn */
  constructor(searching: Searching, { arcs, value, proven }: OrderedRoute, index: number) {
    this.#searching = searching
    this.index = index
    this.arcs = arcs
    this.value = value
    this.proven = proven
    this.hazard = hazardTally(searching.input.library, searching.asked.start, searching.asked.target, this.#transformations())
  }

  get route(): Route {
    if (this.#route === null) {
      const { input, asked } = this.#searching
      const steps = workingOrder(input.library, asked.start, this.#transformations())
      this.#route = { start: asked.start, target: asked.target, steps }
    }
    return this.#route
  }

  get overallYield(): number {
    return this.#overallYield ?? this.reckonYield()
  }

  reckonYield(): number {
    this.#overallYield = overallYieldOnStart(this.#searching.input.library, this.route, this.#searching.yields)
    return this.#overallYield
  }

  /** Materials that a list concerns, or that were not screened: of the others no flag speaks. */
  get notable(): readonly RouteMaterial[] {
    const { library, traits } = this.#searching.input
    this.#notable ??= materialsOfRoute(library, this.route, material => isNotable(traits, material))
    return this.#notable
  }

  /** The same route with the figure of another axis. */
  valued(value: number | null): Brief {
    return new Brief(this.#searching, { arcs: this.arcs, value, proven: this.proven }, this.index)
  }

  #transformations(): string[] {
    return this.arcs.map(a => this.#searching.network.arcs[a]!)
  }
}

/** Briefs worked out between two pauses: a long route takes milliseconds. */
const briefsATurn = 8

/**
 * Briefs of routes in the order in which they were drawn.
 *
 * @param byYield they are to be compared by overall yield, which is then worked out here, between the pauses
 * @param told those that were worked out before
 * @returns fewer where the search is to stop; the first at least
 */
export function* briefsOf(
  searching: Searching,
  routes: readonly OrderedRoute[],
  byYield: boolean,
  told: ReadonlyMap<OrderedRoute, Brief> = new Map(),
): Search<Brief[]> {
  const briefs: Brief[] = []
  for (const [index, route] of routes.entries()) {
    const known = told.get(route)
    if (known === undefined && index % briefsATurn === briefsATurn - 1) {
      yield { kind: 'progress', found: routes.length, work: index, bound: null }
      if (searching.input.shouldStop?.()) break
    }
    const brief = known ?? new Brief(searching, route, index)
    if (byYield) brief.reckonYield()
    briefs.push(brief)
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
  const atLeast = byLines && value !== null && searching.hasOpenAmounts(one.route)
  return {
    steps: one.route.steps.map(s => s.transformation),
    overallYieldOnStart: one.overallYield,
    longestLinearYield: longestLinearYield(library, one.route, yields),
    yieldTrust: one.route.steps.map(step => trustInYield(transformationOf(library, step.transformation))),
    made: madeBy(library, one.route),
    bought: boughtBy(library, one.route),
    value,
    ...(atLeast && { valueAtLeast: true }),
    hazard: one.hazard,
    flags: [
      ...flagsOf(library, traits, one.notable, settings, one.hazard, one.value === null ? unknownValue(asked.by) : null),
      ...(atLeast ? [{ kind: 'value-at-least' as const, material: null, text: atLeastValue }] : []),
    ],
  }
}

const unknownValue = (axis: Axis): string => `The library does not know all that "${axis}" asks of this route, which therefore stands last.`
const atLeastValue = 'The source leaves some amounts open, and no rule of thumb reaches them: the figure is at least this much.'
