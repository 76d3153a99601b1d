import { describe, expect, it } from 'vitest'
import { daysKept, daysTogether } from '../../../../core/hazards/kept.ts'
import { timingOf } from '../../../../core/plan/timing.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'

const booked = (step: string, kind: 'hands' | 'stand', startH: number, endH: number, end: string) => ({
  step,
  batch: 1,
  do: kind,
  kind,
  startH,
  endH,
  start: null,
  end,
  window: null,
})
const first = chargedStep({
  transformation: 'first',
  number: '1',
  makes: 'middle',
  charges: [chargedLine({ material: 'acid', supply: 'bought', massG: 1 }), chargedLine({ material: 'water', supply: 'free', massG: 1 })],
  goesTo: [{ step: 'second', goal: 0, massG: 1 }],
})
const second = chargedStep({
  transformation: 'second',
  number: '2',
  makes: 'product',
  charges: [
    chargedLine({ material: 'middle', supply: 'made', massG: 1 }),
    chargedLine({ material: 'solvent', supply: 'bought', massG: 1 }),
  ],
  goesTo: [{ step: null, goal: 0, massG: 1 }],
})
// Two evenings a day apart, each with a night of drying behind it.
const days = {
  booked: [
    booked('first', 'hands', 0, 3, '2026-12-01T21:30'),
    booked('first', 'stand', 3, 24, '2026-12-02T18:30'),
    booked('second', 'hands', 48, 51, '2026-12-03T21:30'),
    booked('second', 'stand', 51, 72, '2026-12-04T18:30'),
  ],
}

describe('days of storage', () => {
  const timing = timingOf([first, second], days)
  it('count from the first set-up for what is bought, from its making for what is made', () => {
    expect([...timing.kept]).toEqual([
      ['acid', { fromH: 0, toH: 24 }],
      ['middle', { fromH: 24, toH: 72 }],
      ['solvent', { fromH: 0, toH: 72 }],
      ['product', { fromH: 72, toH: 72 }],
    ])
    expect(['acid', 'middle', 'solvent', 'product'].map(id => daysKept(timing, id))).toEqual([1, 2, 3, 1])
  })
  it('of two together are those of the overlap', () => {
    expect(daysTogether(timing, ['acid'], ['solvent'])).toBe(1)
    expect(daysTogether(timing, ['middle'], ['solvent', 'acid'])).toBe(2)
    expect(daysTogether(timing, ['acid'], ['product'])).toBe(0)
  })
  it('are not known where a step has no place on the calendar', () => {
    const open = timingOf([first, second], { booked: days.booked.slice(0, 2) })
    expect(daysKept(open, 'solvent')).toBeNull()
    expect(daysTogether(open, ['acid'], ['solvent'])).toBeNull()
    expect(daysTogether(null, ['acid'], ['solvent'])).toBeNull()
  })
  it('put the waste of a step on the day on which hands last worked on it', () => {
    expect([...timing.workedUp]).toEqual([
      ['1', ['2026-12-01']],
      ['2', ['2026-12-03']],
    ])
  })
  it('and where a step runs in batches, on the day of each', () => {
    const again = [...days.booked, { ...booked('first', 'hands', 24, 27, '2026-12-02T21:30'), batch: 2 }]
    expect(timingOf([first, second], { booked: again }).workedUp.get('1')).toEqual(['2026-12-01', '2026-12-02'])
  })
})
