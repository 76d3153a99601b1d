import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dateOf, dayOf, wallTime, weekdayOf } from '../../../../core/days/civil-date.ts'

const dayMs = 86_400_000

describe('civil dates', () => {
  it('agree with the platform calendar on every day from 1890 to 2110', () => {
    const [from, to] = [Date.UTC(1890, 0, 1) / dayMs, Date.UTC(2110, 11, 31) / dayMs]
    expect(to - from).toBeGreaterThan(80_000)
    for (let day = from; day <= to; day++) {
      const date = new Date(day * dayMs)
      const iso = date.toISOString().slice(0, 10)
      if (dateOf(day) !== iso || dayOf(iso) !== day || weekdayOf(day) % 7 !== date.getUTCDay())
        throw new Error(`${iso}: ${dateOf(day)}, ${dayOf(iso)}, ${weekdayOf(day)}`)
    }
  })

  it.each(['2026-02-29', '2026-13-01', '2026-00-10', '2026-04-31', '2100-02-29', '26-01-01', '2026-1-1', '', 'tomorrow'])(
    '"%s" is no date',
    text => expect(dayOf(text)).toBeNull(),
  )

  it('add hours as the platform does in a zone without summer time', () => {
    fc.assert(
      fc.property(fc.integer({ min: -30_000, max: 60_000 }), fc.integer({ min: -100_000, max: 100_000 }), (day, minutes) => {
        expect(wallTime(day, minutes / 60)).toBe(new Date(day * dayMs + minutes * 60_000).toISOString().slice(0, 16))
      }),
      { seed: 3 },
    )
  })
})
