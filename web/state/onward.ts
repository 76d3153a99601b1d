import { effect, signal } from '@preact/signals'
import { takenAfterLast, type Way } from '../../core/logbook/replan.ts'
import { standing } from '../../core/plan/logged.ts'
import type { Route } from '../../core/route/route.ts'
import { server } from '../api/client.ts'
import { bringFacts, canReckon } from './facts-asked.ts'
import { facts, tables } from './facts-here.ts'
import { replan } from './reckoner.ts'
import { routeOfSteps } from './routes-of.ts'
import { choosing, plan } from './store.ts'

/** The four ways on, as they stand; older ones stay in grey while new ones are reckoned. */
export const waysOnward = signal<{ readonly ways: readonly Way[]; readonly waiting: boolean }>({ ways: [], waiting: false })

/** Among so many routes from what a run gave, ranked as the plan ranks them, the first that goes another way is offered. */
const routesTried = 12

let watching = false
let asked = 0

/** Has the ways on reckoned, and again whenever the log grows. */
export function askWaysOn(): void {
  if (watching) return
  watching = true
  effect(() => {
    if (plan.value.log.length > 0 && canReckon.value) void reckonWays()
    else waysOnward.value = { ways: [], waiting: false }
  })
}

async function reckonWays(): Promise<void> {
  const own = ++asked
  const steps = new Set(plan.value.goals.flatMap(goal => goal.route.steps.map(step => step.transformation)))
  const last = standing(plan.value.log).findLast(entry => steps.has(entry.step))
  const made = last === undefined ? undefined : facts.peek().library.transformations.get(last.step)?.mainProduct
  if (made === undefined || takenAfterLast(plan.value) !== null) {
    waysOnward.value = { ways: [], waiting: false }
    return
  }
  waysOnward.value = { ways: waysOnward.peek().ways, waiting: true }
  const of = plan.peek()
  const routes = (await Promise.all(of.goals.map(goal => routesFrom(made, goal.target)))).flat()
  if (own !== asked) return
  const ways = await replan(facts.peek(), tables.peek(), of, routes)
  if (own === asked) waysOnward.value = { ways, waiting: false }
}

/** Routes from what is in hand now; none where the server is silent, since the other three ways need none. */
async function routesFrom(from: string, to: string): Promise<readonly Route[]> {
  if (from === to) return []
  const { maxSteps: _most, unbeaten: _axes, ...options } = choosing.peek()
  try {
    const { routes } = await server.routes({
      from,
      to,
      ...options,
      count: routesTried,
      settings: plan.peek().settings,
      packs: plan.peek().packs,
    })
    await bringFacts(
      routes.map(row => row.steps),
      [],
    )
    return routes.flatMap(row => routeOfSteps(facts.peek().library, from, row.steps) ?? [])
  } catch {
    return []
  }
}
