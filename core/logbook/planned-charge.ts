import type { Library } from '../library/library.ts'
import { confidentAmounts } from '../plan/confidence.ts'
import { checkedPlan } from '../plan/goals.ts'
import type { Plan } from '../plan/plan.ts'

/**
 * Limiting compound that the next run of a step is planned with, g: of the batches left the first, else as the batches before. It is what a run
 * stands in the log with when nobody writes another figure: reckoned once, when it is logged, since a later plan may charge otherwise.
 *
 * @returns null where the plan does not have the step, cannot be reckoned, or charges nothing
 */
export function plannedChargeG(library: Library, plan: Plan, step: string): number | null {
  const checked = checkedPlan(library, plan)
  if (!checked.ok) return null
  const { amounts } = confidentAmounts({ library, plan, merged: checked.value, settings: plan.settings }, plan.settings.confidence)
  const now = amounts.steps.find(s => s.transformation === step)
  const before = (amounts.planned ?? amounts).steps.find(s => s.transformation === step)
  if (now === undefined || before === undefined) return null
  const { logged } = now
  const perBatchG = before.limitingG / Math.max(1, before.batches)
  let massG: number
  if (logged === null) massG = now.limitingG / Math.max(1, now.batches)
  // What is left beyond the planned batches are repeats, each with its own charge: those still to run are the last ones asked for.
  else if (logged.leftToRun > 0 && logged.batchesDone >= before.batches)
    massG = (plan.repeats ?? []).filter(r => r.step === step).at(-logged.leftToRun)?.limitingG ?? perBatchG
  else massG = perBatchG
  // It is written down: without the last bits of a division.
  return massG > 0 ? Number(massG.toPrecision(12)) : null
}
