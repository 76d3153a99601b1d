import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { isBuyable } from '../library/material.ts'
import { type EvaluateInput, evaluate } from '../plan/evaluate.ts'
import type { Evaluation, Stopped } from '../plan/evaluation.ts'
import { PlanRefused } from '../plan/goals.ts'
import { toppedUp } from '../plan/in-hand.ts'
import { standing } from '../plan/logged.ts'
import type { Goal, Plan } from '../plan/plan.ts'
import { reckoned } from '../plan/reckoned.ts'
import { demandOf } from '../route/demand.ts'
import type { Route } from '../route/route.ts'
import { predicted } from '../yields/belief.ts'
import { comparedRuns } from './compare.ts'

/** The four ways on from an outcome. */
export type WayOn = 'scale-down' | 'top-up' | 'repeat' | 'another-route'

/** One way on: a plan and what it gives, or none with the reason. */
export interface Way {
  readonly way: WayOn
  readonly plan: Plan | null
  readonly evaluation: Evaluation | null
  readonly stopped: Stopped | null
  /** Why there is none; null where there is. */
  readonly reason: string | null
  /** What has to be added: bought intermediate, or more start; g. P10 = enough nine times in ten of the step alone. */
  readonly added: { readonly compound: string; readonly medianG: number; readonly p10G: number } | null
}

export interface ReplanInput extends Omit<EvaluateInput, 'plan'> {
  readonly plan: Plan
  /** The step whose outcome is in question; default the last one logged. */
  readonly step?: string
  /** Routes from what is in hand to a target, best first: the search, handed in. */
  readonly routes: (start: string, target: string) => readonly Route[]
}

/**
 * Four ways on from what was logged, side by side: the real figure in place of the estimate throughout.
 *
 * @returns scale down, top up, repeat, another route, in this order; each a whole plan with goals, cost and dates, or the reason why not
 */
export function waysOn(input: ReplanInput): readonly Way[] {
  const own = new Set(input.plan.goals.flatMap(g => g.route.steps.map(s => s.transformation)))
  const step = input.step ?? standing(input.plan.log).findLast(entry => own.has(entry.step))?.step
  const none = (way: WayOn, reason: string): Way => ({ way, plan: null, evaluation: null, stopped: null, reason, added: null })
  if (step === undefined) {
    const reason = input.plan.log.length === 0 ? 'Nothing has been logged yet.' : 'No step of this plan has been logged yet.'
    return [none('scale-down', reason), none('top-up', reason), none('repeat', reason), none('another-route', reason)]
  }
  // Whoever names a step asks about it whatever was taken.
  const before = input.step === undefined ? takenAfterLast(input.plan) : null
  if (before !== null) {
    const reason = takenReason(before)
    return [evaluated(input, 'scale-down', input.plan, null), none('top-up', reason), none('repeat', reason), none('another-route', reason)]
  }
  const shortfall = shortfallOf(input.library, input.plan, step)
  return [
    evaluated(input, 'scale-down', input.plan, null),
    shortfall === null ? none('top-up', noShortfall) : toppedUpBy(input, shortfall, none),
    shortfall === null ? none('repeat', noShortfall) : repeated(input, step, shortfall),
    anotherRoute(input, step, none),
  ]
}

const wayWords: Readonly<Record<Exclude<WayOn, 'scale-down'>, string>> = {
  'top-up': 'top up',
  repeat: 'repeat the step',
  'another-route': 'change route',
}

/** The way on that was taken since the last run was logged; null where none was. */
export function takenAfterLast({ log, taken = [] }: Plan): Exclude<WayOn, 'scale-down'> | null {
  const last = taken.at(-1)
  return last !== undefined && last.after === log.at(-1)?.id ? last.way : null
}

/** Why nothing is offered once a way on was taken. */
export const takenReason = (way: Exclude<WayOn, 'scale-down'>): string =>
  `Taken: ${wayWords[way]}. Ways on are offered again when the next run is logged.`

/** The plan with a way on noted as taken after its last entry. */
const noted = (plan: Plan, way: Exclude<WayOn, 'scale-down'>, addedG: number): Plan => ({
  ...plan,
  taken: [...(plan.taken ?? []), { way, after: plan.log.at(-1)?.id ?? '', addedG }],
})

/** The plan as it was first meant: nothing logged, nothing topped up or repeated, and the start without what was added for that. */
function firstMeant(plan: Plan): Plan {
  const { topUps: _topUps, repeats: _repeats, taken = [], ...bare } = plan
  const addedG = taken.reduce((sum, one) => sum + one.addedG, 0)
  const { massG } = plan.start
  // A start that was since set to less was meant anew.
  return { ...bare, log: [], start: { ...plan.start, massG: massG !== null && massG > addedG ? massG - addedG : massG } }
}

const noShortfall = 'What was isolated is as much as the plan had reckoned with.'

interface Shortfall {
  readonly compound: string
  readonly massG: number
}

/** What the step gave less than first meant, with what its remaining batches and top-ups should give; null where nothing is short. */
function shortfallOf(library: Library, plan: Plan, step: string): Shortfall | null {
  const now = reckoned(library, plan).steps.find(s => s.transformation === step)
  const before = reckoned(library, firstMeant(plan)).steps.find(s => s.transformation === step)
  if (!now || !before) return null
  const massG = before.expectedG - now.expectedG - (toppedUp(plan).get(before.makes) ?? 0)
  return massG > 1e-6 * before.expectedG ? { compound: before.makes, massG } : null
}

function evaluated(input: ReplanInput, way: WayOn, plan: Plan, added: Way['added']): Way {
  try {
    const result = evaluate({ ...input, plan })
    if ('stopped' in result) {
      return {
        way,
        plan: null,
        evaluation: null,
        stopped: result,
        reason: 'A substance of this way is on a list that ends planning.',
        added,
      }
    }
    return { way, plan, evaluation: result, stopped: null, reason: null, added }
  } catch (refused) {
    if (!(refused instanceof PlanRefused)) throw refused
    return { way, plan: null, evaluation: null, stopped: null, reason: refused.message, added }
  }
}

/** The intermediate itself, from shelf or shop. */
function toppedUpBy(input: ReplanInput, { compound, massG }: Shortfall, none: (way: WayOn, reason: string) => Way): Way {
  const { library, plan } = input
  const material = materialOf(library, compound)
  const onShelf = plan.shelf.some(i => i.material === compound && i.amount > 0)
  if (!isBuyable(material) && !onShelf) return none('top-up', `${material.name} cannot be bought, and none is on the shelf.`)
  const topUps = [...(plan.topUps ?? []), { compound, massG }]
  return evaluated(input, 'top-up', noted({ ...plan, topUps }, 'top-up', 0), { compound, medianG: massG, p10G: massG })
}

/** The step once more for what is missing, and with it the steps before. */
function repeated(input: ReplanInput, step: string, shortfall: Shortfall): Way {
  const { library, plan } = input
  const now = reckoned(library, plan)
  const { merged } = now.amounts
  const at = (which: 'typical' | 'low'): ReadonlyMap<string, number> =>
    new Map([...now.amounts.beliefs].map(([id, belief]) => [id, predicted(belief)[which]]))
  const wants = new Map([[shortfall.compound, shortfall.massG]])
  const median = demandOf(library, merged.steps, wants, { yields: at('typical') })
  // Only the repeated step's own bad luck: that of the steps before shows when they have been run.
  const unlucky = demandOf(library, merged.steps, wants, { yields: new Map([...at('typical'), [step, at('low').get(step)!]]) })
  const logged = new Set(standing(plan.log).map(e => e.step))
  const repeats = merged.steps.flatMap(s => {
    const limitingG = median.limitingG.get(s.transformation) ?? 0
    return limitingG > 0 && logged.has(s.transformation) ? [{ step: s.transformation, limitingG }] : []
  })
  const startG = median.compoundG.get(merged.start) ?? 0
  const added = { compound: merged.start, medianG: startG, p10G: unlucky.compoundG.get(merged.start) ?? 0 }
  // The start that is left comes first; what it lacks has to be found.
  const { haveG, leftG } = now.start
  const lackG = haveG === null ? 0 : Math.max(0, startG - leftG)
  const massG = plan.start.massG === null || haveG === null ? plan.start.massG : plan.start.massG * ((haveG + lackG) / haveG)
  // What went into earlier runs is a fact: a larger start changes nothing of it.
  const log = comparedRuns(library, plan).map(({ entry, chargedG }) =>
    entry.chargedG === null && chargedG ? { ...entry, chargedG, chargedAs: 'planned' as const } : entry,
  )
  const again: Plan = { ...plan, start: { ...plan.start, massG }, log, repeats: [...(plan.repeats ?? []), ...repeats] }
  const grownG = massG === null || plan.start.massG === null ? 0 : massG - plan.start.massG
  return evaluated(input, 'repeat', noted(again, 'repeat', grownG), added)
}

/** From the product in hand by steps that the plan does not have. */
function anotherRoute(input: ReplanInput, step: string, none: (way: WayOn, reason: string) => Way): Way {
  const { library, plan } = input
  const compound = transformationOf(library, step).mainProduct
  const name = (id: string): string => library.materials.get(id)?.name ?? id
  const inHandG = reckoned(library, plan).steps.find(s => s.transformation === step)?.done?.isolatedG ?? 0
  const own = new Set(plan.goals.flatMap(g => g.route.steps.map(s => s.transformation)))
  const goals: Goal[] = []
  let changed = false
  for (const goal of plan.goals) {
    if (goal.target === compound) continue
    const routes = input.routes(compound, goal.target)
    const other = routes.find(r => r.steps.some(s => !own.has(s.transformation)))
    const route = other ?? routes[0]
    if (!route) return none('another-route', `No route leads from ${name(compound)} to ${name(goal.target)}.`)
    changed ||= other !== undefined
    goals.push({ ...goal, route })
  }
  if (!changed) return none('another-route', `From ${name(compound)} the library knows no other way.`)
  if (!(inHandG > 0)) return none('another-route', `No ${name(compound)} is in hand.`)
  const { topUps: _topUps, repeats: _repeats, taken: _taken, ...rest } = plan
  const next: Plan = { ...rest, start: { material: compound, massG: inHandG }, goals }
  return evaluated(input, 'another-route', noted(next, 'another-route', 0), null)
}

/** Grams of product a way on makes of each goal, and what it costs and when it is done: the row of the comparison. */
export interface WayRow {
  readonly way: WayOn
  readonly goals: readonly { readonly target: string; readonly expectedG: number; readonly medianG: number; readonly p10G: number }[]
  readonly costMinor: number | null
  readonly complete: boolean
  readonly finishDate: string | null
  readonly reason: string | null
}

/** A way as one row. */
export function wayRow({ way, evaluation, reason }: Way): WayRow {
  const goals = evaluation?.goals.map(({ target, expectedG, medianG, p10G }) => ({ target, expectedG, medianG, p10G })) ?? []
  return {
    way,
    goals,
    costMinor: evaluation?.basket?.totalMinor ?? null,
    complete: evaluation?.basket?.complete ?? false,
    finishDate: evaluation?.days.finishDate ?? null,
    reason,
  }
}
