import { describe, expect, it } from 'vitest'
import { sharedMeetings } from '../../../../core/report/hazard-sheet.ts'
import { meetingRows } from '../../../../core/report/meeting-rows.ts'
import { quenchVesselText } from '../../../../core/report/quench-vessel.ts'
import { degrees, sentence } from '../../../../core/report/words.ts'
import { allReported } from './demo-plans.ts'

const plans = await allReported()

describe.each(plans)('rows of meetings of $title', ({ library, evaluation }) => {
  it.each(['storage', 'waste'] as const)('in %s lose no pair, and say what to do once a row', where => {
    const shared = sharedMeetings(evaluation.hazards.meetings.filter(one => one.where === where))
    const rows = meetingRows(library, shared)
    const text = rows.map(row => `${row.head} ${row.text}`).join('\n')
    for (const { meeting } of shared) expect(text).toContain(degrees(meeting.title).replace(/\.$/, ''))
    for (const { head, text: said } of rows) {
      const does = [...new Set(shared.map(one => sentence(one.meeting.do)))].filter(one => `${head} ${said}`.includes(one))
      expect(does.length).toBeGreaterThanOrEqual(1)
      for (const one of does) expect(`${head} ${said}`.split(one).length - 1).toBe(1)
    }
    expect(rows.filter(row => row.head.startsWith('Note: One cabinet is enough')).length).toBeLessThanOrEqual(1)
  })

  it('size a quench vessel that stays a third empty, for every step that is quenched', () => {
    for (const step of evaluation.steps) {
      const text = quenchVesselText(step, Math.max(1, step.batches))
      if (!step.charges.some(line => line.at === 'quench')) expect(text).toBeNull()
      const match = text === null ? null : /beaker of (\d+)\s(m?L).*about ([\d.]+)\s(m?L)/.exec(text)
      if (match) {
        const [size, holds] = [Number(match[1]) * (match[2] === 'L' ? 1000 : 1), Number(match[3]) * (match[4] === 'L' ? 1000 : 1)]
        expect(holds / size).toBeLessThan(0.68)
      }
    }
  })
})

it('lophine, neutralised: 90 mL poured into 225 mL of water with 105 mL of ammonia, a third free', () => {
  const step = plans[0]!.evaluation.steps.find(one => one.makes === 'lophine')!
  // By hand: 420 mL want 630 mL, so that 600 mL is too small and one litre the next.
  expect(quenchVesselText(step, 1)).toMatch(/^a beaker of 1\sL for the quench, which then holds about 4\d\d\smL$/)
})

it('degrees have their sign, and a carbon-13 does not', () => {
  expect(sentence('cool to 4 C, then 0 C')).toBe('Cool to 4\u00a0°C, then 0\u00a0°C.')
  expect(degrees('dry at 60-65 C and -5 C')).toBe('dry at 60-65\u00a0°C and -5\u00a0°C')
  expect(degrees('read by 13 C-NMR; 12 Cu')).toBe('read by 13 C-NMR; 12 Cu')
})
