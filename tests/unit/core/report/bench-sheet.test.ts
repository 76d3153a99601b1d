import { describe, expect, it } from 'vitest'
import { benchSheetOf } from '../../../../core/report/bench-sheet.ts'
import { chargeAmountText } from '../../../../core/report/charge-amount.ts'
import { allReported, reported } from './demo-plans.ts'

const plans = await allReported()
const everyStep = plans.flatMap(one => one.evaluation.steps.map(step => ({ ...one, step, name: `${one.title}, step ${step.number}` })))

/** A printed amount as g or mL. */
function printed(text: string): number {
  const [, figure = '', unit = ''] = /^([\d.\u202f]+)\u00a0(\S+)$/.exec(text) ?? []
  const times = { kg: 1000, g: 1, mg: 0.001, µg: 1e-6, L: 1000, mL: 1, µL: 0.001 }[unit]
  if (times === undefined) throw new Error(`"${text}" is no amount`)
  return Number(figure.replaceAll('\u202f', '')) * times
}

describe.each(everyStep)('the bench sheet of $name', ({ library, evaluation, step }) => {
  const sheet = benchSheetOf(library, evaluation, step)

  it('prints every line that goes in, in the order vessel, quench, work-up', () => {
    const lines = step.charges.filter(line => line.supply !== 'free' || line.line !== null)
    expect(sheet.charge.map(row => row.material).sort()).toEqual(lines.map(line => line.material).sort())
    const order = sheet.charge.map(row => ['vessel', 'quench', 'workup'].indexOf(row.stage))
    expect(order).toEqual([...order].sort((a, b) => a - b))
  })

  it('prints one batch, and as many of them as are run make the charge', () => {
    for (const row of sheet.charge) {
      if (row.basis === 'open') continue
      const lines = step.charges.filter(line => line.material === row.material && line.at === row.stage && line.role === row.role)
      const each = printed(row.amount)
      // Printed to three figures at least and to 10 mg: half a last digit either way.
      const fits = lines.some(line =>
        [line.massG, line.volumeMl].some(
          whole => whole !== null && Math.abs(each * sheet.batches - whole) <= Math.max(0.006 * whole, 0.006 * sheet.batches),
        ),
      )
      expect(fits, `${row.material} ${row.amount} x ${sheet.batches}`).toBe(true)
      expect(row.inAll === null).toBe(sheet.batches < 2)
    }
  })

  it('pours what is liquid and weighs the rest, to three figures', () => {
    for (const line of step.charges) {
      // A measuring cylinder for liquids, a balance for the rest: common practice, no source.
      const text = chargeAmountText(library, library.transformations.get(step.transformation)!, line) ?? ''
      const liquid = ['liquid', 'solution'].includes(library.materials.get(line.material)!.form ?? '')
      if (liquid && line.volumeMl !== null && line.supply !== 'made' && line.supply !== 'start') expect(text).toMatch(/\d\u00a0(µL|mL|L)$/)
      expect(text.replace(/^0\.0*|\D/g, '').length, text).toBeLessThanOrEqual(Number(/^\d{4}/.test(text)) + 3)
      const row = sheet.charge.find(one => one.material === line.material && one.stage === line.at && one.role === line.role)
      if (row !== undefined && text !== '' && step.charges.filter(one => one.material === line.material).length === 1)
        expect(row.inAll ?? row.amount).toBe(text)
    }
  })

  it('holds what can hurt in it and nothing of other steps', () => {
    const inStep = new Set(evaluation.hazards.materials.filter(one => one.steps.includes(step.number)).map(one => one.material))
    expect(new Set(sheet.materials.map(one => one.material))).toEqual(inStep)
    for (const row of sheet.charge) expect(inStep.has(row.material)).toBe(true)
    expect(sheet.gas).toEqual(evaluation.hazards.gas.filter(gas => gas.step === step.number))
  })

  it('gives theory a batch, or says that there is none', () => {
    if (step.theoreticalG === null) expect(sheet.outlook[0]).toContain('no theoretical mass')
    else expect(sheet.theoryG! * step.batches).toBeCloseTo(step.theoreticalG, 9)
  })

  it('says where unscaled amounts stand in the words of the procedure', () => {
    const amounts = sheet.operations.some(text => /\d\s?(mL|g|L|kg|mg)\b/.test(text))
    const rescaled = Math.abs(step.scale / Math.max(1, sheet.batches) - 1) >= 0.02
    expect(sheet.operationsScale !== null).toBe(amounts && rescaled)
  })
})

describe('the bench sheet', () => {
  it('has seen batches, quenches, isolations, gases and unscaled words among its cases', () => {
    const sheets = everyStep.map(({ library, evaluation, step }) => benchSheetOf(library, evaluation, step))
    expect(sheets.length).toBeGreaterThanOrEqual(15)
    expect(sheets.some(one => one.batches > 1)).toBe(true)
    expect(sheets.some(one => one.charge.some(row => row.stage === 'quench'))).toBe(true)
    expect(sheets.some(one => one.theoryG === null)).toBe(true)
    expect(sheets.some(one => one.gas.length > 0)).toBe(true)
    expect(sheets.some(one => one.operationsScale !== null)).toBe(true)
  })

  it('tells a step that is done from one that is to do', async () => {
    const logged = await reported('Cinnamon bark to its oil and on', {
      with: plan => ({
        ...plan,
        log: [
          {
            id: 'a',
            step: 'extract-cinnamaldehyde-bark',
            date: '2026-12-07',
            batch: 1,
            chargedG: null,
            weighedG: 1.5,
            dampPercent: 0,
            purity: null,
            failed: false,
            note: '',
            replaces: null,
          },
        ],
      }),
    })
    const first = logged.evaluation.steps.find(step => step.number === '1')!
    const sheet = benchSheetOf(logged.library, logged.evaluation, first)
    expect(first.done).toBeTruthy()
    expect(`${sheet.title} ${sheet.done}`).toContain('1.50\u00a0g')
  })
})
