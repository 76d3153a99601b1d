import { routeChoice } from '../../core/choose/choice.ts'
import type { RouteRows } from '../../core/choose/route-list.ts'
import { routeList } from '../../core/choose/route-list.ts'
import type { Choosing } from '../../core/plan/choosing.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { RouteChoice } from '../../core/plan/route-choice.ts'
import { choiceText } from '../../core/report/choice-text.ts'
import type { Workshop } from '../library/workshop.ts'
import { routesInput } from './request.ts'
import { searched } from './searching.ts'

/** Ways listed to tell the place of the chosen one. */
const waysListed = 100
/** A look round beside a plan that is already made: it ends, with what it has, once it was asked so many times whether to go on. */
const looksAtMost = 500

/**
 * How the way to each goal of a plan stands among those that were looked for; a goal to which the options leave no way is left out.
 *
 * @param choosing how they were looked for
 */
export async function choicesOf(workshop: Workshop, plan: Plan, choosing: Choosing): Promise<readonly RouteChoice[]> {
  const choices: RouteChoice[] = []
  const { maxSteps, unbeaten, ...options } = choosing
  for (const { target, route } of plan.goals) {
    const steps = route.steps.map(step => step.transformation)
    const query = { ...options, from: plan.start.material, to: target, count: waysListed, ...(maxSteps === null ? {} : { maxSteps }) }
    const choiceAmong = async (make: readonly string[]): Promise<RouteChoice | null> => {
      const list = await rowsOf(workshop, plan, { ...query, make })
      if (list === null) return null
      const several = unbeaten.length < 2 ? null : await rowsOf(workshop, plan, { ...query, make, apart: 1, prove: false, unbeaten })
      return routeChoice(target, steps, options.by, list, several)
    }
    const choice = await choiceAmong(options.make)
    // A way that makes what could be bought is found where every make-or-buy is open.
    const wider = choice !== null && choice.place === null && options.make.length === 0 ? await choiceAmong(['all']) : null
    const told = wider !== null && wider.place !== null ? wider : choice
    if (told !== null) choices.push(told)
  }
  return choices
}

type Query = Parameters<typeof routesInput>[1]

async function rowsOf(workshop: Workshop, { packs, settings }: Plan, query: Query): Promise<RouteRows | null> {
  let looks = 0
  const answer = await searched(
    routeList({ ...routesInput(workshop, query, { packs, settings }), shouldStop: () => ++looks > looksAtMost }),
  )
  return answer.ok && answer.value.kind === 'routes' ? answer.value : null
}

/** The same in sentences, one a goal. */
export const choiceTexts = (workshop: Workshop, plan: Plan, choices: readonly RouteChoice[]): readonly string[] =>
  choices.map(choice => {
    const goal = plan.goals.find(one => one.target === choice.target)
    return choiceText(workshop.library, choice, goal?.route.steps.map(step => step.transformation) ?? [])
  })
