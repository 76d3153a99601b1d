import type { BenchTime } from './bench-time.ts'

/** One task of the timetable. `bench` = inside one window; `split` = in several; `begun` = begun at the bench, then stands alone; `any`. */
export interface TimedTask {
  readonly hours: number
  readonly lies: 'bench' | 'split' | 'begun' | 'any'
  readonly hands: boolean
  readonly heated: boolean
  /** Not before this hour. */
  readonly release: number
}

/** `to` begins when `from` has ended, or has begun. */
export interface Order {
  readonly from: number
  readonly to: number
  readonly since: 'end' | 'start'
  /** Because two share what there is not enough of: how far the calendar is looked through does not count it. */
  readonly shared?: true
}

/** `to` begins within so many hours after the end of `from`. */
export interface Wait {
  readonly from: number
  readonly to: number
  readonly upToH: number
}

/** A vessel is taken from the start of one task to the end of another; `fits` = which vessels will do. */
export interface VesselUse {
  readonly first: number
  readonly last: number
  readonly fits: readonly number[]
}

export interface TimetableInput {
  readonly tasks: readonly TimedTask[]
  readonly orders: readonly Order[]
  readonly waits: readonly Wait[]
  readonly bench: BenchTime
  readonly vesselUses: readonly VesselUse[]
  /** How many there are of each vessel. */
  readonly vesselCounts: readonly number[]
  /** Null = as many as needed. */
  readonly heatSources: number | null
  /** Orders of precedence to begin with: for each task a number, and the smaller goes first where two want the same. */
  readonly ranks: readonly (readonly number[])[]
  /** End of the calendar, h. */
  readonly horizonH: number
  /** Steps of work (a task pushed later is one), at the most; 0 = only what follows without trying. */
  readonly budget: number
}

/** Starts and ends of all tasks, h. */
export interface Times {
  readonly starts: Float64Array
  readonly ends: Float64Array
}
