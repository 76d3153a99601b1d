import type { ChoosingOptions, RoutesQuery } from '../../core/choose/query.ts'
import { readQuery, startOf } from '../../core/choose/query.ts'
import type { RouteRows, RoutesAnswer } from '../../core/choose/route-list.ts'
import { routeRows } from '../../core/choose/route-rows.ts'
import type { RoutesInput } from '../../core/choose/searching.ts'
import { together } from '../../core/choose/together.ts'
import type { Goal, GoalAmount, Groups, Plan } from '../../core/plan/plan.ts'
import { nearest } from '../../core/problem/nearest.ts'
import type { Checked, Problem } from '../../core/problem/problem.ts'
import { stopProblems } from '../../core/report/stops.ts'
import { isRoute } from '../../core/route/is-route.ts'
import type { Route } from '../../core/route/route.ts'
import { workingOrder } from '../../core/route/working-order.ts'
import type { Workshop } from '../library/workshop.ts'
import { Refusal } from '../refusal.ts'
import type { SideFiles } from './files.ts'

/** Routes from one material to another, or a refusal that says why there are none. */
export function listRoutes(workshop: Workshop, query: RoutesQuery, side: Pick<SideFiles, 'packs' | 'settings'>): RouteRows {
  return rowsIn(workshop, routeRows(routesInput(workshop, query, side)))
}

export const routesInput = (workshop: Workshop, query: RoutesQuery, side: Pick<SideFiles, 'packs' | 'settings'>): RoutesInput => ({
  library: workshop.library,
  lists: workshop.tables.regulated.lists,
  traits: workshop.traits(),
  query,
  packs: side.packs,
  settings: side.settings,
})

/** @throws Refusal where there are no rows */
export function rowsIn({ library }: Workshop, answer: Checked<RoutesAnswer>): RouteRows {
  if (!answer.ok) throw new Refusal('bad-input', answer.problems)
  if (answer.value.kind === 'stopped') throw new Refusal('no-answer', stopProblems(library, answer.value.stopped))
  if (answer.value.kind === 'none') throw new Refusal('no-answer', answer.value.problems)
  const { kind: _kind, ...rows } = answer.value
  return rows
}

/** What is to be planned: ids as typed, amounts already in grams of the material named. */
export interface PlanRequest {
  readonly from: string
  readonly haveG: number | null
  readonly goals: readonly { readonly target: string; readonly amount: GoalAmount; readonly groups?: Groups }[]
  /** Transformations of the route, for a single goal; null = chosen by the options. */
  readonly steps: readonly string[] | null
  /** Which of the listed routes, from 1; for the first goal. */
  readonly route: number
  readonly choosing: ChoosingOptions
  readonly side: SideFiles
  readonly seed: number
  readonly title: string
}

/** A plan out of a request: its routes found or put in order. */
export function planOf(workshop: Workshop, request: PlanRequest): Plan {
  const { from, haveG, side, seed, title } = request
  const goals = request.steps === null ? chosenGoals(workshop, request) : [givenGoal(workshop, request, request.steps)]
  return {
    title,
    start: { material: from, massG: haveG },
    goals,
    shelf: side.shelf,
    packs: side.packs,
    settings: side.settings,
    log: [],
    seed,
  }
}

/** Routes looked through for a combination that one plan can hold. */
const routesPerGoal = 40

function chosenGoals(workshop: Workshop, { from, goals, choosing, side, route }: PlanRequest): readonly Goal[] {
  const choices = goals.map(({ target, amount, groups }, at) => {
    const wanted = at === 0 ? route : 1
    const rows = listRoutes(
      workshop,
      { ...choosing, from, to: target, count: Math.max(wanted, goals.length > 1 ? routesPerGoal : 1) },
      side,
    )
    if (rows.routes.length < wanted) {
      throw new Refusal('bad-input', [
        {
          code: 'route-number',
          where: ['command line', '--route'],
          what: `--route ${wanted} is asked for, and there ${rows.routes.length === 1 ? 'is one route' : `are ${rows.routes.length} routes`} to ${target}.`,
          why: 'Routes are numbered as waybench routes lists them under the same options.',
          cure: `Give a number from 1 to ${rows.routes.length}.`,
        },
      ])
    }
    const start = compoundOfStart(workshop, from)
    // The numbered route alone for the first goal; the others may give way where one plan cannot hold both.
    const listed = at === 0 && goals.length > 1 && wanted === 1 ? rows.routes : rows.routes.slice(wanted - 1, at === 0 ? wanted : undefined)
    return listed.map(row => ({
      target,
      amount,
      ...(groups ? { groups } : {}),
      route: { start, target: compoundOfTarget(workshop, target), steps: workingOrder(workshop.library, start, row.steps) },
    }))
  })
  const fitting = together(workshop.library, choices)
  if (fitting) return fitting
  throw new Refusal('no-answer', [
    {
      code: 'goals-apart',
      where: ['goals', ...goals.map(g => g.target)],
      what: 'No combination of the best routes to these goals fits one plan.',
      why: 'In one plan each compound is made in one way.',
      cure: 'Plan some of the goals apart, or steer the routes with --avoid-step or --must-pass.',
    },
  ])
}

/** A route given by its transformations, in any order, held against the definition of a route. */
function givenGoal(workshop: Workshop, { from, goals, choosing }: PlanRequest, steps: readonly string[]): Goal {
  const { library } = workshop
  const goal = goals[0]!
  const query = readQuery(library, workshop.traits(), { ...choosing, from, to: goal.target }, workshop.tables.regulated.lists)
  const problems: Problem[] = query.ok ? [] : [...query.problems]
  for (const id of steps) {
    if (library.transformations.has(id)) continue
    const near = nearest(id, library.transformations.keys())
    problems.push({
      code: 'id-unknown',
      where: ['--steps', id],
      what: `The library has no transformation "${id}".`,
      why: 'The steps of a route are transformations of the library.',
      cure: near ? `Did you mean "${near}"?` : 'Look the id up with waybench routes.',
    })
  }
  if (!query.ok || problems.length > 0) throw new Refusal('bad-input', problems)
  const { start, target } = query.value
  const route: Route = { start, target, steps: workingOrder(library, start, [...new Set(steps)]) }
  const faults = isRoute(library, route)
  if (faults.length > 0) {
    throw new Refusal(
      'bad-input',
      faults.map(fault => ({
        code: 'steps-no-route',
        where: ['--steps'],
        what: fault,
        why: 'A route uses the start, makes each compound once and needs each of its steps.',
        cure: 'Correct --steps, or leave it out to take a route that waybench routes lists.',
      })),
    )
  }
  return { target: goal.target, amount: goal.amount, ...(goal.groups ? { groups: goal.groups } : {}), route }
}

function compoundOfStart(workshop: Workshop, id: string): string {
  const problems: Problem[] = []
  const start = startOf(workshop.library, id, problems)
  if (start === null) throw new Refusal('bad-input', problems)
  return start
}

function compoundOfTarget(workshop: Workshop, id: string): string {
  const material = workshop.library.materials.get(id)
  return material?.kind === 'mixture' && material.contains ? material.contains.compound : id
}
