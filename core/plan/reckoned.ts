import { type Library, transformationOf } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import { minorDigitsOf } from '../quantity/money.ts'
import { massText } from '../quantity/print.ts'
import { mostBatches } from '../route/batches.ts'
import type { ChargedStep } from '../route/charged.ts'
import { type EcoPrices, ecoScale } from '../route/eco-scale.ts'
import { routeMetrics, stepMetrics } from '../route/metrics.ts'
import { longestLinearYield, overallYieldOnStart } from '../route/overall-yield.ts'
import { spreadOf } from '../route/spread.ts'
import { linePrices } from '../shopping/unit-price.ts'
import { predicted } from '../yields/belief.ts'
import { chanceOf } from '../yields/percentiles.ts'
import type { Amounts } from './amounts.ts'
import { beliefsAbout } from './beliefs.ts'
import { chargedSteps } from './charged-steps.ts'
import { type Confident, confidentAmounts } from './confidence.ts'
import { drawnOf, goalsAt } from './drawn.ts'
import type { Evaluation, GoalResult } from './evaluation.ts'
import { checkedPlan, PlanRefused } from './goals.ts'
import { runYield } from './logged.ts'
import { amountNotes } from './notes.ts'
import type { Plan } from './plan.ts'
import { partOf, stairsOf } from './stairs.ts'
import { startNeeded, usualConfidence } from './start-needed.ts'

/** All of a plan that follows from amounts alone: before anything is bought, feared or put on the calendar. */
export interface Reckoned {
  readonly amounts: Amounts
  /** What planned charges of mass goals were multiplied by for the confidence. */
  readonly factor: number
  readonly overallYieldOnStart: number
  readonly longestLinearYield: number
  readonly steps: readonly ChargedStep[]
  /** Those that still have something to run. */
  readonly toRun: readonly ChargedStep[]
  readonly goals: readonly GoalResult[]
  readonly chanceAll: number | null
  readonly start: Evaluation['start']
  readonly startNeeded: Evaluation['startNeeded']
  readonly coProducts: Evaluation['coProducts']
  readonly metrics: Evaluation['metrics']
  readonly notes: readonly Problem[]
}

/**
 * Amounts of a whole plan: division, charges, batches, spread, chances, mass metrics.
 *
 * @throws PlanRefused for a plan that cannot be reckoned, which `checkedPlan` tells beforehand, and for one with more batches than anybody runs
 */
export function reckoned(library: Library, plan: Plan): Reckoned {
  const checked = checkedPlan(library, plan)
  if (!checked.ok) throw new PlanRefused(checked.problems)
  const input = { library, plan, merged: checked.value, settings: plan.settings }
  const confident = confidentAmounts(input, plan.settings.confidence)
  const { amounts, drawn } = confident
  const tooMany = batchProblems(library, amounts)
  if (tooMany.length > 0) throw new PlanRefused(tooMany)
  const steps = chargedSteps(library, amounts, drawn)
  const goals = goalResults(library, plan, confident, steps)
  // Mass metrics are those of the plan as a whole, also when part of it has been done.
  const whole = amounts.planned ? chargedSteps(library, amounts.planned, drawnOf(amounts.planned, plan.seed)) : steps
  const wholeGoals = (amounts.planned ?? amounts).division.goals
  const wants = new Map(plan.goals.map((goal, i) => [goal.target, wholeGoals[i]!.massG]))
  const running = steps.filter(s => s.charges.length > 0)
  const prices = ecoPrices(library, plan)
  return {
    amounts,
    factor: confident.factor,
    overallYieldOnStart: goals[0]!.overallYieldOnStart,
    longestLinearYield: goals[0]!.longestLinearYield,
    steps,
    toRun: running,
    goals,
    chanceAll: confident.chanceAll,
    start: startOf(library, plan, amounts),
    startNeeded: startNeeded(library, plan, plan.settings.confidence ?? usualConfidence),
    coProducts: steps.flatMap(s => s.coProducts.map(c => ({ compound: c.compound, step: s.number, expectedG: c.expectedG }))),
    metrics: {
      route: routeMetrics(library, whole, wants),
      steps: whole.map(s => ({ step: s.number, metrics: stepMetrics(library, s), ecoScale: ecoScale(library, s, prices) })),
    },
    notes: [...checked.warnings, ...amountNotes(library, plan, confident)],
  }
}

function batchProblems(library: Library, amounts: Amounts): readonly Problem[] {
  return amounts.steps
    .filter(step => step.batches > mostBatches)
    .map(({ transformation, batches, limitingG }) => ({
      code: 'batches-too-many',
      where: ['steps', transformation],
      what: `${transformationOf(library, transformation).name}: ${massText(limitingG)} of the limiting reactant take ${batches < 1e9 ? batches : 'more than a billion'} batches in the vessels stated.`,
      why: `Nobody runs a step more than ${mostBatches} times for one plan.`,
      cure: 'Check the amounts, state larger vessels in the settings, or ask for fewer batches.',
    }))
}

function goalResults(library: Library, plan: Plan, confident: Confident, steps: readonly ChargedStep[]): readonly GoalResult[] {
  const { amounts, drawn } = confident
  const { merged } = amounts
  const hand = plan.settings.hand === 'practised' ? 'first-time' : 'practised'
  const runs = new Map(amounts.steps.flatMap(s => (s.logged ? [[s.transformation, s.logged.yields] as const] : [])))
  const others = beliefsAbout(library, merged.steps, { ...plan.settings, hand }, runs)
  const otherHand = goalsAt(amounts, new Map([...others].map(([id, belief]) => [id, predicted(belief).typical])))
  const real = realYields(library, amounts)
  return plan.goals.map((goal, index) => {
    const part = amounts.division.goals[index]!
    const route = partOf(library, merged.start, goal.target, merged.steps)
    const draws = drawn.goalG[index]!
    const spread = spreadOf(draws, part.massG)
    return {
      target: goal.target,
      amount: goal.amount,
      overallYieldOnStart: overallYieldOnStart(library, route, real),
      longestLinearYield: longestLinearYield(library, route, real),
      startG: (amounts.planned ?? amounts).division.goals[index]!.startG,
      chance: part.wantedG === null ? null : chanceOf(draws, part.wantedG),
      steps: (merged.stepsOfGoal[index] ?? []).map(id => merged.numbers.get(id) ?? ''),
      stairs: stairsOf(library, amounts, steps, index, real),
      otherHandG: otherHand[index] ?? 0,
      ...spread,
      ...(goal.groups ? { groups: { ...goal.groups, eachG: spread.medianG / goal.groups.count } } : {}),
    }
  })
}

/** Planning yields; where runs are logged, what they gave and the rest is to give, of what theory allows from all that was and will be charged. */
function realYields(library: Library, amounts: Amounts): ReadonlyMap<string, number> {
  const yields = new Map(amounts.yields)
  for (const { transformation, logged, limitingG, expectedG } of amounts.steps) {
    if (!logged || logged.yields.length === 0) continue
    yields.set(transformation, Math.min(1, runYield(library, transformation, expectedG, logged.chargedG + limitingG)))
  }
  return yields
}

function startOf(library: Library, plan: Plan, amounts: Amounts): Evaluation['start'] {
  const { merged, division, haveG, startTakenG } = amounts
  const massG = division.startG + startTakenG
  const keptBackG = plan.settings.keptBack.reduce((sum, k) => (k.compound === merged.start ? sum + k.massG : sum), 0)
  const isolation = merged.steps.find(s => {
    const t = transformationOf(library, s.transformation)
    return t.kind === 'isolation' && t.limiting === merged.start
  })
  const recovery = isolation === undefined ? undefined : amounts.yields.get(isolation.transformation)
  return {
    compound: merged.start,
    material: plan.start.material,
    massG,
    haveG,
    keptBackG,
    leftG: haveG === null ? 0 : leftOver(haveG - keptBackG - massG, haveG),
    recoveryPercent: recovery === undefined ? null : recovery * 100,
  }
}

/** Prices at the cheapest pack of the plan's suppliers; null without any. */
function ecoPrices(library: Library, { packs }: Plan): EcoPrices | null {
  if (packs === null) return null
  return { priceOf: linePrices(library, packs), minorPerUnit: 10 ** minorDigitsOf(packs.currency), currency: packs.currency }
}

/** What is left, a hair of rounding apart. */
const leftOver = (leftG: number, haveG: number): number => (leftG < haveG * 1e-9 ? 0 : leftG)
