import type { Library } from '../library/library.ts'
import { isolatedOf, runYield, standing } from '../plan/logged.ts'
import type { LogEntry, Plan } from '../plan/plan.ts'
import { reckoned } from '../plan/reckoned.ts'
import { flowOf } from '../route/flow.ts'

/** One logged run beside plan and theory. */
export interface ComparedRun {
  readonly entry: LogEntry
  /** A later entry corrects it. */
  readonly replaced: boolean
  /** Limiting compound: as logged, else as planned for a batch. */
  readonly chargedG: number
  /** Dry and pure. */
  readonly isolatedG: number
  /** Null for an isolation. */
  readonly theoryG: number | null
  /** At planning yields, before this run was known. */
  readonly plannedG: number
  /** Fraction of theory; for an isolation grams per gram of feedstock. */
  readonly yieldFraction: number
  readonly plannedYield: number
  /** `above-theory`: wet, impure or mis-weighed; teaches nothing. `below`, `above`: outside P10 to P90 of one run. */
  readonly verdict: 'failed' | 'above-theory' | 'below' | 'as-planned' | 'above'
}

/** Every run of the log, in its order, compared with the plan as it was before anything was logged. */
export function comparedRuns(library: Library, plan: Plan): readonly ComparedRun[] {
  if (plan.log.length === 0) return []
  const stands = new Set(standing(plan.log))
  const { topUps: _topUps, repeats: _repeats, ...bare } = plan
  const before = reckoned(library, { ...bare, log: [] })
  return plan.log.flatMap(entry => {
    const step = before.steps.find(s => s.transformation === entry.step)
    if (!step) return []
    const flow = flowOf(library, entry.step)
    const chargedG = entry.chargedG ?? step.limiting.massG / Math.max(1, step.batches)
    const isolatedG = isolatedOf(entry)
    const yieldFraction = chargedG > 0 ? runYield(library, entry.step, isolatedG, chargedG) : 0
    const { low, typical, high } = step.yieldFraction
    const verdict = entry.failed
      ? 'failed'
      : yieldFraction > 1 + 1e-6
        ? 'above-theory'
        : yieldFraction < low
          ? 'below'
          : yieldFraction > high
            ? 'above'
            : 'as-planned'
    return [
      {
        entry,
        replaced: !stands.has(entry),
        chargedG,
        isolatedG,
        theoryG: flow.isolation ? null : chargedG * flow.theoryPerG,
        plannedG: Math.max(0, chargedG * flow.theoryPerG * typical - flow.lossG),
        yieldFraction,
        plannedYield: typical,
        verdict,
      },
    ]
  })
}
