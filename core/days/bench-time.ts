import { dayOf, weekdayOf } from './civil-date.ts'

/** One stretch of time at the bench, hours from midnight of the first day. */
export interface Stretch {
  readonly from: number
  readonly to: number
}

export interface WindowOfWeek {
  readonly weekday: number
  readonly from: string
  readonly hours: number
}

/** Sums of hours are equal within this; a tenth of a second of bench time. */
export const slackH = 3e-5

/** What may be stopped and taken up again is not begun for less than this, nor left with less than this to do. Common practice, no source. */
const leastPieceH = 0.5

/**
 * When somebody can be at the bench. Every question is "from when on, not before t": the answers only ever grow with t, which is what lets
 * a timetable be found by pushing tasks later until nothing is violated.
 */
export class BenchTime {
  readonly stretches: readonly Stretch[]
  /** Bench hours before each stretch. */
  readonly #before: number[] = []

  private constructor(stretches: readonly Stretch[]) {
    this.stretches = stretches
    let sum = 0
    for (const { from, to } of stretches) {
      this.#before.push(sum)
      sum += to - from
    }
  }

  /** No windows stated: any hour will do. */
  static always(): BenchTime {
    return new BenchTime([{ from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY }])
  }

  /**
   * The windows of the coming days, days off left out. Windows that overlap are one; those that only touch stay two, as two classes are.
   *
   * @param firstDay day number of hour 0
   * @param days     how far the calendar goes
   */
  static of(windows: readonly WindowOfWeek[], daysOff: ReadonlySet<string>, firstDay: number, days: number): BenchTime {
    const found: Stretch[] = []
    // Dates are read once and not written for each of the days: a calendar is made at each move of a slider.
    const off = new Set([...daysOff].map(dayOf))
    const begins = windows.map(({ weekday, from, hours }) => {
      const [hour, minute] = from.split(':').map(Number)
      return { weekday, hour: hour!, minute: minute! / 60, hours }
    })
    for (let day = 0; day < days; day++) {
      if (off.has(firstDay + day)) continue
      const today = weekdayOf(firstDay + day)
      for (const { weekday, hour, minute, hours } of begins) {
        if (weekday !== today) continue
        const from = day * 24 + hour + minute
        found.push({ from, to: from + hours })
      }
    }
    found.sort((a, b) => a.from - b.from)
    const merged: Stretch[] = []
    for (const stretch of found) {
      const last = merged[merged.length - 1]
      if (last !== undefined && stretch.from < last.to - slackH)
        merged[merged.length - 1] = { from: last.from, to: Math.max(last.to, stretch.to) }
      else merged.push(stretch)
    }
    return new BenchTime(merged)
  }

  get #isAlways(): boolean {
    return this.stretches[0]?.from === Number.NEGATIVE_INFINITY
  }

  /** The longest stretch, h; 0 for none. */
  get longestH(): number {
    return this.stretches.reduce((most, { from, to }) => Math.max(most, to - from), 0)
  }

  /** Index of the stretch that holds a time, the earlier where two touch; else of the next one. */
  indexAt(time: number): number {
    let low = 0
    let high = this.stretches.length
    while (low < high) {
      const middle = (low + high) >> 1
      if (this.stretches[middle]!.to >= time - slackH) high = middle
      else low = middle + 1
    }
    return low
  }

  /** The first time from `time` on at which so many hours in one stretch begin; Infinity where the calendar ends before. */
  startFor(time: number, hours: number): number {
    for (let index = this.indexAt(time); index < this.stretches.length; index++) {
      const { from, to } = this.stretches[index]!
      const start = Math.max(from, time)
      if (start + hours <= to + slackH) return start
    }
    return Number.POSITIVE_INFINITY
  }

  /** The first start from `time` on of work that may be stopped and taken up again. */
  splitStart(time: number, hours: number): number {
    return this.startFor(time, Math.min(hours, leastPieceH))
  }

  /** When work that may be stopped and taken up again is done. */
  splitEnd(start: number, hours: number): number {
    if (this.#isAlways) return start + hours
    return this.#timeAt(this.#hoursAt(start) + hours)
  }

  /** The earliest start with which such work ends no sooner than `end`. */
  splitStartFor(end: number, hours: number): number {
    if (this.#isAlways) return end - hours
    const index = this.indexAt(end)
    const stretch = this.stretches[index]
    if (stretch === undefined) return Number.POSITIVE_INFINITY
    // An end before a stretch, or just when it begins, lies at least one piece into it.
    const done = end > stretch.from + slackH ? this.#hoursAt(end) : this.#before[index]! + Math.min(hours, leastPieceH)
    return done <= hours ? this.stretches[0]!.from : this.#timeAt(done - hours)
  }

  /** The pieces in which such work is done, one a stretch. */
  piecesOf(start: number, end: number): readonly Stretch[] {
    if (this.#isAlways) return [{ from: start, to: end }]
    const pieces: Stretch[] = []
    for (let index = this.indexAt(start); index < this.stretches.length; index++) {
      const { from, to } = this.stretches[index]!
      if (from >= end - slackH) break
      const piece = { from: Math.max(from, start), to: Math.min(to, end) }
      if (piece.to - piece.from > slackH) pieces.push(piece)
    }
    return pieces
  }

  /** Bench hours from the beginning up to a time. */
  #hoursAt(time: number): number {
    const index = this.indexAt(time)
    const stretch = this.stretches[index]
    if (stretch === undefined) return Number.POSITIVE_INFINITY
    return this.#before[index]! + Math.max(0, time - stretch.from)
  }

  /** The first time at which so many bench hours have passed. */
  #timeAt(hours: number): number {
    let low = 0
    let high = this.stretches.length
    while (low < high) {
      const middle = (low + high) >> 1
      const { from, to } = this.stretches[middle]!
      if (this.#before[middle]! + (to - from) >= hours - slackH) high = middle
      else low = middle + 1
    }
    const stretch = this.stretches[low]
    return stretch === undefined ? Number.POSITIVE_INFINITY : stretch.from + (hours - this.#before[low]!)
  }
}
