import { type ReachRow, reachRows } from '../../core/choose/reach-rows.ts'
import type { Workshop } from '../library/workshop.ts'
import { Refusal } from '../refusal.ts'
import { stopProblems } from './stops.ts'

/** Everything a start can become, or a refusal. */
export function reachFrom(workshop: Workshop, from: string, maxSteps: number | undefined): readonly ReachRow[] {
  const { library } = workshop
  const answer = reachRows({ library, traits: workshop.traits(), query: { from, ...(maxSteps === undefined ? {} : { maxSteps }) } })
  if (!answer.ok) throw new Refusal('bad-input', answer.problems)
  if (answer.value.kind === 'stopped') throw new Refusal('no-answer', stopProblems(library, answer.value.stopped))
  return answer.value.reach
}
