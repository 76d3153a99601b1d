import { batch, effect } from '@preact/signals'
import type { Axis } from '../../core/plan/choosing.ts'
import type { ReachReply } from '../api/replies.ts'
import { Asking } from './asked.ts'
import { carried, carriedInSearch, carriedKey, forgetBrought } from './brought.ts'
import { awaitsRecords, bringTables, canReckon, carryPlan, fetchFacts, forgetLacking } from './facts-asked.ts'
import { facts, libraryEdition, startCompound, tables } from './facts-here.ts'
import { forget, reckon } from './reckoner.ts'
import { countFor, forgetLists, listOf, routesMost, routesTo } from './route-lists.ts'
import { expectChange, findReach, findRoutes, startSearcher } from './searcher.ts'
import { hasStart } from './sheet-state.ts'
import { choosing, plan, sheet } from './store.ts'
import { others } from './ways.ts'

/**
 * What the page asks the server and the worker, derived from what the person has said: each question is asked again when, and only when,
 * something it depends on has changed.
 */

/** So far the network downstream is shown unless the person says otherwise. */
const usualReach = 3

const reachAsking = new Asking<ReachReply>()
export const reach = reachAsking.state
export const askReachAgain = (): void => reachAsking.again()
export const stopReach = (): void => reachAsking.stop()

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
    forgetLacking()
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
