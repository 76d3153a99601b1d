import type { Library } from '../library/library.ts'
import type { Evaluation } from './evaluation.ts'
import type { Plan } from './plan.ts'
import { type MetricName, metricWorking } from './working-of-metrics.ts'
import { buyWorking, gasWorking, goalWorking, overallWorking, startWorking, usesWorking } from './working-of-plan.ts'
import { chargeWorking, productWorking, yieldWorking } from './working-of-step.ts'
import type { Working } from './working-row.ts'

export type { MetricName } from './working-of-metrics.ts'
export type { Working, WorkingRow } from './working-row.ts'

/** A number of the sheet that answers a click. Steps are named by transformation. */
export type WorkingKey =
  | { readonly of: 'charge'; readonly step: string; readonly index: number }
  | { readonly of: 'product'; readonly step: string }
  | { readonly of: 'yield'; readonly step: string }
  | { readonly of: 'uses'; readonly step: string; readonly index: number }
  | { readonly of: 'goal'; readonly target: string }
  | { readonly of: 'overall'; readonly target: string }
  | { readonly of: 'start' }
  | { readonly of: 'buy'; readonly material: string }
  | { readonly of: 'metric'; readonly which: MetricName; readonly step: string | null }
  | { readonly of: 'gas'; readonly step: string; readonly compound: string }

/**
 * The working of a number; null for a key that the plan does not hold.
 *
 * @param evaluation of the same plan
 */
export function workingOf(library: Library, plan: Plan, evaluation: Evaluation, key: WorkingKey): Working | null {
  const step = 'step' in key ? evaluation.steps.find(s => s.transformation === key.step || s.number === key.step) : undefined
  if ('step' in key && key.step !== null && step === undefined) return null
  switch (key.of) {
    case 'charge':
      return chargeWorking(library, evaluation, step!, key.index)
    case 'product':
      return productWorking(library, step!)
    case 'yield':
      return yieldWorking(library, plan, step!)
    case 'uses':
      return usesWorking(library, plan, evaluation, step!, key.index)
    case 'goal':
      return goalWorking(library, evaluation, key.target)
    case 'overall':
      return overallWorking(library, evaluation, key.target)
    case 'start':
      return startWorking(library, evaluation)
    case 'buy':
      return buyWorking(library, plan, evaluation, key.material)
    case 'metric':
      return metricWorking(library, plan, evaluation, key.which, step ?? null)
    case 'gas':
      return gasWorking(library, evaluation, step!, key.compound)
  }
}
