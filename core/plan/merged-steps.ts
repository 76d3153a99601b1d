import { type Library, transformationOf } from '../library/library.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { isRoute } from '../route/is-route.ts'
import type { Step } from '../route/route.ts'
import { workingOrder } from '../route/working-order.ts'
import type { Goal } from './plan.ts'

/** The routes of all goals as one list of steps: one maker a compound, shared steps once. */
export interface MergedSteps {
  readonly start: string
  /** In working order. */
  readonly steps: readonly Step[]
  /** By transformation: 1, 2a, 2b, 3 ... as drawn and printed everywhere. */
  readonly numbers: ReadonlyMap<string, string>
  /** By goal: the transformations its target is made by, in working order; those of its route and what the merged plan makes for it. */
  readonly stepsOfGoal: readonly (readonly string[])[]
}

/**
 * Merges the routes of several goals. A compound that one of them makes supplies the steps of all.
 *
 * @returns Problems: no-goal, goal-route (a route that is none), goal-start (different starts), two-makers (one compound made in two ways),
 * circle (goals whose steps feed each other)
 */
export function mergedSteps(library: Library, goals: readonly Goal[]): Checked<MergedSteps> {
  const problems: Problem[] = []
  const first = goals[0]
  if (!first) {
    return bad([
      {
        code: 'no-goal',
        where: ['goals'],
        what: 'The plan has no goal.',
        why: 'Amounts are reckoned for what is to be made.',
        cure: 'Add a goal.',
      },
    ])
  }
  const makers = new Map<string, { transformation: string; goal: string }>()
  const faulty = new Set<Goal>()
  goals.forEach((goal, index) => {
    const where = ['goals', String(index + 1), goal.target]
    for (const fault of [...isRoute(library, goal.route, { buyable: false }), ...targetFault(goal)]) {
      faulty.add(goal)
      problems.push({
        code: 'goal-route',
        where,
        what: fault,
        why: 'Amounts run along a route from the start to the goal.',
        cure: 'Choose a route that the route list offers.',
      })
    }
    if (goal.route.start !== first.route.start) {
      problems.push({
        code: 'goal-start',
        where,
        what: `It starts from ${goal.route.start}, the first goal from ${first.route.start}.`,
        why: 'The goals of one plan divide one start between them.',
        cure: 'Make it a plan of its own.',
      })
    }
    if (faulty.has(goal)) return
    for (const step of goal.route.steps) {
      const other = makers.get(step.makes)
      if (!other) makers.set(step.makes, { transformation: step.transformation, goal: goal.target })
      else if (other.transformation !== step.transformation) {
        problems.push({
          code: 'two-makers',
          where,
          what: `It makes ${step.makes} by ${step.transformation}, the goal ${other.goal} by ${other.transformation}.`,
          why: 'In one plan a compound has one maker, so that shared intermediates are made once.',
          cure: `Choose the same way to ${step.makes} for both, or plan one of them by itself.`,
        })
      }
    }
  })
  if (makers.has(first.route.start)) {
    problems.push({
      code: 'goal-start',
      where: ['goals'],
      what: `${first.route.start} is the start, and a step makes it.`,
      why: 'The start is neither made nor bought.',
      cure: 'Choose another route for that goal.',
    })
  }
  const targets = goals.map(g => g.target)
  for (const target of new Set(targets)) {
    if (targets.indexOf(target) === targets.lastIndexOf(target)) continue
    problems.push({
      code: 'goal-twice',
      where: ['goals', target],
      what: `${target} is a goal more than once.`,
      why: 'Each goal has one row of amounts.',
      cure: 'Put both amounts into one goal.',
    })
  }
  if (problems.length > 0) return bad(problems)
  const ids = [...makers.values()].map(m => m.transformation)
  let steps: readonly Step[]
  try {
    steps = workingOrder(library, first.route.start, ids)
  } catch {
    const what = 'Steps of these goals feed each other in a circle.'
    return bad([{ code: 'circle', where: ['goals'], what, why: 'No step can come first.', cure: 'Plan the goals one by one.' }])
  }
  const stepsOfGoal = goals.map(goal => upstream(library, steps, goal.target))
  return good({ start: first.route.start, steps, numbers: stepNumbers(library, steps, stepsOfGoal), stepsOfGoal })
}

const targetFault = (goal: Goal): string[] =>
  goal.route.target === goal.target ? [] : [`Its route leads to ${goal.route.target}, not to ${goal.target}.`]

/** Transformations that a compound needs, in working order. */
function upstream(library: Library, steps: readonly Step[], target: string): readonly string[] {
  const needed = new Set([target])
  const found: string[] = []
  for (let i = steps.length - 1; i >= 0; i--) {
    const step = steps[i]!
    if (!needed.has(step.makes)) continue
    found.unshift(step.transformation)
    for (const { compound } of transformationOf(library, step.transformation).reactants) needed.add(compound)
  }
  return found
}

/** Numbers by distance from the start: steps as far along share a number and get letters, in the order of the goals they serve. */
function stepNumbers(library: Library, steps: readonly Step[], stepsOfGoal: readonly (readonly string[])[]): ReadonlyMap<string, string> {
  const depth = new Map<string, number>()
  const depthOf = new Map<string, number>()
  for (const step of steps) {
    const before = transformationOf(library, step.transformation).reactants.map(r => depth.get(r.compound) ?? 0)
    const own = 1 + Math.max(0, ...before)
    depth.set(step.makes, own)
    depthOf.set(step.transformation, own)
  }
  const firstGoal = (id: string): number => stepsOfGoal.findIndex(list => list.includes(id))
  const numbers = new Map<string, string>()
  for (let level = 1; level <= steps.length; level++) {
    const here = steps.filter(s => depthOf.get(s.transformation) === level).map(s => s.transformation)
    const ordered = here.map((id, order) => ({ id, order, goal: firstGoal(id) })).sort((a, b) => a.goal - b.goal || a.order - b.order)
    ordered.forEach(({ id }, i) => {
      numbers.set(id, ordered.length === 1 ? String(level) : `${level}${letters(i)}`)
    })
  }
  return numbers
}

/** a to z, then aa, ab ... */
const letters = (index: number): string =>
  index < 26 ? String.fromCharCode(97 + index) : letters(Math.floor(index / 26) - 1) + letters(index % 26)

/** Order of step numbers for a reader: 1, 2a, 2b, 3, 10. */
export function byNumber(a: string, b: string): number {
  const depth = Number.parseInt(a, 10) - Number.parseInt(b, 10)
  if (depth !== 0) return depth
  return a.length - b.length || (a < b ? -1 : a > b ? 1 : 0)
}
