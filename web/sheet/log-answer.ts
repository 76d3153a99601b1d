import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { LogEntry } from '../../core/plan/plan.ts'
import { massText } from '../../core/quantity/print.ts'
import type { ChargedStep } from '../../core/route/charged.ts'
import { capital } from '../parts/words.tsx'

/** One run held against the plan and against theory. */
export interface Compared {
  readonly entry: LogEntry
  readonly step: ChargedStep | null
  /** Weighed less what is damp, and only what is product, g. */
  readonly dryG: number
  /** What theory allows from what was charged, g; null for an isolation. */
  readonly theoryG: number | null
  /** What the plan expects from what was charged, g. */
  readonly plannedG: number | null
  /** Fraction of theory; null where there is none. */
  readonly yieldFraction: number | null
}

/** Runs as they stand: a corrected one is replaced by its correction. */
export function comparedRuns(log: readonly LogEntry[], evaluation: Evaluation | null): readonly Compared[] {
  const replaced = new Set(log.map(entry => entry.replaces).filter(id => id !== null))
  return log
    .filter(entry => !replaced.has(entry.id))
    .map(entry => {
      const step = evaluation?.steps.find(one => one.transformation === entry.step) ?? null
      const share = step === null ? null : entry.chargedG === null ? 1 / Math.max(1, step.batches) : entry.chargedG / step.limiting.massG
      const dryG = entry.weighedG * (1 - entry.dampPercent / 100) * (entry.purity ?? 1)
      const theoryG = step?.theoreticalG == null || share === null ? null : step.theoreticalG * share
      return {
        entry,
        step,
        dryG,
        theoryG,
        plannedG: step === null || share === null ? null : step.medianG * share,
        yieldFraction: theoryG === null || theoryG === 0 ? null : dryG / theoryG,
      }
    })
}

/** More than theory allows, beyond what a bench balance can miss: wet, impure or mis-weighed. */
export const tooMuch = (run: Compared): boolean => run.yieldFraction !== null && run.yieldFraction > 1.0005

/** "Benzil: 20.9 g, 88 % of theory", or what is wrong with the last run. */
export function logAnswer(runs: readonly Compared[], nameOf: (id: string) => string): string {
  const last = runs[runs.length - 1]
  if (last === undefined) return 'No run logged'
  const name = capital(last.step === null ? last.entry.step.replaceAll('-', ' ') : nameOf(last.step.makes))
  if (last.entry.failed) return `${name}: a run failed`
  const percent = last.yieldFraction === null ? null : Math.round(last.yieldFraction * 100)
  if (tooMuch(last)) return `${name} weighs ${percent} % of theory: wet or mis-weighed?`
  return `${name}: ${massText(last.dryG)}${percent === null ? '' : `, ${percent} % of theory`}`
}
