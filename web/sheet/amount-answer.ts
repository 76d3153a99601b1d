import type { Evaluation } from '../../core/plan/evaluation.ts'
import { noBreakSpace } from '../../core/quantity/print.ts'
import { spreadText } from '../../core/report/answers.ts'
import { goalAmountText, madeGoals } from '../../core/report/short-start.ts'

/** One goal of the heading: "5.0 g lophine" and its spread in soft. */
export interface GoalClause {
  readonly amount: string
  readonly target: string
  readonly spread: string
}

/** Largest first, as a heading tells it; medians with P10 and P90. Goals that get nothing are left out. */
export function amountAnswer(evaluation: Evaluation): readonly GoalClause[] {
  return [...madeGoals(evaluation)]
    .sort((a, b) => b.medianG - a.medianG)
    .map(goal => ({ amount: goalAmountText(evaluation, goal), target: goal.target, spread: spreadText(goal.p10G, goal.p90G) }))
}

/** "99 %": a chance, never rounded up to certainty. */
export function chanceText(chance: number): string {
  if (chance > 0.995 && chance < 1) return `over 99${noBreakSpace}%`
  if (chance > 0 && chance < 0.005) return `under 1${noBreakSpace}%`
  return `${Math.round(chance * 100)}${noBreakSpace}%`
}
