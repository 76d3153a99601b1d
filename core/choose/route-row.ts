import type { HazardCounts } from '../hazards/hazard-list.ts'
import type { Trust } from '../library/trust.ts'
import type { Axis } from './query.ts'
import type { RouteFlag } from './route-flags.ts'

/** One route as `waybench routes` lists it. */
export interface RouteRow {
  /** Transformation ids in working order. */
  readonly steps: readonly string[]
  readonly overallYieldOnStart: number
  readonly longestLinearYield: number
  /** How sure the yield of each step is, in their order. */
  readonly yieldTrust: readonly Trust[]
  /** Compounds. */
  readonly made: readonly string[]
  /** Materials as charged. */
  readonly bought: readonly string[]
  /** The figure of the axis: mol of start per mol of target, steps, hours, minor units per mol, mass in over product, fraction; null = none, or unknown. */
  readonly value: number | null
  /** Cost and mass in: some line of the route has no amount, or only the least one, so that the figure is a lower bound. */
  readonly valueAtLeast?: boolean
  readonly hazard: HazardCounts
  readonly flags: readonly RouteFlag[]
  /** Where routes are compared on several axes: the figure of each; null = none, or unknown. */
  readonly values?: Readonly<Partial<Record<Axis, number | null>>>
}
