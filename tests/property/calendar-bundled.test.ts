import { describe, expect, it } from 'vitest'
import { daysOf } from '../../core/days/calendar.ts'
import type { Goal } from '../../core/plan/plan.ts'
import { reckoned } from '../../core/plan/reckoned.ts'
import type { Settings } from '../../core/plan/settings.ts'
import { routeOf } from '../../core/route/route-of.ts'
import { bundled } from '../../server/library/bundled.ts'
import { demoParts } from '../../server/library/demo.ts'
import { benzoinPlan, rest } from '../support/benzoin-plans.ts'
import { chargedStep } from '../support/charged-steps.ts'
import { defaultRoutes } from '../support/default-routes.ts'

/** Laws that hold for every bundled transformation alone, in evenings and in whole days. */
const { library } = bundled()
const week = (from: string, hours: number) => [1, 2, 3, 4, 5].map(weekday => ({ weekday, from, hours }))
const settings = { daysOff: [], deliveryDays: 0, startDate: '2026-11-30', vessels: [], heatSources: 1 }
/** Minutes of wall time are rounded. */
const minuteH = 1 / 60

describe.each([
  { name: 'evenings', windows: week('18:30', 3), hours: 3, from: 18.5, to: 21.5, leastDated: 200 },
  { name: 'whole days', windows: week('09:00', 9), hours: 9, from: 9, to: 18, leastDated: 350 },
])('each bundled transformation in $name', ({ windows, hours, from, to, leastDated }) => {
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

  it('is dated in the window that is said to do, and not in one half an hour shorter', () => {
    const undated = all.filter(({ days }) => days.finishDate === null)
    const inWeek = (id: string, own: typeof windows) =>
      daysOf({ library, steps: [chargedStep({ transformation: id })], windows: own, ...settings }).finishDate
    const helped = undated.filter(({ days }) => days.wouldDo !== null)
    expect(helped.length).toBeGreaterThan(undated.length / 2)
    for (const { transformation, days } of helped.filter((_, i) => i % 10 === 0)) {
      const { weekday, hours: would, from: begins } = days.wouldDo!
      const rest = windows.filter(window => window.weekday !== weekday)
      expect(inWeek(transformation.id, [...rest, { weekday, from: begins, hours: would }])).not.toBeNull()
      if (would - 0.5 <= hours) continue
      for (const day of windows) {
        const others = windows.filter(window => window.weekday !== day.weekday)
        expect(inWeek(transformation.id, [...others, { weekday: day.weekday, from: begins, hours: would - 0.5 }])).toBeNull()
      }
    }
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

/** Whole plans: how often the search proves, within its usual work, that nothing ends earlier. */
describe('the calendar of a plan', () => {
  const { settings: evenings, waysIn } = demoParts()
  const wholeDays = { ...evenings, windows: evenings.windows.map(window => ({ ...window, from: '09:00', hours: 8 })) }
  const calendarOf = (settings: Settings, start: string, massG: number, goals: readonly Goal[]): 'proven' | 'found' | 'undated' => {
    const plan = benzoinPlan(goals, { settings, start: { material: start, massG } })
    const { notes, booked, finishDate } = daysOf({ library, steps: reckoned(library, plan).toRun, ...settings })
    if (finishDate === null || booked.length === 0) return 'undated'
    return notes.some(note => note.includes('not proven')) ? 'found' : 'proven'
  }
  const routes = defaultRoutes(library, 4)

  it('is proven for the demo in its evenings', () => {
    const [{ start, goals }] = waysIn as [(typeof waysIn)[number]]
    const planned = goals.map(({ target, amount, steps }): Goal => {
      const route = routeOf(library, start.material, target, steps ?? [])
      if (!route.ok) throw new Error(`no route to ${target}`)
      return { target, amount, route: route.value }
    })
    expect(calendarOf(evenings, start.material, start.massG, planned)).toBe('proven')
  })

  it.each([
    { massG: 24, part: 0.95 },
    // Many batches, one after the other in what vessels there are.
    { massG: 100, part: 0.9 },
  ])(
    'is proven for nearly all bundled routes of two to four steps from $massG g that have a date at all',
    ({ massG, part }) => {
      const found = [2, 3, 4].flatMap(count => {
        const long = routes.filter(r => r.steps.length === count)
        return Array.from({ length: 20 }, (_, i) => long[Math.floor((i * long.length) / 20)]!)
      })
      const calendars = found.map(route => calendarOf(wholeDays, route.start, massG, [{ target: route.target, amount: rest, route }]))
      const dated = calendars.filter(one => one !== 'undated')
      expect(dated.length).toBeGreaterThanOrEqual(40)
      expect(dated.filter(one => one === 'proven').length / dated.length).toBeGreaterThanOrEqual(part)
    },
    30_000,
  )
})
