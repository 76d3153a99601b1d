import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BenchTime } from '../../core/days/bench-time.ts'
import { timetable } from '../../core/days/timetable.ts'
import type { Order, TimedTask, TimetableInput, VesselUse, Wait } from '../../core/days/timetable-input.ts'

/**
 * Timetables against trying every start hour of every task. All times are whole hours, so that an earliest timetable begins everything on the
 * hour; the listing shares no code with the search.
 */
interface Job {
  readonly tasks: readonly {
    readonly kind: 'hands' | 'watch' | 'stand'
    readonly hours: number
    readonly wait: number
    readonly heated: boolean
  }[]
  readonly vessels: readonly number[]
  readonly release: number
  /** Takes the product of the job before it in the list, which keeps so long; null = of none. */
  readonly holdBefore: number | null
}

interface Case {
  readonly jobs: readonly Job[]
  /** Hours of each day's window, from 08:00; null = no windows. */
  readonly window: number | null
  readonly heatSources: number | null
  readonly vesselCounts: readonly number[]
}

const days = 4
const horizon = days * 24

const taskArbitrary = fc.record({
  kind: fc.constantFrom('hands' as const, 'hands' as const, 'watch' as const, 'stand' as const),
  hours: fc.integer({ min: 1, max: 3 }),
  wait: fc.constantFrom(0, 1, 2, 20, 60),
  heated: fc.constantFrom(true, true, false),
})
const jobArbitrary: fc.Arbitrary<Job> = fc.record({
  tasks: fc.array(taskArbitrary, { minLength: 1, maxLength: 3, size: 'max' }),
  vessels: fc.constantFrom([], [0], [1], [0, 1]),
  release: fc.constantFrom(0, 0, 0, 10, 30),
  holdBefore: fc.constantFrom(null, null, null, null, 0, 4, 18, 200),
})
const caseArbitrary: fc.Arbitrary<Case> = fc.record({
  jobs: fc.array(jobArbitrary, { minLength: 2, maxLength: 3 }),
  window: fc.constantFrom(null, 3, 4, 6),
  heatSources: fc.constantFrom(null, 1, 1),
  vesselCounts: fc.constantFrom([1, 1], [2, 1]),
})

const everyDay = [1, 2, 3, 4, 5, 6, 7]

/** The same as the timetable wants it. Standing begins at the bench, or by itself at once after other standing. */
function inputOf({ jobs, window, heatSources, vesselCounts }: Case): TimetableInput {
  const tasks: TimedTask[] = []
  const orders: Order[] = []
  const waits: Wait[] = []
  const vesselUses: VesselUse[] = []
  let before: number | null = null
  for (const job of jobs) {
    const base = tasks.length
    for (const [index, task] of job.tasks.entries()) {
      const last = job.tasks[index - 1]
      const lies = window === null ? 'any' : task.kind !== 'stand' ? 'bench' : last?.kind === 'stand' ? 'any' : 'begun'
      tasks.push({ hours: task.hours, lies, hands: task.kind === 'hands', heated: task.heated, release: index === 0 ? job.release : 0 })
      if (last === undefined) continue
      orders.push({ from: base + index - 1, to: base + index, since: 'end' })
      waits.push({ from: base + index - 1, to: base + index, upToH: last.kind === 'stand' && task.kind === 'stand' ? 0 : last.wait })
    }
    if (before !== null && job.holdBefore !== null) {
      orders.push({ from: before, to: base, since: 'end' })
      waits.push({ from: before, to: base, upToH: job.holdBefore })
    }
    before = tasks.length - 1
    vesselUses.push({ first: base, last: before, fits: job.vessels })
  }
  const bench =
    window === null
      ? BenchTime.always()
      : BenchTime.of(
          everyDay.map(weekday => ({ weekday, from: '08:00', hours: window })),
          new Set(),
          0,
          days,
        )
  return { tasks, orders, waits, bench, vesselUses, vesselCounts, heatSources, ranks: [], horizonH: horizon, budget: 1_000_000 }
}

/** The earliest end of all; null where nothing fits before the horizon. */
function earliestEnd({ jobs, window, heatSources, vesselCounts }: Case, tooLate: number): number | null {
  const flat = jobs.flatMap((job, j) => job.tasks.map((task, t) => ({ ...task, j, t, job })))
  const starts: number[] = []
  let best = tooLate
  const end = (at: number) => starts[at]! + flat[at]!.hours
  const ends = (j: number) => flat.flatMap((f, at) => (f.j === j && at < starts.length ? [end(at)] : []))
  const atBench = (from: number, to: number) => window === null || (from % 24 >= 8 && (from % 24) + (to - from) <= 8 + window)
  const overlaps = (a: number, b: number) => starts[a]! < end(b) && starts[b]! < end(a)
  const holds = (): boolean => {
    const at = starts.length - 1
    const { kind, heated } = flat[at]!
    const others = starts.slice(0, -1).map((_, other) => other)
    if (kind === 'hands' && others.some(o => flat[o]!.kind === 'hands' && overlaps(o, at))) return false
    if (heated && heatSources !== null && others.some(o => flat[o]!.heated && overlaps(o, at))) return false
    return true
  }
  const vesselsHold = (): boolean => {
    const taken = jobs.map((job, j) => ({ job, from: starts[flat.findIndex(f => f.j === j)]!, to: Math.max(...ends(j)) }))
    // Give the jobs that meet at the start of any of them a vessel each, in every way.
    return taken.every(({ from }) => {
      const running = taken.filter(t => t.from <= from && from < t.to && t.job.vessels.length > 0)
      const give = (index: number, left: readonly number[]): boolean =>
        index === running.length ||
        running[index]!.job.vessels.some(
          v =>
            left[v]! > 0 &&
            give(
              index + 1,
              left.map((n, w) => (w === v ? n - 1 : n)),
            ),
        )
      return give(0, vesselCounts)
    })
  }
  const walk = (): void => {
    const at = starts.length
    if (at === flat.length) {
      const finish = Math.max(...flat.map((_, index) => end(index)))
      if (finish < best && vesselsHold()) best = finish
      return
    }
    const { j, t, kind, hours, job } = flat[at]!
    let from = t === 0 ? job.release : 0
    let to = best - hours
    if (t > 0) {
      const before = flat[at - 1]!
      from = Math.max(from, end(at - 1))
      to = Math.min(to, end(at - 1) + (kind === 'stand' && before.kind === 'stand' ? 0 : before.wait))
    } else if (j > 0 && job.holdBefore !== null) {
      from = Math.max(from, end(at - 1))
      to = Math.min(to, end(at - 1) + job.holdBefore)
    }
    for (let start = from; start <= to; start++) {
      const begunAlone = kind === 'stand' && t > 0 && flat[at - 1]!.kind === 'stand'
      if (kind === 'stand' ? !begunAlone && !atBench(start, start) : !atBench(start, start + hours)) continue
      starts.push(start)
      if (end(at) < best && holds()) walk()
      starts.pop()
    }
  }
  walk()
  return best < tooLate ? best : null
}

describe('timetables', () => {
  it('end as early as any, in 600 seeded cases', () => {
    let feasible = 0
    let none = 0
    let contended = 0
    fc.assert(
      fc.property(caseArbitrary, one => {
        const input = inputOf(one)
        const found = timetable(input)
        // Tried up to the horizon, and a little beyond what the search found, so that an earlier end would show.
        const best = earliestEnd(one, Math.min(horizon, 'none' in found ? horizon : found.finishH + 1) + 1)
        if (best === null) none++
        else feasible++
        if ('none' in found) expect(best).toBeNull()
        else {
          expect(found.proven).toBe(true)
          expect(found.finishH).toBeCloseTo(best ?? Number.NaN, 6)
          witness(one, found.starts)
          const alone = timetable({ ...input, tasks: input.tasks.map(t => ({ ...t, hands: false, heated: false })), vesselUses: [] })
          if (!('none' in alone) && alone.finishH < found.finishH - 0.5) contended++
        }
      }),
      { seed: 20_261_126, numRuns: 600 },
    )
    expect(feasible).toBeGreaterThan(150)
    expect(none).toBeGreaterThan(20)
    // Cases in which sharing hands, heat or vessels made a difference.
    expect(contended).toBeGreaterThan(20)
  })

  it('found with a small budget hold too, and never end earlier than proven ones', () => {
    fc.assert(
      fc.property(caseArbitrary, one => {
        const input = inputOf(one)
        const rank = input.tasks.map((_, index) => index)
        const [quick, proven] = [timetable({ ...input, ranks: [rank], budget: 60 }), timetable(input)]
        if ('none' in quick) return
        witness(one, quick.starts)
        expect('none' in proven).toBe(false)
        if (!('none' in proven)) expect(quick.finishH).toBeGreaterThanOrEqual(proven.finishH - 1e-6)
      }),
      { seed: 11, numRuns: 300 },
    )
  })
})

/** Looks at a timetable by itself: every rule, task by task. */
function witness({ jobs, window, heatSources }: Case, starts: readonly number[]): void {
  const slack = 1e-3
  const placed: { kind: string; heated: boolean; from: number; to: number }[] = []
  let at = 0
  let jobEnd = 0
  for (const job of jobs) {
    let before: { wait: number; kind: string; to: number } | null = null
    for (const task of job.tasks) {
      const from = starts[at++]!
      const to = from + task.hours
      if (before === null) {
        expect(from).toBeGreaterThanOrEqual(job.release - slack)
        if (job.holdBefore !== null && job !== jobs[0]) {
          expect(from).toBeGreaterThanOrEqual(jobEnd - slack)
          expect(from).toBeLessThanOrEqual(jobEnd + job.holdBefore + slack)
        }
      } else {
        expect(from).toBeGreaterThanOrEqual(before.to - slack)
        expect(from).toBeLessThanOrEqual(before.to + before.wait + slack)
      }
      if (window !== null && task.kind !== 'stand') {
        const inDay = from % 24
        expect(inDay).toBeGreaterThanOrEqual(8 - slack)
        expect(inDay + task.hours).toBeLessThanOrEqual(8 + window + slack)
      }
      placed.push({ kind: task.kind, heated: task.heated, from, to })
      before = { wait: task.wait, kind: task.kind, to }
    }
    jobEnd = before?.to ?? jobEnd
  }
  const meet = (a: (typeof placed)[number], b: (typeof placed)[number]) => a.from < b.to - slack && b.from < a.to - slack
  for (const [index, a] of placed.entries())
    for (const b of placed.slice(index + 1)) {
      if (a.kind === 'hands' && b.kind === 'hands') expect(meet(a, b)).toBe(false)
      if (heatSources === 1 && a.heated && b.heated) expect(meet(a, b)).toBe(false)
    }
}
