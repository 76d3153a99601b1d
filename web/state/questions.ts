import { batch, computed, effect, signal } from '@preact/signals'
import type { Axis } from '../../core/plan/choosing.ts'
import { missingSteps } from '../../core/plan/missing-steps.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { sliceOfPlan } from '../../core/plan/slice.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { Route } from '../../core/route/route.ts'
import { server } from '../api/client.ts'
import type { ReachReply, RouteRow } from '../api/replies.ts'
import { type Asked, Asking, problemsOf } from './asked.ts'
import { brought, carried, carriedInSearch, carriedKey, forgetBrought, noteBrought } from './brought.ts'
import { certain, type Facts, grown, noFacts, withPlanOf } from './facts.ts'
import { forget, reckon, warmUp } from './reckoner.ts'
import type { OtherWay } from './reckoning.ts'
import { countFor, forgetLists, listOf, routesMost, routesTo, unbeatenTo } from './route-lists.ts'
import { harmonised, keyOfRoute, keyOfSteps, routeOfSteps } from './routes-of.ts'
import { expectChange, findReach, findRoutes, startSearcher } from './searcher.ts'
import { hasStart } from './sheet-state.ts'
import { choosing, plan, sheet } from './store.ts'
import { goalLookedAt } from './view.ts'

/**
 * What the page asks the server and the worker, derived from what the person has said: each question is asked again when, and only when,
 * something it depends on has changed.
 */

/** So many of them are reckoned in full beside the chosen one. */
const routesReckoned = 10
/** So far the network downstream is shown unless the person says otherwise. */
const usualReach = 3

const reachAsking = new Asking<ReachReply>()
export const reach = reachAsking.state
export const askReachAgain = (): void => reachAsking.again()
export const stopReach = (): void => reachAsking.stop()

export const facts = signal<Facts>(noFacts)
export const tables = signal<unknown>(null)
/** What the server does not know, nor the plan brings along: not asked for again until one of them is another. */
const lacking = signal<ReadonlyMap<string, Problem>>(new Map())
/** Counts the changes of the bench's own library that this page has made. */
const libraryEdition = signal(0)
export const factsAsked = signal<Asked<true>>({ answer: null, waiting: false, problems: [] })

/** Why the plan cannot be reckoned with what is here: what the server did not answer, and what of the plan it does not know. */
export const factsTrouble = computed<readonly Problem[]>(() => {
  const named = new Set([...missingSteps(facts.value.library, plan.value), ...materialsNamed.value])
  return [...factsAsked.value.problems, ...[...lacking.value].flatMap(([id, problem]) => (named.has(id) ? [problem] : []))]
})

/** Steps and materials that the plan uses and the library does not hold: it was never told of them, or no longer has them. */
export const ofPlanAlone = computed<{ readonly steps: readonly string[]; readonly materials: readonly string[] }>(() => {
  const { steps, materials } = brought.value
  if (facts.value.kept !== null || steps.size + materials.size === 0) return { steps: [], materials: [] }
  const used = sliceOfPlan(facts.value.library, plan.value)
  return {
    steps: [...used.transformations.keys()].filter(id => steps.has(id)),
    materials: [...used.materials.keys()].filter(id => materials.has(id)),
  }
})

/** Compound that the start is or contains; the search runs between compounds. */
export const startCompound = computed(() => {
  const { material } = plan.value.start
  const known = facts.value.library.materials.get(material)
  return known?.kind === 'mixture' ? (known.contains?.compound ?? material) : material
})

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
function rowsTo(target: string): readonly RouteRow[] {
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

/** Everything the plan names is here, so that it can be reckoned. */
export const canReckon = computed(() => {
  const { library } = certain(facts.value)
  return (
    tables.value !== null &&
    plan.value.goals.length > 0 &&
    plan.value.goals.every(goal => goal.route.steps.every(step => library.transformations.has(step.transformation))) &&
    materialsNamed.value.every(id => library.materials.has(id))
  )
})

const materialsNamed = computed<readonly string[]>(() => [
  ...new Set([
    ...(hasStart(sheet.value) ? [plan.value.start.material] : []),
    ...plan.value.shelf.map(item => item.material),
    ...plan.value.goals.map(goal => goal.target),
    // What is sold may be a stronger form of what is needed.
    ...(plan.value.packs?.packs ?? []).map(pack => pack.material),
  ]),
])

/** Steps of the plan and of every row that was found for it. */
const stepsNamed = computed<readonly (readonly string[])[]>(() => {
  const rows = plan.value.goals.flatMap(({ target }) =>
    [...rowsTo(target), ...(routesTo(target).looking?.rows ?? [])].map(row => row.steps),
  )
  // Each by itself: one that is gone takes none of the others along.
  const logged = [...new Set(plan.value.log.map(entry => entry.step))].map(step => [step])
  return [...plan.value.goals.map(goal => goal.route.steps.map(step => step.transformation)), ...logged, ...rows]
})

/** Asks for whatever is named and not here. */
function fetchFacts(): void {
  const { routes, materials } = notHere()
  if (routes.length > 0 || materials.length > 0) void bringFacts(routes, materials)
}

/** Whether the open plan brings records of its own is not known yet: a search without them would be refused, or leave ways out. */
export const awaitsRecords = computed(() => {
  if (carried.value === null || factsAsked.value.problems.length > 0) return false
  const { library } = certain(facts.value)
  const named = plan.value.goals.flatMap(goal => goal.route.steps.map(step => step.transformation))
  return named.some(id => !library.transformations.has(id) && !lacking.value.has(id))
})

/** What is named and not here, without what is known not to be anywhere. */
function notHere() {
  const { library } = certain(facts.value)
  const nowhere = lacking.value
  return {
    routes: stepsNamed.value.filter(steps => steps.some(id => !library.transformations.has(id) && !nowhere.has(id))),
    materials: materialsNamed.value.filter(id => !library.materials.has(id) && !nowhere.has(id)),
  }
}

/**
 * Brings what the plan is saved with, where the page does not hold it.
 *
 * @returns steps that are missing all the same; and whether something of it is still on its way
 */
export async function bringWhatIsSaved(): Promise<{ readonly missing: readonly string[]; readonly waiting: boolean }> {
  const { routes, materials } = notHere()
  if (routes.length > 0 || materials.length > 0) await bringFacts(routes, materials)
  const missing = missingSteps(facts.peek().library, plan.peek())
  return { missing, waiting: factsAsked.peek().waiting && missing.length + notHere().materials.length > 0 }
}

/** The records that the plan uses go on with it, whatever becomes of the library. */
export function carryPlan(): void {
  carried.value = withPlanOf(carried.peek(), facts.peek().library, plan.peek())
}

/** The library has changed under the page: everything is asked anew. */
export function forgetLibrary(): void {
  expectChange()
  carryPlan()
  reachAsking.forget()
  forgetLists()
  batch(() => {
    libraryEdition.value++
    facts.value = { ...facts.value, stale: true }
  })
}

let bringing: string | null = null

/** Brings a slice of the library; resolves once its records are here. */
export async function bringFacts(routes: readonly (readonly string[])[], materials: readonly string[]): Promise<void> {
  const edition = libraryEdition.peek()
  const key = JSON.stringify([edition, routes, materials])
  if (key === bringing) return
  bringing = key
  factsAsked.value = { answer: null, waiting: true, problems: [] }
  try {
    const slice = await server.slice(routes, materials, carried.peek())
    // Of a library that is another by now.
    if (edition !== libraryEdition.peek()) return
    batch(() => {
      facts.value = grown(facts.value, slice)
      noteBrought(slice)
      lacking.value = new Map([...lacking.peek(), ...(slice.problems ?? []).map(one => [one.where[1] ?? '', one] as const)])
    })
    factsAsked.value = { answer: true, waiting: false, problems: [] }
  } catch (fault) {
    factsAsked.value = { answer: null, waiting: false, problems: problemsOf(fault) }
  } finally {
    if (bringing === key) bringing = null
  }
}

export const askFactsAgain = (): void => {
  void bringTables()
  lacking.value = new Map()
  fetchFacts()
}

async function bringTables(): Promise<void> {
  if (tables.value !== null) return
  try {
    tables.value = await server.tables()
    warmUp(tables.value)
  } catch (fault) {
    factsAsked.value = { answer: null, waiting: false, problems: problemsOf(fault) }
  }
}

/** Does a goal's route take this compound? One that does not could never make it, and would be refused every route. */
function concerns(target: string, compound: string): boolean {
  const { library } = facts.value
  const steps = plan.value.goals.find(goal => goal.target === target)?.route.steps ?? []
  return steps.some(step => library.transformations.get(step.transformation)?.reactants.some(one => one.compound === compound))
}

/** What is looked for with the options that hold now. */
function queryTo(target: string) {
  const { maxSteps, unbeaten: _, ...options } = choosing.value
  const query = {
    from: startCompound.value,
    to: target,
    ...options,
    make: options.make.filter(compound => compound === 'all' || concerns(target, compound)),
    ...(maxSteps === null ? {} : { maxSteps }),
    count: countFor(target),
    settings: plan.value.settings,
    packs: plan.value.packs,
  }
  const { value: carried } = carriedInSearch
  // What the bench owns decides which routes there are only where it was asked to.
  const { hood, inertGas, vessels, heatSources, region, buyer, hand, yields } = plan.value.settings
  const owned = choosing.value.ownedOnly ? { hood, inertGas, vessels, heatSources } : null
  const keyFor = (axes: readonly Axis[]): string =>
    JSON.stringify({
      ...query,
      packs: axes.includes('cost') ? plan.value.packs : null,
      settings: { owned, region, buyer, hand, yields },
      axes,
      carried: carriedKey.value,
    })
  return { query: carried === null ? query : { ...query, carried }, keyFor }
}

/** Asks for the routes to a compound with the options that hold now. */
export function askRoutes(target: string): void {
  const { query, keyFor } = queryTo(target)
  listOf(target).routes.ask(keyFor([query.by]), onTold => findRoutes(query, onTold))
}

/** Asks which routes to a goal are unbeaten on several axes at once, where so many were named. */
function askUnbeaten(target: string): void {
  const asking = listOf(target).unbeaten
  const { unbeaten } = choosing.value
  if (unbeaten.length < 2) {
    asking.clear()
    return
  }
  const { waiting, answer } = routesTo(target)
  if (waiting || answer === null) return
  const { query, keyFor } = queryTo(target)
  const whole = { ...query, apart: 1, prove: false, count: routesMost, unbeaten }
  asking.ask(keyFor(unbeaten), onTold => findRoutes(whole, onTold))
}

/** Sets the questions going; called once. */
export function watchQuestions(): void {
  void bringTables()
  startSearcher(forgetLibrary)
  effect(() => {
    if (!hasStart(sheet.value)) {
      reachAsking.clear()
      return
    }
    if (awaitsRecords.value) return
    const steps = choosing.value.maxSteps ?? usualReach
    const from = startCompound.value
    libraryEdition.value
    const { value: records } = carriedInSearch
    reachAsking.ask(`${from} ${steps} ${carriedKey.value}`, onTold => findReach(from, steps, records, onTold), false)
  })
  effect(() => {
    libraryEdition.value
    if (awaitsRecords.value) return
    for (const goal of plan.value.goals) askRoutes(goal.target)
  })
  effect(() => {
    libraryEdition.value
    for (const goal of plan.value.goals) askUnbeaten(goal.target)
  })
  effect(() => {
    // Another library, or other records of the plan: what was not known may be.
    carried.value
    libraryEdition.value
    lacking.value = new Map()
  })
  effect(() => {
    libraryEdition.value
    forgetBrought()
  })
  effect(() => fetchFacts())
  effect(() => {
    if (plan.value.goals.length === 0) forget()
    else if (canReckon.value) reckon(facts.value, tables.value, plan.value, others.value)
  })
}
