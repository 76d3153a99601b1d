import type { RegulatedHit } from '../hazards/hazard-list.ts'
import { stopsAmong } from '../hazards/regulated.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import type { Plan } from '../plan/plan.ts'
import { askedAs } from '../problem/asked-as.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { whyNone } from './joint-none.ts'
import { changedByLimits, reasonsOf } from './joint-reasons.ts'
import { type JointInput, JointSearch } from './joint-search.ts'
import { readQuery } from './query.ts'
import type { Search } from './searching.ts'
import type { WayFigures } from './way-figures.ts'

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
  /** No way costs less, minor units; the total where that is proven by cost, null where nothing is known. */
  readonly boundMinor: number | null
}

export type JointAnswer =
  | ({ readonly kind: 'way' } & JointWay)
  | { readonly kind: 'none'; readonly problems: readonly Problem[]; readonly nearest: readonly WayFigures[] }
  | { readonly kind: 'stopped'; readonly stopped: readonly RegulatedHit[] }

/**
 * The cheapest way to reach all goals: routes, make-or-buy and packs at once.
 *
 * Every set of steps that one plan can hold is listed; each gets a bound that needs no solver; in the order of their bounds they are reckoned
 * in full, basket and all, until no bound is better than the best that was found. Ways are compared as definition 9 of the design says:
 * goals reached, complete totals, unknown prices, cost, ids; with an unheld `rest` the cost per gram of it.
 *
 * @returns problems for goals that cannot be read; `none` with what stands in the way; `stopped` where a list ends planning
 */
export function* cheapestWays(input: JointInput): Search<Checked<JointAnswer>> {
  const { library, traits, plan, goals, options, limits } = input
  const problems: Problem[] = []
  const targets: string[] = []
  let start = ''
  for (const goal of goals) {
    const read = readQuery(library, traits, { ...options, from: plan.start.material, to: goal.target }, input.tables.regulated.lists)
    if (read.ok) {
      start = read.value.start
      targets.push(read.value.target)
    } else
      for (const one of read.problems.map(ofPlan)) if (!problems.some(p => JSON.stringify(p) === JSON.stringify(one))) problems.push(one)
  }
  if (problems.length > 0) return bad(problems)
  const stopped = stopsAmong(traits, [...new Set([plan.start.material, start, ...targets])])
  if (stopped.length > 0) return good({ kind: 'stopped', stopped })

  const search = new JointSearch(input, start, targets)
  const found = yield* search.best(options, limits)
  if (found.best === null)
    return good({ kind: 'none', problems: yield* whyNone(search, found), nearest: found.reckoned.slice(0, 5).map(r => r.figures) })
  const { best } = found
  const reasons = yield* reasonsOf(search, found, best)
  return good({
    kind: 'way',
    plan: best.way.plan,
    evaluation: best.evaluation,
    figures: best.figures,
    reasons,
    changedByLimits: yield* changedByLimits(search, best),
    others: search.others(found, best),
    ways: found.ways.length,
    reckoned: found.reckoned.length,
    proven: found.proven,
    boundMinor: found.boundMinor,
  })
}

/** A plan has a start and goals where a question about routes says from and to. */
const ofPlan = (problem: Problem): Problem => ({
  ...problem,
  where: problem.where.map(part => (part === askedAs('from') ? askedAs('start') : part === askedAs('to') ? askedAs('goals') : part)),
})

/** The same without a pause, for whoever has nothing else to do. */
export function cheapestWay(input: JointInput): Checked<JointAnswer> {
  const search = cheapestWays(input)
  for (let step = search.next(); ; step = search.next()) if (step.done) return step.value
}
