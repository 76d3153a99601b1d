import { type ReachRow, reachList } from '../../core/choose/reach-rows.ts'
import type { Settings } from '../../core/plan/settings.ts'
import { stopProblems } from '../../core/report/stops.ts'
import type { Workshop } from '../library/workshop.ts'
import { Refusal } from '../refusal.ts'
import { searched, type Told } from './searching.ts'

export interface ReachAsked {
  readonly from: string
  readonly maxSteps?: number | undefined
  readonly settings?: Settings
}

/** Everything a start can become, or a refusal. Runs in turns: a large library keeps nobody else waiting. */
export async function reachFrom(
  workshop: Workshop,
  { from, maxSteps, settings }: ReachAsked,
  signal?: AbortSignal,
  onEvent?: (event: Told) => void,
): Promise<readonly ReachRow[]> {
  const { library } = workshop
  const query = { from, ...(maxSteps === undefined ? {} : { maxSteps }) }
  const search = reachList({ library, traits: workshop.traits(), query, ...(settings && { settings }) })
  const answer = await searched(search, signal, onEvent)
  if (!answer.ok) throw new Refusal('bad-input', answer.problems)
  if (answer.value.kind === 'stopped') throw new Refusal('no-answer', stopProblems(library, answer.value.stopped))
  return answer.value.reach
}
