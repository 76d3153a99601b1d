import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { BenchTime } from '../../../../core/days/bench-time.ts'

const evenings = [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: '18:30', hours: 3 }))
// Day 4 = 1970-01-05, a Monday.
const bench = BenchTime.of(evenings, new Set(['1970-01-07']), 4, 14)

describe('bench time', () => {
  it('holds the windows of the week without the days off', () => {
    expect(bench.stretches).toHaveLength(9)
    expect(bench.stretches.slice(0, 3)).toEqual([
      { from: 18.5, to: 21.5 },
      { from: 42.5, to: 45.5 },
      { from: 90.5, to: 93.5 },
    ])
    expect(bench.longestH).toBe(3)
  })

  it('finds the next start at which the work fits whole', () => {
    expect(bench.startFor(0, 3)).toBe(18.5)
    expect(bench.startFor(19, 2.5)).toBe(19)
    expect(bench.startFor(19, 3)).toBe(42.5)
    expect(bench.startFor(0, 3.5)).toBe(Number.POSITIVE_INFINITY)
  })

  it('parts what may be stopped over windows, and never begins it for a moment', () => {
    expect(bench.splitStart(21.25, 7)).toBe(42.5)
    expect(bench.splitEnd(18.5, 7)).toBe(91.5)
    expect(bench.piecesOf(18.5, 91.5)).toEqual([
      { from: 18.5, to: 21.5 },
      { from: 42.5, to: 45.5 },
      { from: 90.5, to: 91.5 },
    ])
  })

  it('merges windows that overlap, and keeps apart those that touch', () => {
    const monday = (from: string, hours: number) => ({ weekday: 1, from, hours })
    expect(BenchTime.of([monday('08:00', 3), monday('10:00', 4)], new Set(), 4, 1).stretches).toEqual([{ from: 8, to: 14 }])
    expect(BenchTime.of([monday('08:00', 2), monday('10:00', 2)], new Set(), 4, 1).startFor(0, 3)).toBe(Number.POSITIVE_INFINITY)
  })

  it('finds the earliest start with which parted work ends no sooner than wanted', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 1, max: 8 }), (wantedHalves, hours) => {
        const wanted = wantedHalves / 2 + 60
        const start = bench.splitStart(bench.splitStartFor(wanted, hours), hours)
        expect(bench.splitEnd(start, hours)).toBeGreaterThanOrEqual(wanted - 1e-4)
        // On a grid of five minutes none before it does, but where it would leave less than half an hour for a window.
        for (let earlier = 18.5; earlier < start - 0.01; earlier += 1 / 12) {
          if (Math.abs(bench.splitStart(earlier, hours) - earlier) > 1e-9) continue
          const end = bench.splitEnd(earlier, hours)
          const last = bench.piecesOf(earlier, end).at(-1)!
          if (last.to - last.from >= 0.5 - 1e-4) expect(end).toBeLessThan(wanted + 1e-4)
        }
      }),
      { seed: 9 },
    )
  })
})
