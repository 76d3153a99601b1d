import { type Checked } from '../../core/problem/problem.ts'
import { type Plan } from '../../core/plan/plan.ts'
import type { Facts } from './facts.ts'

export const fileOfPlan = (plan: Plan, _facts: Facts): unknown => ({ format: 'waybench-plan', version: 1, ...plan })
export const planOfFile = (file: unknown): Checked<Plan> => {
  const { format: _, version: __, ...plan } = file as { format: string; version: number } & Plan
  return { ok: true, value: plan as Plan, warnings: [] }
}
