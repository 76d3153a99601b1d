import { computed, effect, signal } from '@preact/signals'
import type { GoalAmount } from '../../core/plan/plan.ts'
import type { Route } from '../../core/route/route.ts'
import { bringFacts } from './facts-asked.ts'
import { facts, startCompound } from './facts-here.ts'
import { askRoutes } from './questions.ts'
import { routesTo } from './route-lists.ts'
import { comesFromStart, firstAgreeing, keyOfRoute } from './routes-of.ts'
import { nothing } from './sheet-state.ts'
import { change, choosing, plan } from './store.ts'
import { goingBy, waysTo } from './ways.ts'

interface Wanted {
  readonly target: string
  readonly amount?: GoalAmount
}

/** Compounds that were named as goals while their routes are still being looked for, in the order in which they were named. */
const waitingGoals = signal<readonly Wanted[]>([])
/** The one whose turn it is. */
export const wanted = computed(() => waitingGoals.value[0]?.target ?? null)
export const isWanted = (target: string): boolean => waitingGoals.value.some(one => one.target === target)

/** Makes a compound a goal as soon as a route to it is known; a goal that no route leads to makes way for the next one. */
export function wantGoal(target: string, amount?: GoalAmount): void {
  const others = waitingGoals.value.filter(one => one.target !== target && routesTo(one.target).answer?.routes.length !== 0)
  waitingGoals.value = [...others, amount === undefined ? { target } : { target, amount }]
  askRoutes(target)
}

/** No route leads there, or the person thought better of it. */
export const noLongerWanted = (target: string): void => {
  waitingGoals.value = waitingGoals.value.filter(one => one.target !== target)
}

/** Nothing is waited for any more: another plan is opened. */
export const forgetWanted = (): void => {
  waitingGoals.value = []
}

export function dropGoal(target: string): void {
  noLongerWanted(target)
  change({ do: 'drop-goal', target })
}

/** Takes the route for a wanted goal once search and facts have come; called once. */
export function watchWanted(): void {
  effect(() => {
    const target = wanted.value
    if (target === null || startCompound.value === nothing) return
    askRoutes(target)
    const { answer } = routesTo(target)
    if (answer === null || answer.routes.length === 0) return
    const ways = waysTo(target)
    if (ways.length === 0) {
      void bringFacts(
        answer.routes.map(row => row.steps),
        [target],
      )
      return
    }
    // What the buyer cannot have is not chosen by itself where there is another way.
    const allowed = ways.filter(({ row }) => !row.flags.some(flag => flag.kind === 'barred'))
    const route = firstAgreeing(
      (allowed.length > 0 ? allowed : ways).map(way => way.route),
      plan.peek().goals.map(goal => goal.route),
    )
    if (route === null) return
    const amount = waitingGoals.peek().find(one => one.target === target)?.amount
    noLongerWanted(target)
    change({ do: 'add-goal', route, ...(amount === undefined ? {} : { amount }) })
  })
  effect(() => {
    const flip = flipping.value
    if (flip !== null) follow(flip)
  })
}

interface Flip {
  readonly target: string
  readonly compound: string
  readonly to: 'buy' | 'make'
}

/** Make or buy was pressed, and the goal's route that goes so is being looked for. */
export const flipping = signal<Flip | null>(null)
/** The last press that no route could follow, in words. */
export const notFlipped = signal<string | null>(null)

/** Takes the route that makes it, or no longer makes it, once it is found. */
function follow(flip: Flip): void {
  const { waiting, answer, problems } = routesTo(flip.target)
  if (waiting) return
  const known = waysTo(flip.target)
  if (answer !== null && known.length < answer.routes.length) {
    void bringFacts(
      answer.routes.map(row => row.steps),
      [],
    )
    return
  }
  const asPressed = known.filter(({ route }) => route.steps.some(step => step.makes === flip.compound) === (flip.to === 'make'))
  // Made here means first of all from what is in hand; a way that makes it from something bought is chosen among the ways.
  const ownMade = asPressed.filter(({ route }) => flip.to === 'make' && comesFromStart(facts.peek().library, route, flip.compound))
  const ways = ownMade.length > 0 ? ownMade : asPressed
  const goal = plan.peek().goals.find(one => one.target === flip.target)
  flipping.value = null
  if (ways.length > 0 && goal !== undefined) {
    takeWay(
      nearest(
        ways.map(way => way.route),
        goal.route,
      ),
    )
    return
  }
  notFlipped.value =
    problems[0]?.what ?? `No route found ${flip.to === 'make' ? 'makes' : 'buys'} ${flip.compound}; the plan stays as it was.`
  const { make } = choosing.peek()
  change({ do: 'choosing', patch: { make: flip.to === 'make' ? make.filter(id => id !== flip.compound) : [...make, flip.compound] } })
}

/** Of several routes the one that keeps most of the present one. */
function nearest(routes: readonly Route[], present: Route): Route {
  const own = new Set(present.steps.map(step => step.transformation))
  const kept = (route: Route): number => route.steps.filter(step => own.has(step.transformation)).length * 2 - route.steps.length
  return routes.reduce((best, route) => (kept(route) > kept(best) ? route : best))
}

/** Chooses a way for its goal; other goals follow where they share a compound. */
export const takeWay = (route: Route): void => change({ do: 'routes', routes: goingBy(plan.value, route).goals.map(goal => goal.route) })

/** Chooses another transformation for one made compound, everywhere in the plan. */
export function takeMaker(compound: string, transformation: string): void {
  for (const goal of plan.value.goals) {
    if (!goal.route.steps.some(step => step.makes === compound)) continue
    const own = goal.route.steps.filter(step => step.makes !== compound).map(step => step.transformation)
    const ways = waysTo(goal.target).filter(({ route }) => route.steps.some(step => step.transformation === transformation))
    const exact = ways.find(({ route }) => own.every(id => route.steps.some(step => step.transformation === id)))
    const way = exact ?? ways[0]
    if (way !== undefined) {
      takeWay(way.route)
      return
    }
  }
}

/** Makes or buys a co-reactant, in every goal that takes it. */
export function makeOrBuy(compound: string, to: 'buy' | 'make', target: string): void {
  const { make } = choosing.value
  notFlipped.value = null
  // The search is asked anew first: what it answered before knows nothing of this press.
  change({ do: 'choosing', patch: { make: to === 'make' ? [...new Set([...make, compound])] : make.filter(id => id !== compound) } })
  askRoutes(target)
  flipping.value = { target, compound, to }
}

export const sameRoute = (one: Route, other: Route): boolean => keyOfRoute(one) === keyOfRoute(other)
