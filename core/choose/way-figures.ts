import type { Evaluation } from '../plan/evaluation.ts'
import { compareKeys, type Way, type WayKey } from './way.ts'

/** A way that was reckoned in full. */
export interface WayFigures {
  /** Transformations, in order of id. */
  readonly steps: readonly string[]
  readonly totalMinor: number | null
  readonly complete: boolean
  readonly priceUnknown: number
  /** Total over the grams of the rest goal, minor units; null without such a goal, or where it is held. */
  readonly perGramMinor: number | null
  readonly unreached: number
  readonly handsOnH: number | null
  readonly finishDate: string | null
  /** What keeps it out, in words; empty where nothing does. */
  readonly over: readonly string[]
}

/** The same with all that it was reckoned from. */
export interface ReckonedWay {
  readonly way: Way
  readonly evaluation: Evaluation
  readonly key: WayKey
  readonly figures: WayFigures
}

export const compareSteps = (a: readonly string[], b: readonly string[]): number => {
  const [one, other] = [a.join(' '), b.join(' ')]
  return a.length - b.length || (one < other ? -1 : one > other ? 1 : 0)
}

/** By key; of equals the one that makes more of the rest, then fewer steps, then ids. */
export function compareWays(a: ReckonedWay, b: ReckonedWay): number {
  const restOf = ({ evaluation }: ReckonedWay) => evaluation.goals.find(g => g.amount.kind === 'rest')?.expectedG ?? 0
  const more = restOf(b) - restOf(a)
  return compareKeys(a.key, b.key) || (Math.abs(more) > 1e-9 ? more : 0) || compareSteps(a.way.steps, b.way.steps)
}

export function figuresOf(way: Way, { basket, days }: Evaluation, key: WayKey): WayFigures {
  const compared = way.held.goals.some(g => g.amount.kind === 'rest')
  return {
    steps: way.steps,
    totalMinor: basket?.totalMinor ?? null,
    complete: basket?.complete ?? false,
    priceUnknown: basket?.priceUnknown.length ?? 0,
    perGramMinor: compared && Number.isFinite(key.cost) && basket?.totalMinor != null ? key.cost : null,
    unreached: key.unreached,
    handsOnH: days.handsOnH,
    finishDate: days.finishDate,
    over: [],
  }
}
