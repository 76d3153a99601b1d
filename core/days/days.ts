import type { WindowOfWeek } from './bench-time.ts'
import type { TooLong } from './too-long.ts'

/** One piece of work in time. Wall times are ISO local ("2026-12-03T18:30") or, without a start date, hours from the first set-up. */
export interface Booked {
  readonly step: string
  readonly batch: number
  readonly do: string
  readonly kind: 'hands' | 'watch' | 'stand'
  readonly startH: number
  readonly endH: number
  readonly start: string | null
  readonly end: string | null
  /** Index of the bench window it lies in; null for what stands between windows. */
  readonly window: number | null
}

/** The plan on the calendar of the bench. */
export interface Days {
  readonly handsOnH: number | null
  /** Elapsed hours of the longest chain, hands unlimited. */
  readonly elapsedH: number
  /** Bench windows used; null where no windows are stated or a step fits none. */
  readonly windowsUsed: number | null
  readonly startDate: string | null
  readonly finishDate: string | null
  readonly booked: readonly Booked[]
  /** Steps of the longest chain, first to last. */
  readonly longestChain: readonly string[]
  /** What stands or runs without anybody, between windows. */
  readonly unattended: readonly { readonly step: string; readonly do: string; readonly hours: number; readonly heated: boolean }[]
  /** Steps that have no place in the windows, and why. */
  readonly tooLong: readonly TooLong[]
  /** One window of the week as it would have to be, at the least, for all of them to get dates; null for none needed, or none that would do. */
  readonly wouldDo: WindowOfWeek | null
  readonly notes: readonly string[]
}
