import { type OpenedPlan, planFileOf, planFromFile } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Checked } from '../../core/problem/problem.ts'
import type { Facts } from './facts.ts'

/** The plan as it is saved: with the slice of the library that it uses, so that it can be reckoned anywhere. */
export const fileOfPlan = (plan: Plan, facts: Facts): unknown => planFileOf(facts.library, plan)

/** A saved plan, checked; every problem names its field. */
export const planOfFile = (file: unknown): Checked<OpenedPlan> => planFromFile('saved plan', file)
