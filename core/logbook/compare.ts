import type { Library } from '../library/library.ts'
import { isolatedOf, runYield, standing } from '../plan/logged.ts'
import type { LogEntry, Plan } from '../plan/plan.ts'
import { reckoned } from '../plan/reckoned.ts'
import { flowOf } from '../route/flow.ts'
import type { YieldRange } from '../yields/belief.ts'

/** One logged run beside plan and theory. */
export interface ComparedRun {
  readonly entry: LogEntry
  /** A later entry corrects it. */
  readonly replaced: boolean
  /** Limiting compound: as logged, else as planned for a batch; null where neither is known. */
  readonly chargedG: number | null
  /** Dry and pure. */
  readonly isolatedG: number
  /** Null for an isolation. */
  readonly theoryG: number | null
  /** At planning yields, before this run was known; null where the plan does not have the step. */
  readonly plannedG: number | null
  /** Fraction of theory; for an isolation grams per gram of feedstock; null where nothing is known to have been charged. */
  readonly yieldFraction: number | null
  readonly plannedYield: number | null
  /**
   * `above-theory`: wet, impure or mis-weighed; teaches nothing. `below`, `above`: outside P10 to P90 of one run. `not-in-plan`: a step that the
   * plan does not have, or no longer: the run stays in the log and counts for nothing in the plan.
   */
  readonly verdict: 'failed' | 'above-theory' | 'below' | 'as-planned' | 'above' | 'not-in-plan'
}

/** Every run of the log, in its order, compared with the plan as it was before anything was logged. */
export function comparedRuns(library: Library, plan: Plan): readonly ComparedRun[] {
  if (plan.log.length === 0) return []
  const stands = new Set(standing(plan.log))
  const { topUps: _topUps, repeats: _repeats, ...bare } = plan
  const before = reckoned(library, { ...bare, log: [] })
  return plan.log.map(entry => {
    const step = before.steps.find(s => s.transformation === entry.step)
    const flow = library.transformations.has(entry.step) ? flowOf(library, entry.step) : null
    const chargedG = entry.chargedG ?? (step === undefined ? null : step.limiting.massG / Math.max(1, step.batches))
    const isolatedG = isolatedOf(entry)
    const yieldFraction = flow === null || chargedG === null ? null : chargedG > 0 ? runYield(library, entry.step, isolatedG, chargedG) : 0
    return {
      entry,
      replaced: !stands.has(entry),
      chargedG,
      isolatedG,
      theoryG: flow === null || flow.isolation || chargedG === null ? null : chargedG * flow.theoryPerG,
      plannedG:
        flow === null || chargedG === null || step === undefined
          ? null
          : Math.max(0, chargedG * flow.theoryPerG * step.yieldFraction.typical - flow.lossG),
      yieldFraction,
      plannedYield: step?.yieldFraction.typical ?? null,
      verdict: step === undefined || yieldFraction === null ? 'not-in-plan' : verdictOf(entry, yieldFraction, step.yieldFraction),
    }
  })
}

function verdictOf(entry: LogEntry, yieldFraction: number, { low, high }: YieldRange): ComparedRun['verdict'] {
  if (entry.failed) return 'failed'
  if (yieldFraction > 1 + 1e-6) return 'above-theory'
  return yieldFraction < low ? 'below' : yieldFraction > high ? 'above' : 'as-planned'
}
