import { describe, expect, it } from 'vitest'
import { type DaysInput, daysOf } from '../../../../core/days/calendar.ts'
import type { Task, Transformation } from '../../../../core/library/transformation.ts'
import type { ChargedStep } from '../../../../core/route/charged.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const hands = (hours: number, waitUpToH = 60): Task => ({ do: `hands ${hours}`, kind: 'hands', hours, waitUpToH })
const watch = (hours: number, waitUpToH = 60, splits = false): Task => ({ do: `watch ${hours}`, kind: 'watch', hours, waitUpToH, splits })
const stand = (hours: number, waitUpToH = 672, reaction = false): Task => ({
  do: `stand ${hours}`,
  kind: 'stand',
  hours,
  waitUpToH,
  reaction,
})
const step = (id: string, tasks: readonly Task[], own: Partial<Transformation> = {}) =>
  transformation({
    id,
    tasks: [...tasks],
    elapsedHours: tasks.reduce((sum, t) => sum + t.hours, 0),
    holdPoint: 'weeks',
    temperatureC: [20, 25],
    ...own,
  })
const evenings = [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: '18:30', hours: 3 }))

/** 2026-11-30 was a Monday. */
const plan = (transformations: readonly Transformation[], steps: readonly ChargedStep[], own: Partial<DaysInput> = {}) =>
  daysOf({
    library: smallLibrary(
      [
        material({ id: 'a' }),
        material({ id: 'b', buyable: true, hazards: { codes: [], signalWord: 'none', from: 'safety data sheet' } }),
        material({ id: 'oil', form: 'liquid' }),
        material({ id: 'unheard-of', buyable: true, hazards: { codes: [], signalWord: 'none' } }),
      ],
      transformations,
    ),
    steps,
    windows: evenings,
    daysOff: [],
    deliveryDays: 0,
    startDate: '2026-11-30',
    vessels: [],
    heatSources: null,
    ...own,
  })
const to = (next: string) => ({ goesTo: [{ step: next, goal: null, massG: 1 }] })

describe('days', () => {
  it('lets a step wait for one whose second product it takes, and holds it to no hold point of that one', () => {
    const transformations = [step('one', [hands(2)], { holdPoint: 'never' }), step('two', [hands(2)])]
    const steps = [chargedStep({ transformation: 'one' }), chargedStep({ transformation: 'two', number: '2' })]
    const startOf = (days: ReturnType<typeof plan>, id: string) => days.booked.find(b => b.step === id)!.startH
    const free = plan(transformations, [steps[1]!, steps[0]!])
    expect(startOf(free, 'two')).toBeLessThan(startOf(free, 'one'))
    // An evening is 3 h: the second stands on the next day, beyond a hold point of none, which is the main product's.
    const waits = plan(transformations, steps, { after: new Map([['two', ['one']]]) })
    expect(startOf(waits, 'two') - startOf(waits, 'one')).toBe(24)
    expect(waits.tooLong).toEqual([])
  })

  it('puts hands and watch into the evenings and lets standing span them', () => {
    const days = plan([step('one', [hands(1), watch(1.5), stand(20), hands(0.5)])], [chargedStep({ transformation: 'one' })])
    expect(days.booked.map(b => [b.do, b.start, b.end, b.window])).toEqual([
      ['hands 1', '2026-11-30T18:30', '2026-11-30T19:30', 0],
      ['watch 1.5', '2026-11-30T19:30', '2026-11-30T21:00', 0],
      ['stand 20', '2026-11-30T21:00', '2026-12-01T17:00', null],
      ['hands 0.5', '2026-12-01T18:30', '2026-12-01T19:00', 1],
    ])
    expect(days).toMatchObject({
      windowsUsed: 2,
      startDate: '2026-11-30',
      finishDate: '2026-12-01',
      handsOnH: 1.5,
      elapsedH: 23,
      tooLong: [],
    })
    expect(days.unattended).toEqual([{ step: 'one', do: 'stand 20', hours: 20, heated: false }])
  })

  it('begins late enough that nothing waits too long', () => {
    // 20 h of standing that may wait 1 h: begun at the very end of an evening it ends at 17:30, an hour before the next.
    const days = plan([step('one', [hands(1, 0), stand(20, 1), hands(1)])], [chargedStep({ transformation: 'one' })])
    expect(days.booked[0]).toMatchObject({ start: '2026-11-30T20:30', end: '2026-11-30T21:30' })
    expect(days.booked[2]).toMatchObject({ start: '2026-12-01T18:30' })
  })

  it('keeps off the days off and waits for the delivery', () => {
    const days = plan(
      [step('one', [hands(1)])],
      [chargedStep({ transformation: 'one', charges: [chargedLine({ material: 'a', massG: 1 })] })],
      {
        deliveryDays: 3,
        daysOff: ['2026-12-03', '2026-12-04'],
      },
    )
    expect(days.booked[0]!.start).toBe('2026-12-07T18:30')
    const onTheShelf = plan(
      [step('one', [hands(1)])],
      [chargedStep({ transformation: 'one', charges: [chargedLine({ material: 'a', massG: 1 })] })],
      {
        deliveryDays: 3,
        toBuy: new Set(),
      },
    )
    expect(onTheShelf.booked[0]!.start).toBe('2026-11-30T18:30')
  })

  it('multiplies hands, not the standing, by the batches', () => {
    const days = plan([step('one', [hands(1), stand(10)])], [chargedStep({ transformation: 'one', batches: 3 })])
    expect(days.handsOnH).toBe(3)
    expect(days.booked.filter(b => b.kind === 'hands').map(b => b.start)).toEqual([
      '2026-11-30T18:30',
      '2026-11-30T19:30',
      '2026-11-30T20:30',
    ])
    expect(days.booked.at(-1)!.end).toBe('2026-12-01T07:30')
  })

  it('does one batch after the other where there is one vessel, and both at once where there are two', () => {
    const tasks = [hands(0.5, 4), watch(1, 4), hands(0.5)]
    const of = (count: number) =>
      plan([step('one', tasks)], [chargedStep({ transformation: 'one', batches: 2, volumeMl: { perBatch: 100, assumed: false } })], {
        vessels: [
          { kind: 'flask', volumeMl: 250, count },
          { kind: 'flask', volumeMl: 100, count: 5 },
          { kind: 'beaker', volumeMl: 1000, count: 5 },
        ],
      })
    expect(of(1).booked.at(-1)!.end).toBe('2026-12-01T20:30')
    // Hands 0.5 + 0.5, the first watch ends at 20:00, hands 0.5; the second ends at 20:30, hands 0.5.
    expect(of(2).booked.at(-1)!.end).toBe('2026-11-30T21:00')
  })

  it('shares the heat sources', () => {
    const of = (heatSources: number | null) =>
      plan(
        [step('one', [watch(1.5)], { temperatureC: [100, 110] }), step('two', [watch(1.5)], { temperatureC: [100, 110] })],
        [chargedStep({ transformation: 'one' }), chargedStep({ transformation: 'two' })],
        { heatSources },
      ).booked.map(b => b.start)
    expect(of(null)).toEqual(['2026-11-30T18:30', '2026-11-30T18:30'])
    expect(of(1)).toEqual(['2026-11-30T18:30', '2026-11-30T20:00'])
  })

  it('overlaps waiting with another branch', () => {
    const days = plan(
      [step('one', [hands(0.5), stand(2), hands(0.5)]), step('two', [hands(1.5)])],
      [chargedStep({ transformation: 'one' }), chargedStep({ transformation: 'two' })],
    )
    expect(days.windowsUsed).toBe(1)
    expect(days.booked.at(-1)!.end).toBe('2026-11-30T21:30')
  })

  it('holds the hold points: what keeps hours is used the same evening', () => {
    const days = plan(
      [step('one', [hands(1)], { holdPoint: 'hours' }), step('two', [hands(2.5)])],
      [chargedStep({ transformation: 'one', ...to('two') }), chargedStep({ transformation: 'two' })],
    )
    expect(days.tooLong).toEqual([{ step: 'two', do: 'hands 2.5', hours: 3.5, why: 'keeps', keeps: [{ step: 'one', hours: 4 }] }])
    // By hand: 1 h and 2.5 h in one window of 3.5 h.
    expect(days.wouldDo).toEqual({ weekday: 1, from: '18:30', hours: 3.5 })
    expect(days).toMatchObject({ windowsUsed: null, finishDate: null })
    const fits = plan(
      [step('one', [hands(1)], { holdPoint: 'hours' }), step('two', [hands(2)])],
      [chargedStep({ transformation: 'one', ...to('two') }), chargedStep({ transformation: 'two' })],
    )
    expect(fits).toMatchObject({ windowsUsed: 1, finishDate: '2026-11-30', tooLong: [] })
  })

  it.each([
    ['a solid one can buy', 'b', 672],
    ['anything else', 'oil', 4],
    // Nobody has said that it is stable: unknown is not safe.
    ['a solid of unknown hazards', 'unheard-of', 4],
  ])('derives a hold point that is not stated: %s', (_, mainProduct, hours) => {
    const { holdPoint, ...without } = step('one', [hands(1)], { mainProduct })
    expect(holdPoint).toBe('weeks')
    const days = plan([without], [chargedStep({ transformation: 'one' })])
    expect(days.notes).toEqual([expect.stringMatching(new RegExp(`derived, not from a source \\(${hours} h\\)`))])
  })

  it('names a step longer than every window with the hours it needs, and invents no date', () => {
    const days = plan(
      [step('one', [hands(0.5, 0), watch(4, 60)]), step('two', [hands(1)]), step('apart', [hands(1)])],
      [
        chargedStep({ transformation: 'one', ...to('two') }),
        chargedStep({ transformation: 'two' }),
        chargedStep({ transformation: 'apart' }),
      ],
    )
    expect(days.tooLong).toEqual([{ step: 'one', do: 'watch 4', hours: 4, why: 'longer', keeps: [] }])
    // Half an hour at hand, waiting for nothing, then 4 h.
    expect(days.wouldDo).toEqual({ weekday: 1, from: '18:30', hours: 4.5 })
    expect(days).toMatchObject({ windowsUsed: null, finishDate: null })
    // What does not depend on it is dated all the same.
    expect(days.booked.map(b => b.step)).toEqual(['apart'])
    expect(days.notes).toContainEqual(expect.stringMatching(/two cannot be dated/))
  })

  it('names the whole stretch where no single task is too long', () => {
    const days = plan([step('one', [hands(1, 0), watch(2.5, 60)])], [chargedStep({ transformation: 'one' })])
    expect(days.tooLong).toEqual([{ step: 'one', do: 'hands 1', hours: 3.5, why: 'longer', keeps: [] }])
    expect(days.wouldDo).toMatchObject({ hours: 3.5 })
  })

  it('names standing that ends when nobody can be there soon enough', () => {
    // 10 h from 21:30 at the latest: ends in the night, and may wait 4 h. Standing and the hands after it would need one window of 11 h.
    const days = plan([step('one', [hands(1, 0), stand(10, 4), hands(1)])], [chargedStep({ transformation: 'one' })])
    expect(days.tooLong).toEqual([{ step: 'one', do: 'hands 1', hours: 11, why: 'apart', keeps: [] }])
    // By hand: all 12 h on one day. Next day's window would have to open at 11:30, when what was left at 21:30 has waited its 4 h.
    expect(days.wouldDo).toEqual({ weekday: 1, from: '12:00', hours: 12 })
  })

  it('is proven for many batches in one vessel, which go one after the other', () => {
    const days = plan(
      [step('one', [hands(1), stand(20), hands(0.5)], { vesselKind: 'flask' })],
      [chargedStep({ transformation: 'one', batches: 24, volumeMl: { perBatch: 100, assumed: false } })],
      { vessels: [{ kind: 'flask', volumeMl: 250, count: 1 }] },
    )
    // By hand: one a weekday, each emptied on the next: begun on 24 weekdays from Monday 30 November, the last emptied on the 25th.
    expect(days.finishDate).toBe('2027-01-01')
    expect(days.notes).toEqual([])
  })

  it('names every product that would have to keep longer, where any one of them would help', () => {
    // Evenings are 3 h and a day apart: 1.5 h, 1.5 h and 1.5 h with 18 h and 4 h between cannot all lie in one.
    const chain = [
      step('one', [hands(1.5)], { holdPoint: 'overnight' }),
      step('two', [hands(1.5)], { holdPoint: 'hours' }),
      step('three', [hands(1.5)]),
    ]
    const charged = [
      chargedStep({ transformation: 'one', ...to('two') }),
      chargedStep({ transformation: 'two', ...to('three') }),
      chargedStep({ transformation: 'three' }),
    ]
    const keeps = [
      { step: 'one', hours: 18 },
      { step: 'two', hours: 4 },
    ]
    const days = plan(chain, charged)
    expect(days.tooLong).toMatchObject([{ step: 'three', why: 'keeps', keeps }])
    expect(days.wouldDo).toEqual({ weekday: 1, from: '18:30', hours: 4.5 })
  })

  it('tells no window that would do where none does, and the next longer one where the first is too short', () => {
    expect(plan([step('one', [watch(25)])], [chargedStep({ transformation: 'one' })]).wouldDo).toBeNull()
    expect(plan([step('one', [watch(7)])], [chargedStep({ transformation: 'one' })]).wouldDo).toEqual({
      weekday: 1,
      from: '17:00',
      hours: 7,
    })
    expect(plan([step('one', [watch(3)])], [chargedStep({ transformation: 'one' })]).wouldDo).toBeNull()
  })

  it('parts what may be stopped and taken up again over the windows', () => {
    const days = plan([step('one', [watch(7, 60, true)])], [chargedStep({ transformation: 'one' })])
    expect(days.booked.map(b => [b.start, b.end, b.window])).toEqual([
      ['2026-11-30T18:30', '2026-11-30T21:30', 0],
      ['2026-12-01T18:30', '2026-12-01T21:30', 1],
      ['2026-12-02T18:30', '2026-12-02T19:30', 2],
    ])
  })

  it('counts a step without tasks as hands, at the longest', () => {
    const { tasks, ...bare } = step('one', [hands(2)])
    expect(tasks).toBeDefined()
    const days = plan([bare], [chargedStep({ transformation: 'one' })])
    expect(days.booked).toMatchObject([{ kind: 'hands', startH: 0, endH: 2 }])
    expect(days.handsOnH).toBeNull()
    expect(days.notes).toContainEqual(expect.stringMatching(/at the longest/))
  })

  it('gives hours only without windows', () => {
    const days = plan([step('one', [hands(5), stand(10), hands(1)])], [chargedStep({ transformation: 'one' })], { windows: [] })
    expect(days).toMatchObject({ windowsUsed: null, startDate: null, finishDate: null, elapsedH: 16, tooLong: [] })
    expect(days.booked.map(b => [b.startH, b.endH, b.start, b.window])).toEqual([
      [0, 5, null, null],
      [5, 15, null, null],
      [15, 16, null, null],
    ])
    expect(days.unattended.map(u => u.hours)).toEqual([10])
  })

  it('counts windows without a date too, and takes an impossible date for none', () => {
    const tasks = [hands(2.5), stand(1), hands(2.5)]
    for (const startDate of [null, '2026-02-30']) {
      const days = plan([step('one', tasks)], [chargedStep({ transformation: 'one' })], { startDate })
      expect(days).toMatchObject({ windowsUsed: 2, startDate: null, finishDate: null })
      expect(days.booked[0]).toMatchObject({ startH: 0, start: null })
    }
  })

  it('flags what reacts warm with nobody there', () => {
    const days = plan([step('one', [hands(1), stand(20, 60, true)], { temperatureC: [60, 65] })], [chargedStep({ transformation: 'one' })])
    expect(days.unattended).toEqual([{ step: 'one', do: 'stand 20', hours: 20, heated: true }])
  })

  it('tells the longest chain, hands unlimited', () => {
    const days = plan(
      [step('one', [stand(5)]), step('short', [hands(1)]), step('two', [hands(2)])],
      [
        chargedStep({ transformation: 'one', ...to('two') }),
        chargedStep({ transformation: 'short', ...to('two') }),
        chargedStep({ transformation: 'two' }),
      ],
    )
    expect(days).toMatchObject({ elapsedH: 7, longestChain: ['one', 'two'] })
  })

  it('is the same however often it is asked', () => {
    const transformations = ['one', 'two', 'three'].map((id, index) => step(id, [hands(1), watch(1), stand(5), hands(1 + index / 2)]))
    const steps = transformations.map(t => chargedStep({ transformation: t.id, batches: 2 }))
    expect(plan(transformations, steps)).toEqual(plan(transformations, steps))
  })
})
