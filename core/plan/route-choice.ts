import type { HazardCounts } from '../hazards/hazard-list.ts'
import type { Axis } from './choosing.ts'

/** How the way to one goal stands among those that were looked for: what was proven, and which others are worth a thought. */
export interface RouteChoice {
  readonly target: string
  /** What the list is ordered by. */
  readonly by: Axis
  /** Place of the chosen way in it, from 1; null = it is not among those listed. */
  readonly place: number | null
  readonly listed: number
  /** No further way exists. */
  readonly complete: boolean
  /** The first of the list is proven the best by that axis. */
  readonly bestProven: boolean
  /** If not: how far it may lie above the proven bound at most; null = not known. */
  readonly atMostAbovePercent: number | null
  /** Axes on which ways were compared at once; empty = they were not. */
  readonly axes: readonly Axis[]
  /** All unbeaten ways are known; false = among those that were looked at. */
  readonly exact: boolean
  /** No other way beats the chosen one on all of these axes. */
  readonly unbeaten: boolean
  /** The other unbeaten ways, in the order of the first axis. */
  readonly others: readonly {
    /** Transformation ids in working order. */
    readonly steps: readonly string[]
    readonly overallYieldOnStart: number
    readonly hazard: HazardCounts
  }[]
}
