import type { ReachNetwork, ReachNetworkAnswer } from '../../core/choose/reach-network.ts'
import { type ReachAnswer, type ReachInput, reachList } from '../../core/choose/reach-rows.ts'
import type { Settings } from '../../core/plan/settings.ts'
import type { Checked } from '../../core/problem/problem.ts'
import { stopProblems } from '../../core/report/stops.ts'
import type { Workshop } from '../library/workshop.ts'
import { Refusal } from '../refusal.ts'
import { searched, type Told } from './searching.ts'

/** Rows without names, and whether these are all. */
export type ReachList = Omit<Extract<ReachAnswer, { kind: 'reach' }>, 'kind'>

export interface ReachAsked {
  readonly from: string
  readonly maxSteps?: number | undefined
  readonly settings?: Settings
}

export const reachInput = (workshop: Workshop, { from, maxSteps, settings }: ReachAsked, shouldStop?: () => boolean): ReachInput => ({
  library: workshop.library,
  traits: workshop.traits(),
  query: { from, ...(maxSteps === undefined ? {} : { maxSteps }) },
  ...(settings && { settings }),
  ...(shouldStop && { shouldStop }),
})

/** Everything a start can become, or a refusal. Runs in turns: a large library keeps nobody else waiting. */
export async function reachFrom(
  workshop: Workshop,
  asked: ReachAsked,
  shouldStop?: () => boolean,
  onEvent?: (event: Told) => void,
): Promise<ReachList> {
  return reachIn(workshop, await searched(reachList(reachInput(workshop, asked, shouldStop)), undefined, onEvent))
}

/** @throws Refusal where nothing is listed */
export function reachIn(workshop: Workshop, answer: Checked<ReachAnswer>): ReachList
export function reachIn(workshop: Workshop, answer: Checked<ReachNetworkAnswer>): ReachNetwork
export function reachIn({ library }: Workshop, answer: Checked<ReachAnswer | ReachNetworkAnswer>) {
  if (!answer.ok) throw new Refusal('bad-input', answer.problems)
  if (answer.value.kind === 'stopped') throw new Refusal('no-answer', stopProblems(library, answer.value.stopped))
  const { kind: _kind, ...found } = answer.value
  return found
}
