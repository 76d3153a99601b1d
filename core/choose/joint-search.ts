import type { HazardTables } from '../hazards/tables.ts'
import type { Traits } from '../hazards/traits.ts'
import { type Library, transformationOf } from '../library/library.ts'
import { masksTogether } from '../network/filter.ts'
import { indexIn, type Network, networkOf } from '../network/network.ts'
import { evaluate } from '../plan/evaluate.ts'
import type { Goal, Plan } from '../plan/plan.ts'
import { workingOrder } from '../route/working-order.ts'
import type { Solver } from '../shopping/shopping.ts'
import { forbiddenArcs, stoppedArcs } from './forbidden.ts'
import { isOutAlready, overLimits, type WayLimits } from './limits.ts'
import type { ChoosingOptions } from './query.ts'
import type { Search } from './searching.ts'
import { stepSets } from './step-sets.ts'
import { compareKeys, keyOf, type Way, wayOf } from './way.ts'
import { compareSteps, compareWays, figuresOf, type ReckonedWay, type WayFigures } from './way-figures.ts'

export interface JointInput {
  readonly library: Library
  readonly tables: HazardTables
  readonly traits: ReadonlyMap<string, Traits>
  /** Start, shelf, packs, settings and log of the plan; its goals are looked for. */
  readonly plan: Omit<Plan, 'goals'>
  readonly goals: readonly Omit<Goal, 'route'>[]
  readonly options: ChoosingOptions
  readonly limits: WayLimits
  readonly solver: Solver
  /** Partial sets of steps taken up, and ways reckoned in full; counted, never timed. */
  readonly budget?: { readonly sets: number; readonly ways: number }
  /** True ends the search with the best that it has by then. */
  readonly shouldStop?: () => boolean
}

const usualBudget = { sets: 200_000, ways: 400 }
/** Ways bounded between two looks at what else there is to do. */
const waysAtOnce = 4

/** What one search came to. */
export interface Found {
  readonly best: ReckonedWay | null
  /** In the order of their bounds. */
  readonly ways: readonly Way[]
  /** In the order of comparison. */
  readonly reckoned: readonly ReckonedWay[]
  readonly proven: boolean
  /** No way in reach costs less, minor units; null where not every way is known, or no best. */
  readonly boundMinor: number | null
}

/** Ways to all goals, each reckoned at the most once, under whatever options and limits. */
export class JointSearch {
  readonly #network: Network
  readonly #known = new Map<string, ReckonedWay | null>()

  constructor(
    readonly input: JointInput,
    readonly start: string,
    readonly targets: readonly string[],
  ) {
    this.#network = networkOf(input.library)
  }

  /** The best way under some options and limits; pauses between ways, telling how many there are and how many were reckoned. */
  *best(options: ChoosingOptions, limits: WayLimits): Search<Found> {
    const { budget = usualBudget, shouldStop } = this.input
    const { ways, complete } = yield* this.ways(options)
    const reckoned: ReckonedWay[] = []
    let best: ReckonedWay | null = null
    let proven = complete
    let left = Number.POSITIVE_INFINITY
    const leastUnknown = fewestUnknown(ways)
    for (const [at, way] of ways.entries()) {
      if (best !== null && compareKeys(way.bound, best.key) > 0) break
      if (isOutAlready(way, limits) || (limits.budgetMinor !== undefined && way.bound.priceUnknown > leastUnknown)) continue
      if (reckoned.length >= budget.ways || shouldStop?.()) {
        proven = false
        left = leastAmong(ways.slice(at), best)
        break
      }
      yield { kind: 'progress', found: ways.length, work: reckoned.length, bound: null }
      const one = this.reckon(way, limits, leastUnknown)
      if (one === null) continue
      reckoned.push(one)
      if (one.figures.over.length === 0 && (best === null || compareWays(one, best) < 0)) best = one
    }
    const basket = best?.evaluation.basket ?? null
    // A basket that is only the best found may hide a cheaper one.
    if (basket?.proven === false) proven = false
    reckoned.sort(compareWays)
    const own = basket?.boundMinor ?? null
    return { best, ways, reckoned, proven, boundMinor: own === null || !complete ? null : Math.min(own, left) }
  }

  /**
   * Every way there is, with its bounds, in their order.
   *
   * @param listed  also those by steps that a list ends: never to be reckoned, only to say why there is no other
   */
  *ways(options: ChoosingOptions, listed = false): Search<{ readonly ways: readonly Way[]; readonly complete: boolean }> {
    const { library, tables, traits, plan, goals, budget = usualBudget } = this.input
    const network = this.#network
    const masks = { library, network, traits, settings: plan.settings }
    const at = (id: string) => indexIn(network.compounds, id)
    const forbidden = forbiddenArcs(masks, options)
    const { sets, complete } = stepSets(network, {
      start: at(this.start),
      targets: this.targets.map(at),
      free: ['water', 'oxygen'].map(at).filter(index => index >= 0),
      masked: listed ? forbidden : masksTogether(stoppedArcs(masks), forbidden),
      budget: budget.sets,
      ...(options.maxSteps === undefined ? {} : { maxSteps: options.maxSteps }),
    })
    const must = [...(options.mustPass ?? []), ...(options.make ?? []).filter(id => id !== 'all')]
    const ways: Way[] = []
    for (const [count, arcs] of sets.entries()) {
      if (count % waysAtOnce === 0) yield { kind: 'progress', found: ways.length, work: 0, bound: null }
      const steps = workingOrder(
        library,
        this.start,
        arcs.map(a => network.arcs[a]!),
      )
      const made = new Set(steps.map(s => s.makes))
      if (!must.every(id => id === this.start || made.has(id))) continue
      const own = goals.map((goal, index) => {
        const target = this.targets[index]!
        return { ...goal, target, route: { start: this.start, target, steps: upstream(library, steps, target) } }
      })
      const way = wayOf(library, tables, { ...plan, goals: own })
      if (way !== null) ways.push(way)
    }
    ways.sort((a, b) => compareKeys(a.bound, b.bound) || compareSteps(a.steps, b.steps))
    return { ways, complete }
  }

  /** A way in full, once; null where a list ends it. */
  reckon(way: Way, limits: WayLimits, leastUnknown = 0): ReckonedWay | null {
    const name = way.steps.join(' ')
    let known = this.#known.get(name)
    if (known === undefined) {
      const { library, tables, traits, solver } = this.input
      const evaluation = evaluate({ library, tables, traits, plan: way.plan, solver })
      if ('stopped' in evaluation) known = null
      else {
        const key = keyOf(library, tables, way, evaluation, solver)
        known = { way, evaluation, key, figures: figuresOf(way, evaluation, key) }
      }
      this.#known.set(name, known)
    }
    if (known === null) return null
    const over = [
      ...overLimits(known.evaluation, limits),
      ...(limits.budgetMinor !== undefined && known.key.priceUnknown > leastUnknown
        ? ['more of its prices are unknown than need be, so that its total does not show that it keeps to the budget']
        : []),
    ]
    return { ...known, figures: { ...known.figures, over } }
  }

  /** Ways under the same options that were reckoned, for whatever reason, best first. */
  others(found: Found, best: ReckonedWay): readonly WayFigures[] {
    const own = new Set(found.ways.map(way => way.steps.join(' ')))
    return [...this.#known.values()]
      .filter(one => one !== null && one.way !== best.way && own.has(one.way.steps.join(' ')))
      .map(one => this.reckon(one!.way, this.input.limits)!)
      .sort(compareWays)
      .map(one => one.figures)
  }
}

/** No total of these ways is less, of those that may still be better than the best. */
const leastAmong = (ways: readonly Way[], best: ReckonedWay | null): number =>
  Math.min(...ways.filter(way => best === null || compareKeys(way.bound, best.key) <= 0).map(way => way.leastMinor))

/** The steps that one target needs, in working order. */
function upstream(
  library: Library,
  steps: Plan['goals'][number]['route']['steps'],
  target: string,
): Plan['goals'][number]['route']['steps'] {
  const needed = new Set([target])
  const own: (typeof steps)[number][] = []
  for (const step of [...steps].reverse()) {
    if (!needed.has(step.makes)) continue
    own.unshift(step)
    for (const { compound } of transformationOf(library, step.transformation).reactants) needed.add(compound)
  }
  return own
}

/** As few prices as any way that reaches the goals must leave unknown. */
export const fewestUnknown = (ways: readonly Way[]): number =>
  Math.min(...ways.filter(way => way.bound.unreached === (ways[0]?.bound.unreached ?? 0)).map(way => way.bound.priceUnknown))

export const hasFewestUnknown = (ways: readonly Way[]): ((way: Way) => boolean) => {
  const least = fewestUnknown(ways)
  return way => way.bound.priceUnknown <= least
}
