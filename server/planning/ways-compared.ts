import type { RouteRows } from '../../core/choose/route-list.ts'
import { routeList } from '../../core/choose/route-list.ts'
import { together } from '../../core/choose/together.ts'
import { type Choosing, firstChoosing } from '../../core/plan/choosing.ts'
import { evaluate } from '../../core/plan/evaluate.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { Goal, Plan } from '../../core/plan/plan.ts'
import { type ComparedWay, mostWays, wayNames } from '../../core/report/way-hazards.ts'
import { workingOrder } from '../../core/route/working-order.ts'
import type { Workshop } from '../library/workshop.ts'
import { routesInput } from './request.ts'
import { searched } from './searching.ts'

/** Routes looked through for the other goals, so that they follow where they share a compound. */
const routesPerGoal = 40
/** A look round beside a plan that is already made ends once it was asked so many times whether to go on. */
const looksAtMost = 500

/**
 * The ways to the first goal with what can hurt on each, the way taken first; the other goals follow where they share a compound with it.
 * Nothing is bought here, so that no basket is reckoned.
 *
 * @param choosing how they were looked for: no way is set beside the plan's that this leaves out
 * @returns the way taken alone where no other is found
 */
export async function waysCompared(
  workshop: Workshop,
  plan: Plan,
  evaluation: Evaluation,
  choosing: Choosing = plan.choosing ?? firstChoosing,
): Promise<readonly ComparedWay[]> {
  const { library, tables } = workshop
  const [first, ...rest] = plan.goals
  if (first === undefined) return []
  const stepsOf = (goal: Goal): readonly string[] => goal.route.steps.map(step => step.transformation)
  const key = (steps: readonly string[]): string => [...steps].sort().join(' ')
  const rows = await rowsTo(workshop, plan, choosing, first.target, mostWays)
  const others = rows.filter(row => key(row) !== key(stepsOf(first))).slice(0, mostWays - 1)
  if (others.length === 0) return []
  const candidates = await Promise.all(
    rest.map(async goal => [
      goal,
      ...(await rowsTo(workshop, plan, choosing, goal.target, routesPerGoal)).map(row => going(workshop, goal, row)),
    ]),
  )
  const names = wayNames(library, [stepsOf(first), ...others])
  const ways: ComparedWay[] = [{ name: names[0]!, taken: true, hazards: evaluation.hazards }]
  for (const [at, row] of others.entries()) {
    const goals = together(library, [[going(workshop, first, row)], ...candidates])
    if (goals === null) continue
    const other = evaluate({ library, tables, traits: workshop.traits(), plan: { ...plan, goals, log: [] }, solver: null })
    if (!('stopped' in other)) ways.push({ name: names[at + 1]!, taken: false, hazards: other.hazards })
  }
  return ways
}

const going = ({ library }: Workshop, goal: Goal, steps: readonly string[]): Goal => ({
  ...goal,
  route: { ...goal.route, steps: workingOrder(library, goal.route.start, steps) },
})

async function rowsTo(
  workshop: Workshop,
  plan: Plan,
  { maxSteps, unbeaten: _unbeaten, ...options }: Choosing,
  target: string,
  count: number,
): Promise<readonly (readonly string[])[]> {
  let looks = 0
  const query = { ...options, from: plan.start.material, to: target, count, ...(maxSteps === null ? {} : { maxSteps }) }
  const answer = await searched(routeList({ ...routesInput(workshop, query, plan), shouldStop: () => ++looks > looksAtMost }))
  const rows: RouteRows | null = answer.ok && answer.value.kind === 'routes' ? answer.value : null
  return rows === null ? [] : [...rows.routes, ...(rows.gentlest ? [rows.gentlest] : [])].map(row => row.steps)
}
