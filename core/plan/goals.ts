import type { Library } from '../library/library.ts'
import { compoundIn } from '../library/reference-charge.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { isRoute } from '../route/is-route.ts'
import { type MergedSteps, mergedSteps } from './merged-steps.ts'
import type { Plan } from './plan.ts'
import { unusedParts } from './unused.ts'

/** A plan that cannot be reckoned; the doors ask {@link checkedPlan} first and show its problems. */
export class PlanRefused extends Error {
  readonly problems: readonly Problem[]
  constructor(problems: readonly Problem[]) {
    super(problems.map(p => `${p.what} ${p.cure}`).join(' '))
    this.name = 'PlanRefused'
    this.problems = problems
  }
}

/**
 * Whether a plan can be reckoned against a library, and its merged steps.
 *
 * @returns every problem at once: unknown ids, a start that no goal starts from, shares above the whole, more than one `rest`, shares or rest
 * without an amount in hand, and what {@link mergedSteps} finds. Warnings: something kept back that the plan never holds, reactants that
 * are neither made nor to be bought.
 */
export function checkedPlan(library: Library, plan: Plan): Checked<MergedSteps> {
  const problems: Problem[] = []
  const merged = mergedSteps(library, plan.goals)
  if (!merged.ok) problems.push(...merged.problems)
  problems.push(...startProblems(library, plan), ...amountProblems(plan))
  for (const item of plan.shelf) {
    if (library.materials.has(item.material)) continue
    problems.push({
      code: 'shelf-unknown',
      where: ['shelf', item.material],
      what: `The library knows no material ${item.material}.`,
      why: 'Only what the library knows can be netted off the shopping list.',
      cure: 'Add the material to a library file, or take it off the shelf.',
    })
  }
  if (!merged.ok || problems.length > 0) return bad(problems)
  return good(merged.value, warningsOf(library, plan, merged.value))
}

function startProblems(library: Library, plan: Plan): Problem[] {
  const material = library.materials.get(plan.start.material)
  if (!material) {
    return [
      {
        code: 'start-unknown',
        where: ['start', plan.start.material],
        what: `The library knows no material ${plan.start.material}.`,
        why: 'Amounts are reckoned from it.',
        cure: 'Name one of the library, or add it.',
      },
    ]
  }
  const start = plan.goals[0]?.route.start
  if (start === undefined || compoundIn(material) === start || material.id === start) return []
  return [
    {
      code: 'start-differs',
      where: ['start', material.id],
      what: `${material.id} is not ${start}, from which the routes start, and contains none of it.`,
      why: 'The amount in hand is turned into the compound that the routes start from.',
      cure: `Give the amount of ${start} in hand, or choose routes from ${compoundIn(material) ?? material.id}.`,
    },
  ]
}

/** From what a balance may still show to what no workshop holds; beyond either end the digits or the unit are wrong. */
const bench = { leastG: 1e-6, mostG: 1e9 } as const
const benchWords = 'a mass from a microgram to a thousand tonnes'
/** A smaller part of anything on a bench cannot be weighed off. */
const leastShare = 1e-6
const isOnABench = (massG: number): boolean => massG >= bench.leastG && massG <= bench.mostG

function amountProblems(plan: Plan): Problem[] {
  const problems: Problem[] = []
  const fault = (code: string, target: string, what: string, why: string, cure: string): void => {
    problems.push({ code, where: ['goals', target], what, why, cure })
  }
  const { massG } = plan.start
  if (massG !== null && !isOnABench(massG)) {
    fault('start-amount', plan.start.material, `${massG} g is no amount in hand.`, 'The plan divides it.', `Give ${benchWords}.`)
  }
  for (const { compound, massG: keptG } of plan.settings.keptBack) {
    if (keptG === 0 || isOnABench(keptG)) continue
    fault(
      'kept-back-amount',
      compound,
      `${keptG} g cannot be kept back.`,
      'It is taken off before the rest is divided.',
      `Give ${benchWords}.`,
    )
  }
  let shares = 0
  let rests = 0
  let masses = 0
  for (const { target, amount } of plan.goals) {
    if (amount.kind === 'mass') {
      masses++
      if (!isOnABench(amount.massG)) {
        fault('goal-amount', target, `${amount.massG} g cannot be made.`, 'A goal is something to weigh in the end.', `Give ${benchWords}.`)
      }
    } else if (amount.kind === 'share') {
      shares += amount.fraction
      if (!(amount.fraction >= leastShare && amount.fraction <= 1)) {
        fault(
          'goal-amount',
          target,
          `A share of ${amount.fraction * 100} % cannot be given.`,
          'Shares are parts of the start.',
          'Give from 0.0001 to 100 %.',
        )
      }
    } else {
      rests++
      if (massG === null) {
        fault(
          'rest-of-nothing',
          target,
          'It takes the rest, but no amount is in hand.',
          'The rest is what the others leave of it.',
          'Give the amount in hand, or a mass for this goal.',
        )
      }
    }
  }
  // 100 % in thirds is 100 %.
  if (shares > 1 + 1e-9)
    fault(
      'shares-above-whole',
      'shares',
      `The shares add up to ${Number((shares * 100).toPrecision(4))} %.`,
      'No more than the start can be divided.',
      'Lower one of them, or make it the rest.',
    )
  if (rests > 1)
    fault(
      'rest-twice',
      'rest',
      `${rests} goals take the rest.`,
      'Only one can have what the others leave.',
      'Give all but one of them a mass or a share.',
    )
  if (massG === null && shares > 0 && (masses === 0 || shares >= 1)) {
    fault(
      'share-of-nothing',
      'shares',
      'Shares are asked of a start whose amount follows from nothing.',
      'A share is a part of an amount in hand.',
      'Give the amount in hand, or a mass for one goal.',
    )
  }
  return problems
}

function warningsOf(library: Library, plan: Plan, merged: MergedSteps): Problem[] {
  const warnings: Problem[] = []
  const held = new Set([merged.start, ...merged.steps.map(s => s.makes)])
  for (const { compound, massG } of plan.settings.keptBack) {
    if (massG === 0 || held.has(compound)) continue
    warnings.push({
      code: 'kept-back-absent',
      where: ['settings', 'keptBack', compound],
      what: `${massG} g of ${compound} is to be kept back, but the plan never holds any.`,
      why: 'Only the start or an intermediate can be kept back.',
      cure: 'Take it out, or name one of the compounds of the plan.',
    })
  }
  const made = new Set(merged.steps.map(s => s.makes))
  for (const goal of plan.goals) {
    for (const fault of isRoute(library, goal.route)) {
      if ([...made].some(compound => fault.startsWith(`${compound} `))) continue
      warnings.push({
        code: 'not-to-be-bought',
        where: ['goals', goal.target],
        what: fault,
        why: 'The step cannot be charged without it.',
        cure: 'Choose the route that makes it, or put it on the shelf.',
      })
    }
  }
  return [...warnings, ...unusedParts(library, plan, merged)]
}
