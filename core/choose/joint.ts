import type { RegulatedHit } from '../hazards/hazard-list.ts'
import { stopsAmong } from '../hazards/regulated.ts'
import type { HazardTables } from '../hazards/tables.ts'
import type { Traits } from '../hazards/traits.ts'
import { type Library, transformationOf } from '../library/library.ts'
import { masksTogether } from '../network/filter.ts'
import { indexIn, type Network, networkOf } from '../network/network.ts'
import { evaluate } from '../plan/evaluate.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import type { Goal, Plan } from '../plan/plan.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { moneyText } from '../quantity/money.ts'
import { workingOrder } from '../route/working-order.ts'
import type { Solver } from '../shopping/shopping.ts'
import { stepsApart } from './apart.ts'
import { type Choice, differenceOf } from './difference.ts'
import { forbiddenArcs, stoppedArcs } from './forbidden.ts'
import { isOutAlready, nearestOut, overLimits, type WayLimits } from './limits.ts'
import { type ChoosingOptions, readQuery } from './query.ts'
import { stepSets } from './step-sets.ts'
import { compareKeys, keyOf, type Way, type WayKey, wayOf } from './way.ts'

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
  readonly shouldStop?: () => boolean
}

/** A way that was reckoned in full. */
export interface WayFigures {
  /** Transformations, in order of id. */
  readonly steps: readonly string[]
  readonly totalMinor: number | null
  readonly complete: boolean
  readonly priceUnknown: number
  /** Total over the grams of the rest goal, minor units; null without such a goal, or where it is held. */
  readonly perGramMinor: number | null
  readonly unreached: number
  readonly handsOnH: number | null
  readonly finishDate: string | null
  /** What keeps it out, in words; empty where nothing does. */
  readonly over: readonly string[]
}

export interface JointWay {
  readonly plan: Plan
  readonly evaluation: Evaluation
  readonly figures: WayFigures
  /** Why this way: one sentence a choice in which others differ from it. */
  readonly reasons: readonly string[]
  /** What the limits and options changed, in words; null where the same way wins without them. */
  readonly changedByLimits: string | null
  /** Other ways that were reckoned, best first. */
  readonly others: readonly WayFigures[]
  /** Ways there are; those whose figures were bounded and not reckoned are among them. */
  readonly ways: number
  readonly reckoned: number
  /** No way is better: every one was reckoned, or its bound says so. */
  readonly proven: boolean
}

export type JointAnswer =
  | ({ readonly kind: 'way' } & JointWay)
  | { readonly kind: 'none'; readonly problems: readonly Problem[]; readonly nearest: readonly WayFigures[] }
  | { readonly kind: 'stopped'; readonly stopped: readonly RegulatedHit[] }

const usualBudget = { sets: 200_000, ways: 400 }
/** Choices that reasons are given for; each costs one more plan to reckon. */
const mostReasons = 6

/**
 * The cheapest way to reach all goals: routes, make-or-buy and packs at once.
 *
 * Every set of steps that one plan can hold is listed; each gets a bound that needs no solver; in the order of their bounds they are reckoned
 * in full, basket and all, until no bound is better than the best that was found. Ways are compared as definition 9 of the design says:
 * goals reached, complete totals, unknown prices, cost, ids; with an unheld `rest` the cost per gram of it.
 *
 * @returns problems for goals that cannot be read; `none` with what stands in the way; `stopped` where a list ends planning
 */
export function cheapestWay(input: JointInput): Checked<JointAnswer> {
  const { library, traits, plan, goals, options, limits } = input
  const problems: Problem[] = []
  const targets: string[] = []
  let start = ''
  for (const goal of goals) {
    const read = readQuery(library, traits, { ...options, from: plan.start.material, to: goal.target })
    if (read.ok) {
      start = read.value.start
      targets.push(read.value.target)
    } else for (const one of read.problems) if (!problems.some(p => JSON.stringify(p) === JSON.stringify(one))) problems.push(one)
  }
  if (problems.length > 0) return bad(problems)
  const stopped = stopsAmong(traits, [...new Set([plan.start.material, start, ...targets])])
  if (stopped.length > 0) return good({ kind: 'stopped', stopped })

  const search = new JointSearch(input, start, targets)
  const found = search.best(options, limits)
  if (found.best === null)
    return good({ kind: 'none', problems: search.whyNone(found), nearest: found.reckoned.slice(0, 5).map(r => r.figures) })
  const { best } = found
  const reasons = search.reasons(found, best)
  return good({
    kind: 'way',
    plan: best.way.plan,
    evaluation: best.evaluation,
    figures: best.figures,
    reasons,
    changedByLimits: search.changedByLimits(best),
    others: search.others(found, best),
    ways: found.ways.length,
    reckoned: found.reckoned.length,
    proven: found.proven,
  })
}

interface ReckonedWay {
  readonly way: Way
  readonly evaluation: Evaluation
  readonly key: WayKey
  readonly figures: WayFigures
}

interface Found {
  readonly best: ReckonedWay | null
  /** In the order of their bounds. */
  readonly ways: readonly Way[]
  /** In the order of comparison. */
  readonly reckoned: readonly ReckonedWay[]
  readonly proven: boolean
}

class JointSearch {
  readonly #network: Network
  readonly #known = new Map<string, ReckonedWay | null>()

  constructor(
    private readonly input: JointInput,
    private readonly start: string,
    private readonly targets: readonly string[],
  ) {
    this.#network = networkOf(input.library)
  }

  /** The best way under some options and limits. */
  best(options: ChoosingOptions, limits: WayLimits): Found {
    const { budget = usualBudget, shouldStop } = this.input
    const { ways, complete } = this.#ways(options)
    const reckoned: ReckonedWay[] = []
    let best: ReckonedWay | null = null
    let proven = complete
    const leastUnknown = fewestUnknown(ways)
    for (const way of ways) {
      if (best !== null && compareKeys(way.bound, best.key) > 0) break
      if (isOutAlready(way, limits) || (limits.budgetMinor !== undefined && way.bound.priceUnknown > leastUnknown)) continue
      if (reckoned.length >= budget.ways || shouldStop?.()) {
        proven = false
        break
      }
      const one = this.#reckon(way, limits, leastUnknown)
      if (one === null) continue
      reckoned.push(one)
      if (one.figures.over.length === 0 && (best === null || compareWays(one, best) < 0)) best = one
    }
    // A basket that is only the best found may hide a cheaper one.
    if (best !== null && best.evaluation.basket?.proven === false) proven = false
    reckoned.sort(compareWays)
    return { best, ways, reckoned, proven }
  }

  #ways(options: ChoosingOptions): { readonly ways: readonly Way[]; readonly complete: boolean } {
    const { library, traits, plan, goals, budget = usualBudget } = this.input
    const network = this.#network
    const masks = { library, network, traits, settings: plan.settings }
    const at = (id: string) => indexIn(network.compounds, id)
    const { sets, complete } = stepSets(network, {
      start: at(this.start),
      targets: this.targets.map(at),
      free: ['water', 'oxygen'].map(at).filter(index => index >= 0),
      masked: masksTogether(stoppedArcs(masks), forbiddenArcs(masks, options)),
      budget: budget.sets,
      ...(options.maxSteps === undefined ? {} : { maxSteps: options.maxSteps }),
    })
    const must = [...(options.mustPass ?? []), ...(options.make ?? []).filter(id => id !== 'all')]
    const ways = sets.flatMap(arcs => {
      const steps = workingOrder(
        library,
        this.start,
        arcs.map(a => network.arcs[a]!),
      )
      const made = new Set(steps.map(s => s.makes))
      if (!must.every(id => id === this.start || made.has(id))) return []
      const own = goals.map((goal, index) => {
        const target = this.targets[index]!
        return { ...goal, target, route: { start: this.start, target, steps: upstream(library, steps, target) } }
      })
      return wayOf(library, { ...plan, goals: own }) ?? []
    })
    ways.sort((a, b) => compareKeys(a.bound, b.bound) || compareSteps(a.steps, b.steps))
    return { ways, complete }
  }

  /** A way in full, once; null where a list ends it. */
  #reckon(way: Way, limits: WayLimits, leastUnknown = 0): ReckonedWay | null {
    const name = way.steps.join(' ')
    let known = this.#known.get(name)
    if (known === undefined) {
      const { library, tables, traits, solver } = this.input
      const evaluation = evaluate({ library, tables, traits, plan: way.plan, solver })
      if ('stopped' in evaluation) known = null
      else {
        const key = keyOf(library, way, evaluation, solver)
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

  /** One sentence for each choice that the best way makes and another way makes otherwise. */
  reasons(found: Found, best: ReckonedWay): readonly string[] {
    const { library } = this.input
    const makerIn = (steps: readonly string[]) => new Map(steps.map(id => [transformationOf(library, id).mainProduct, id]))
    const own = makerIn(best.way.steps)
    const needed = new Set(best.way.steps.flatMap(id => transformationOf(library, id).reactants.map(r => r.compound)))
    // The likest way with the other choice, so that the difference is the choice's; of equally like ones the first by its bound.
    const rivals = new Map<
      string,
      { readonly compound: string; readonly other: string | null; readonly way: Way; readonly apart: number }
    >()
    for (const way of found.ways) {
      const apart = stepsApart(way.steps, best.way.steps) + Math.abs(way.steps.length - best.way.steps.length) / 1000
      if (apart === 0) continue
      const theirs = makerIn(way.steps)
      const theirNeeded = new Set(way.steps.flatMap(id => transformationOf(library, id).reactants.map(r => r.compound)))
      for (const compound of new Set([...own.keys(), ...theirs.keys()])) {
        const [mine, other] = [own.get(compound) ?? null, theirs.get(compound) ?? null]
        const both = (mine !== null || needed.has(compound)) && (other !== null || theirNeeded.has(compound))
        const before = rivals.get(`${compound} ${other}`)
        if (both && mine !== other && (before === undefined || apart < before.apart))
          rivals.set(`${compound} ${other}`, { compound, other, way, apart })
      }
    }
    const likest = [...rivals.values()].sort((a, b) => a.apart - b.apart)
    const told = new Set<string>()
    const words: string[] = []
    for (const { compound, other, way } of likest) {
      const name = way.steps.join(' ')
      if (words.length >= mostReasons || told.has(name)) continue
      told.add(name)
      const rival = this.#reckon(way, this.input.limits)
      if (rival === null) continue
      const choice = { compound, own: own.get(compound) ?? null, other }
      words.push(differenceOf(library, [choice], best, rival))
    }
    return words
  }

  /** Ways under the same options that were reckoned, for whatever reason, best first. */
  others(found: Found, best: ReckonedWay): readonly WayFigures[] {
    const own = new Set(found.ways.map(way => way.steps.join(' ')))
    return [...this.#known.values()]
      .filter(one => one !== null && one.way !== best.way && own.has(one.way.steps.join(' ')))
      .map(one => this.#reckon(one!.way, this.input.limits)!)
      .sort(compareWays)
      .map(one => one.figures)
  }

  /** What wins where nothing is forbidden, held against what wins as asked. */
  changedByLimits(best: ReckonedWay): string | null {
    const { options, limits, library } = this.input
    const {
      avoid: _a,
      avoidStep: _s,
      avoidCode: _c,
      avoidList: _l,
      ownedOnly: _o,
      seenOnly: _t,
      maxSteps: _m,
      mustPass: _p,
      make: _k,
      ...free
    } = options
    const isFree =
      Object.keys(limits).length === 0 &&
      [options.avoid, options.avoidStep, options.avoidCode, options.avoidList, options.mustPass, options.make].every(
        l => (l ?? []).length === 0,
      ) &&
      options.ownedOnly !== true &&
      options.seenOnly !== true &&
      options.maxSteps === undefined
    if (isFree) return null
    const without = this.best(free, {}).best
    if (without === null || without.way.steps.join(' ') === best.way.steps.join(' ')) return null
    return differenceOf(library, choicesBetween(library, best.way.steps, without.way.steps), best, without)
  }

  /** Why there is no way: nothing leads there, the limits, or a compound that cannot be both. */
  whyNone({ ways, reckoned }: Found): readonly Problem[] {
    const { options, limits, goals } = this.input
    const where = ['goals', ...goals.map(g => g.target)]
    if (ways.length > 0) {
      const nearest = [...reckoned].sort((a, b) => a.figures.over.length - b.figures.over.length || compareWays(a, b))[0]
      const out =
        nearest === undefined
          ? nearestOut(ways.filter(hasFewestUnknown(ways)), limits, this.input.plan.packs?.currency ?? 'XXX')
          : nearest.figures.over.join('; ')
      return [
        {
          code: 'none-within-limits',
          where,
          what: `None of the ${ways.length === 1 ? 'one way' : `${ways.length} ways`} to these goals keeps within the limits: ${out}.`,
          why: nearest === undefined ? 'Their bounds say so already.' : `The nearest goes by ${nearest.way.steps.join(', ')}.`,
          cure: this.#withoutAGoal(limits) ?? 'Loosen the limit, lower a goal, or leave one out.',
        },
      ]
    }
    const free = this.#ways({}).ways.length
    if (
      free > 0 &&
      Object.values(options).some(value => (Array.isArray(value) ? value.length > 0 : value !== undefined && value !== false))
    )
      return [
        {
          code: 'none-left',
          where,
          what: 'What is forbidden leaves no way to these goals.',
          why: `Without it there ${free === 1 ? 'is one way' : `are ${free} ways`}.`,
          cure: 'Allow one of the things forbidden, or leave a goal out.',
        },
      ]
    return [
      {
        code: 'goals-apart',
        where,
        what: 'No one plan holds these goals together.',
        why: 'In one plan each compound is made in one way, from the start in hand; or a goal cannot be made from it at all.',
        cure: 'Plan some of the goals apart; waybench routes tells for each whether a route exists.',
      },
    ]
  }

  /** Which goal to leave out so that the others keep within the limits; null where leaving out one is not enough. */
  #withoutAGoal(limits: WayLimits): string | null {
    const { goals } = this.input
    if (goals.length < 2) return null
    const cures = goals.flatMap((goal, at) => {
      const fewer = new JointSearch(
        { ...this.input, goals: goals.filter((_, i) => i !== at) },
        this.start,
        this.targets.filter((_, i) => i !== at),
      )
      const { best } = fewer.best(this.input.options, limits)
      return best === null ? [] : [{ target: goal.target, key: best.key, total: best.evaluation.basket }]
    })
    if (cures.length === 0) return null
    const sentences = cures.map(({ target, total }) => {
      const name = this.input.library.materials.get(target)?.name ?? target
      return total === null || total.totalMinor === null
        ? name
        : `${name} (the others then cost ${moneyText(total.totalMinor, total.currency)})`
    })
    return `Leave out ${sentences.join(', or ')}; or loosen the limit, or lower a goal.`
  }
}

const compareSteps = (a: readonly string[], b: readonly string[]): number => {
  const [one, other] = [a.join(' '), b.join(' ')]
  return a.length - b.length || (one < other ? -1 : one > other ? 1 : 0)
}

/** By key; of equals the one that makes more of the rest, then fewer steps, then ids. */
function compareWays(a: ReckonedWay, b: ReckonedWay): number {
  const restOf = ({ evaluation }: ReckonedWay) => evaluation.goals.find(g => g.amount.kind === 'rest')?.expectedG ?? 0
  const more = restOf(b) - restOf(a)
  return compareKeys(a.key, b.key) || (Math.abs(more) > 1e-9 ? more : 0) || compareSteps(a.way.steps, b.way.steps)
}

function figuresOf(way: Way, { basket, days }: Evaluation, key: WayKey): WayFigures {
  const compared = way.held.goals.some(g => g.amount.kind === 'rest')
  return {
    steps: way.steps,
    totalMinor: basket?.totalMinor ?? null,
    complete: basket?.complete ?? false,
    priceUnknown: basket?.priceUnknown.length ?? 0,
    perGramMinor: compared && Number.isFinite(key.cost) && basket?.totalMinor != null ? key.cost : null,
    unreached: key.unreached,
    handsOnH: days.handsOnH,
    finishDate: days.finishDate,
    over: [],
  }
}

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

/** What two ways make otherwise: by another transformation, or in one of them bought. */
function choicesBetween(library: Library, own: readonly string[], other: readonly string[]): readonly Choice[] {
  const makers = (steps: readonly string[]) => new Map(steps.map(id => [transformationOf(library, id).mainProduct, id]))
  const [mine, theirs] = [makers(own), makers(other)]
  return [...new Set([...mine.keys(), ...theirs.keys()])].flatMap(compound => {
    const choice = { compound, own: mine.get(compound) ?? null, other: theirs.get(compound) ?? null }
    return choice.own === choice.other ? [] : [choice]
  })
}

/** As few prices as any way that reaches the goals must leave unknown. */
const fewestUnknown = (ways: readonly Way[]): number =>
  Math.min(...ways.filter(way => way.bound.unreached === (ways[0]?.bound.unreached ?? 0)).map(way => way.bound.priceUnknown))

const hasFewestUnknown = (ways: readonly Way[]): ((way: Way) => boolean) => {
  const least = fewestUnknown(ways)
  return way => way.bound.priceUnknown <= least
}
