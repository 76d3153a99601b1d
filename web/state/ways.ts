import { computed } from '@preact/signals'
import type { Plan } from '../../core/plan/plan.ts'
import type { Route } from '../../core/route/route.ts'
import type { RouteRow } from '../api/replies.ts'
import { facts, startCompound } from './facts-here.ts'
import type { OtherWay } from './reckoning.ts'
import { routesTo, unbeatenTo } from './route-lists.ts'
import { harmonised, keyOfRoute, keyOfSteps, routeOfSteps } from './routes-of.ts'
import { plan } from './store.ts'
import { goalLookedAt } from './view.ts'

/** So many of them are reckoned in full beside the chosen one. */
const routesReckoned = 10

/** The rows of a goal as routes, those whose steps are known here. */
export function waysTo(target: string): readonly { readonly row: RouteRow; readonly route: Route }[] {
  return waysOf(rowsTo(target))
}

/** The same while a search is under way: the list as it grows. */
export function waysShown(target: string): readonly { readonly row: RouteRow; readonly route: Route }[] {
  const rows = routesTo(target).looking?.rows ?? []
  return rows.length === 0 ? waysTo(target) : waysOf(rows)
}

/** What was listed, the gentlest near the first, and those that nothing listed beats. */
export function rowsTo(target: string): readonly RouteRow[] {
  const reply = routesTo(target).answer
  if (reply === null) return []
  return [...reply.routes, ...(reply.gentlest ? [reply.gentlest] : []), ...(unbeatenTo(target).answer?.routes ?? [])]
}

function waysOf(rows: readonly RouteRow[]): readonly { readonly row: RouteRow; readonly route: Route }[] {
  const { library } = facts.value
  const ways = new Map<string, { row: RouteRow; route: Route }>()
  for (const row of rows) {
    const route = routeOfSteps(library, startCompound.value, row.steps)
    if (route !== null && !ways.has(keyOfSteps(row.steps))) ways.set(keyOfSteps(row.steps), { row, route })
  }
  return [...ways.values()]
}

/** Plans with the goal that is looked at going another way: what stands in the columns beside the chosen one. */
export const others = computed<readonly OtherWay[]>(() => {
  const goal = goalLookedAt.value
  if (goal === null) return []
  const chosen = keyOfRoute(goal.route)
  return waysTo(goal.target)
    .map(({ route }) => ({ key: `${goal.target} ${keyOfRoute(route)}`, plan: goingBy(plan.value, route) }))
    .filter(other => other.key !== `${goal.target} ${chosen}`)
    .slice(0, routesReckoned)
})

/** The plan going by a route, the other goals following where they share a compound with it. */
export function goingBy(of: Plan, route: Route): Plan {
  const candidates = new Map(of.goals.map(goal => [goal.target, waysTo(goal.target).map(way => way.route)]))
  const routes = harmonised(
    of.goals.map(goal => goal.route),
    route,
    candidates,
  )
  return { ...of, goals: of.goals.map((goal, at) => ({ ...goal, route: routes[at] ?? goal.route })) }
}
