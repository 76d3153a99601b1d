import { batch, computed, signal } from '@preact/signals'
import { missingSteps } from '../../core/plan/missing-steps.ts'
import { sliceOfPlan } from '../../core/plan/slice.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { server } from '../api/client.ts'
import { type Asked, problemsOf } from './asked.ts'
import { brought, carried, noteBrought } from './brought.ts'
import { certain, grown, withPlanOf } from './facts.ts'
import { facts, libraryEdition, tables } from './facts-here.ts'
import { warmUp } from './reckoner.ts'
import { routesTo } from './route-lists.ts'
import { hasStart } from './sheet-state.ts'
import { plan, sheet } from './store.ts'
import { rowsTo } from './ways.ts'

/** What the server does not know, nor the plan brings along: not asked for again until one of them is another. */
const lacking = signal<ReadonlyMap<string, Problem>>(new Map())
export const factsAsked = signal<Asked<true>>({ answer: null, waiting: false, problems: [] })

/** Why the plan cannot be reckoned with what is here: what the server did not answer, and what of the plan it does not know. */
export const factsTrouble = computed<readonly Problem[]>(() => {
  const named = new Set([...missingSteps(facts.value.library, plan.value), ...materialsNamed.value])
  return [...factsAsked.value.problems, ...[...lacking.value].flatMap(([id, problem]) => (named.has(id) ? [problem] : []))]
})

/**
 * Steps and materials that the plan uses and the library does not hold: it was never told of them, or no longer has them. Nor does it hold
 * them where the plan goes on with the records that it was saved with.
 */
export const ofPlanAlone = computed<{ readonly steps: readonly string[]; readonly materials: readonly string[] }>(() => {
  const { steps, materials } = brought.value
  if (steps.size + materials.size === 0) return { steps: [], materials: [] }
  const used = sliceOfPlan(facts.value.library, plan.value)
  return {
    steps: [...used.transformations.keys()].filter(id => steps.has(id)),
    materials: [...used.materials.keys()].filter(id => materials.has(id)),
  }
})

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
export function fetchFacts(): void {
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

/** What was not known may be. */
export const forgetLacking = (): void => {
  lacking.value = new Map()
}

export const askFactsAgain = (): void => {
  void bringTables()
  forgetLacking()
  fetchFacts()
}

export async function bringTables(): Promise<void> {
  if (tables.value !== null) return
  try {
    tables.value = await server.tables()
    warmUp(tables.value)
  } catch (fault) {
    factsAsked.value = { answer: null, waiting: false, problems: problemsOf(fault) }
  }
}
