import { firstChoosing } from '../../core/plan/choosing.ts'
import { type OpenedPlan, planFileOf, planFromFile } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Checked } from '../../core/problem/problem.ts'
import type { Facts } from './facts.ts'
import type { SheetState } from './sheet-state.ts'

/** The plan as it is saved: with how its routes were looked for, and the slice of the library that it uses, so that it can be reckoned anywhere. */
export const fileOfPlan = ({ plan, choosing }: SheetState, facts: Facts, compared: readonly string[] = []): unknown =>
  planFileOf(facts.library, { ...plan, choosing }, compared)

/** What stands on the sheet of a plan that came out of a file. */
export function stateOfPlan({ choosing, ...plan }: Plan): SheetState {
  return { plan, choosing: choosing ?? firstChoosing }
}

/** A saved plan, checked; every problem names its field. */
export const planOfFile = (file: unknown): Checked<OpenedPlan> => planFromFile('saved plan', file)
