import { describe, expect, it } from 'vitest'
import { prepared } from '../../../support/reader.ts'

const read = (line: string) => prepared('2 benzaldehyde -> benzoin', 'benzaldehyde 10 g', line)

describe('hours of a line', () => {
  // Beside each the arithmetic that it is.
  it.each([
    ['Heat for two hours, then cool for 10 min', 2 + 10 / 60],
    ['Reflux for half an hour', 0.5],
    ['Heat an hour and a half', 1.5],
    ['Heat for one and a half hours', 1.5],
    ['boil for a quarter of an hour', 0.25],
    ['Stir for twenty-four hours', 24],
    ['Reflux two and one-half hours', 2.5],
    ['Reflux 2-1/2 h', 2.5],
    ['let stand for an hour or two', 1.5],
    ['a half-hour reflux', 0.5],
    ['leave for two to three days', 2.5 * 24],
    ['leave for 2 more hours', 2],
    ['Heat 1 h 30 min', 1.5],
    ['Heat 1h30', 1.5],
    ['Heat 1:30 h', 1.5],
    ['stir for 90 seconds', 90 / 3600],
    ['swirl every 5 min for 1 h', 1],
    ['Let stand overnight (16 h)', 16],
    ['wash three times with 10 mL water, let stand 5 min', 5 / 60],
    ['shake 3 x 10 min', 0.5],
  ])('%s', (line, hours) => {
    const { transformation, problems } = read(line)
    expect(transformation.elapsedHours).toBeCloseTo(hours, 3)
    expect(transformation.timesBasis).toBe('source')
    expect(problems.map(one => one.code)).toEqual([])
  })
  it.each([
    ['Stir overnight, then 30 min at 60 °C', 'overnight', 0.5],
    ['leave over the weekend', 'weekend', undefined],
    ['stir for several hours', 'several hours', undefined],
    ['stir for umpteen minutes', 'umpteen minutes', undefined],
    ['Repeat three times: heat 5 min, cool 5 min', 'three times', undefined],
    ['shake 5 min every hour for 6 h', 'every hour', undefined],
    ['shake twice a day for a week', 'twice a day', undefined],
    ['boil 1h5', '1h5', undefined],
  ])("%s is asked about, and the hours are not the source's", (line, piece, hours) => {
    const { transformation, problems, notes } = read(line)
    expect(transformation.elapsedHours).toBe(hours)
    expect(transformation.timesBasis).toBe(hours === undefined ? undefined : 'estimate')
    expect(notes.find(note => note.startsWith('not in the hours'))).toContain(piece)
    const [problem] = problems.filter(one => one.code === 'time-not-counted')
    expect(problem!.what).toContain(piece)
    const cured = /"([^"]+)"/.exec(problem!.cure)![1]!
    expect(read(cured).transformation.timesBasis, cured).toBe('source')
  })
  it('tells of a time that stands beside what came out', () => {
    const { transformation, notes } = prepared('2 benzaldehyde -> benzoin', 'benzaldehyde 10 g', 'stir 1 h', 'gave 5.2 g after 3 h')
    expect(transformation).toMatchObject({ elapsedHours: 1, timesBasis: 'estimate' })
    expect(notes.join()).toContain('not in the hours: "gave 5.2 g after 3 h"')
  })
})

describe('temperatures of a line', () => {
  it.each([
    ['petroleum ether 40-60 °C 20 mL', undefined],
    ['Extract with petroleum ether (40-60 °C, 3 x 20 mL)', undefined],
    ['recrystallise from 20 mL 60-80 °C petroleum ether', undefined],
    ['ligroin, b.p. 60-80 °C, 20 mL', undefined],
    ['benzil (95 °C mp) 5 g', undefined],
    ['dry overnight at 60 °C', undefined],
    ['warm with petroleum ether at 40 °C', [40, 40]],
    ['heat in ligroin to 60 °C', [60, 60]],
  ])('of what boils or melts so are none of the reaction: %s', (line, range) => {
    expect(read(line).transformation.temperatureC).toEqual(range)
  })
  it('are told to be a boiling range', () => {
    expect(read('petroleum ether 40-60 °C 20 mL').notes.join()).toContain('boiling range')
  })
})
