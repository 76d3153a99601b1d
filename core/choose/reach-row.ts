import type { Trust } from '../library/trust.ts'
import type { RouteFlag } from './route-flags.ts'

/** One compound that the start can become, as `waybench reach` lists it. */
export interface ReachRow {
  readonly compound: string
  /** Steps, yield and route of the default route first by `start`; null = not proven within the budget. */
  readonly steps: number | null
  readonly bestYieldOnStart: number | null
  /** How sure the least sure yield of that route is; null = no route is known. */
  readonly yieldTrust: Trust | null
  readonly route: readonly string[] | null
  /** Number of default routes; with `counted` false there are at least so many. */
  readonly routes: number
  readonly counted: boolean
  /** A real route confirms the row. */
  readonly proven: boolean
  readonly flags: readonly RouteFlag[]
}

/** The same with the name of the compound, for whoever has no library at hand. */
export type NamedReachRow = ReachRow & { readonly name: string }
