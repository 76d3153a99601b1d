import { type Working, type WorkingKey, workingOf } from '../../core/plan/working.ts'
import { facts } from './facts-here.ts'
import { standing } from './reckoner.ts'

/** The working behind a figure of the plan that stands; null while another is being reckoned. */
export function workingFor(name: string): Working | null {
  const { evaluation, plan } = standing.value
  if (evaluation === null || plan === null) return null
  return workingOf(facts.value.library, plan, evaluation, JSON.parse(name) as WorkingKey)
}
