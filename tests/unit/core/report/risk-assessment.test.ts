import { describe, expect, it } from 'vitest'
import { bottleLabels, wasteLabels } from '../../../../core/report/bottle-labels.ts'
import { emergencyOf } from '../../../../core/report/emergency.ts'
import { noticesOf } from '../../../../core/report/notices.ts'
import { riskRows } from '../../../../core/report/risk-assessment.ts'
import { sentence } from '../../../../core/report/words.ts'
import { allReported } from './demo-plans.ts'

const plans = await allReported()

describe.each(plans)('the risk assessment of $title', ({ library, evaluation }) => {
  const rows = riskRows(library, evaluation)

  it('speaks for every material made and used, once as a material', () => {
    const told = rows.filter(row => !row.subject.includes('given off')).flatMap(row => row.materials)
    expect([...told].sort()).toEqual(evaluation.hazards.materials.map(one => one.material).sort())
  })

  it('begins with what nobody has data for, and leaves its emergency blank rather than guessed', () => {
    const unknown = evaluation.hazards.unknown
    if (unknown.length === 0) return
    expect([...rows[0]!.materials].sort()).toEqual([...unknown].sort())
    expect(rows[0]!.control).toContain('safety data sheets')
    expect(rows[0]!.emergency).toBe('')
  })

  it('has a row for every gas and every step with a danger of its own', () => {
    for (const gas of evaluation.hazards.gas)
      expect(rows.some(row => row.materials.includes(gas.compound) && row.hazard.includes(`step ${gas.step}`))).toBe(true)
    const own = rows.filter(row => row.ofStep === true)
    for (const { step, notes } of evaluation.hazards.steps) {
      for (const note of notes.map(sentence)) {
        const told = own.filter(row => row.hazard.includes(note))
        expect(
          told.some(row => row.subject.split(/[\s,]+/).includes(step)),
          note,
        ).toBe(true)
      }
    }
    // Told once each: no two rows speak for the same steps.
    expect(new Set(own.map(row => row.subject)).size).toBe(own.length)
  })

  it('tells each thing that must not meet in a step once, with the steps and what to do', () => {
    const grave = evaluation.hazards.meetings.filter(one => one.where === 'step' && one.severity !== 'note')
    for (const meeting of grave) {
      const told = rows.filter(row => row.subject.toLowerCase().includes(meeting.title.toLowerCase()) && row.who.includes(meeting.place))
      expect(told.length, meeting.title).toBeGreaterThan(0)
      expect(told.every(row => row.control !== '')).toBe(true)
    }
  })

  it('labels every compound made, and every stream of waste', () => {
    const labels = bottleLabels(library, evaluation)
    const made = [...evaluation.steps.map(step => step.makes), ...evaluation.coProducts.map(one => one.compound)]
    expect(labels.map(label => label.material).sort()).toEqual(made.sort())
    expect(labels.filter(label => label.hazard === null)).toEqual([])
    expect(wasteLabels(evaluation).map(label => label.stream.stream)).toEqual(evaluation.hazards.waste.map(one => one.stream))
  })

  it('has a notice for whatever the calendar leaves alone', () => {
    const notices = noticesOf(library, evaluation)
    for (const alone of evaluation.days.unattended) {
      const step = evaluation.steps.find(one => one.transformation === alone.step || one.number === alone.step)!
      const mine = notices.filter(notice => notice.step === step.number && notice.what.toLowerCase().includes(alone.do.toLowerCase()))
      expect(mine.length, alone.do).toBeGreaterThan(0)
      expect(mine.every(notice => notice.heated === alone.heated)).toBe(true)
      expect(mine[0]!.title.includes('not heated')).toBe(!alone.heated)
    }
  })
})

describe('what to do in an emergency', () => {
  it('has words for every response statement that the labels of the tables may carry', () => {
    const codes = [...new Set(Object.values(plans[0]!.tables.benchPrecautions).flat())].filter(code => code.startsWith('P3'))
    expect(codes.length).toBeGreaterThan(10)
    expect(codes.filter(code => emergencyOf([{ code, statement: '' }]) === '')).toEqual([])
  })

  it('says nothing where the label says nothing', () => {
    expect(emergencyOf([])).toBe('')
    expect(emergencyOf([{ code: 'P280', statement: 'Wear protective gloves' }])).toBe('')
  })

  // UN GHS, annex 3: P301+P330+P331 goes with H314 and forbids vomiting; P302+P352 washes with water.
  it('keeps what the statement asks for', () => {
    expect(emergencyOf([{ code: 'P301+P330+P331', statement: '' }])).toMatch(/rinse mouth.*not make vomit/i)
    expect(emergencyOf([{ code: 'P302+P352', statement: '' }])).toMatch(/wash/i)
  })
})
