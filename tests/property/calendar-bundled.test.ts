import { describe, expect, it } from 'vitest'
import { daysOf } from '../../core/days/calendar.ts'
import { bundled } from '../../server/library/bundled.ts'
import { chargedStep } from '../support/charged-steps.ts'

/** Laws that hold for every bundled transformation alone, in evenings and in whole days. */
const { library } = bundled()
const week = (from: string, hours: number) => [1, 2, 3, 4, 5].map(weekday => ({ weekday, from, hours }))
const settings = { daysOff: [], deliveryDays: 0, startDate: '2026-11-30', vessels: [], heatSources: 1 }
/** Minutes of wall time are rounded. */
const minuteH = 1 / 60

describe.each([
  { name: 'evenings', windows: week('18:30', 3), from: 18.5, to: 21.5, leastDated: 200 },
  { name: 'whole days', windows: week('09:00', 9), from: 9, to: 18, leastDated: 350 },
])('each bundled transformation in $name', ({ windows, from, to, leastDated }) => {
  const all = [...library.transformations.values()].map(transformation => ({
    transformation,
    days: daysOf({
      library,
      steps: [chargedStep({ transformation: transformation.id, makes: transformation.mainProduct })],
      windows,
      ...settings,
    }),
  }))

  it('is dated or named as too long, never both, never neither', () => {
    expect(all.length).toBeGreaterThanOrEqual(390)
    const dated = all.filter(({ days }) => days.finishDate !== null)
    for (const { days } of all) {
      expect(days.tooLong.length === 0).toBe(days.finishDate !== null)
      expect(days.booked.length > 0).toBe(days.finishDate !== null)
      for (const { hours } of days.tooLong) expect(hours).toBeGreaterThan(0)
    }
    expect(dated.length).toBeGreaterThanOrEqual(leastDated)
  })

  it('keeps what needs a person inside the window, and every wait within what it may be', () => {
    for (const { transformation, days } of all) {
      const tasks = transformation.tasks ?? []
      for (const entry of days.booked) {
        if (entry.kind === 'stand') continue
        expect(entry.window).not.toBeNull()
        const [begins, ends] = [entry.start!, entry.end!].map(wall => Number(wall.slice(11, 13)) + Number(wall.slice(14)) / 60)
        expect(begins).toBeGreaterThanOrEqual(from - minuteH)
        expect(ends).toBeLessThanOrEqual(to + minuteH)
      }
      // Pieces of what was parted are one task.
      const whole = tasks.map(task => days.booked.filter(entry => entry.do === task.do))
      if (new Set(tasks.map(t => t.do)).size < tasks.length || days.booked.length === 0) continue
      for (const [index, task] of tasks.slice(0, -1).entries()) {
        const waited = whole[index + 1]![0]!.startH - whole[index]!.at(-1)!.endH
        expect(waited).toBeGreaterThanOrEqual(-1e-3)
        expect(waited).toBeLessThanOrEqual(task.waitUpToH + 1e-3)
      }
    }
  })
})
