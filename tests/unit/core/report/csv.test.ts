import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import type { Library } from '../../../../core/library/library.ts'
import { marks } from '../../../../core/library/mark.ts'
import { planCsv } from '../../../../core/report/csv.ts'
import { csvColumns } from '../../../../core/report/csv-columns.ts'
import { allReported } from './demo-plans.ts'

const plans = await allReported()
type Row = Readonly<Record<(typeof csvColumns)[number], string>>

function rowsOf(text: string): readonly Row[] {
  const { data, errors, meta } = Papa.parse<Row>(text.replace(/^\ufeff/, ''), { header: true, skipEmptyLines: true })
  expect(errors).toEqual([])
  expect(meta.fields).toEqual([...csvColumns])
  return data
}

describe.each(plans)('the CSV of $title', ({ library, plan, evaluation }) => {
  const text = planCsv(library, plan, evaluation)
  const rows = rowsOf(text)
  const section = (name: string): readonly Row[] => rows.filter(row => row.section === name)

  it('is RFC 4180 with a byte order mark: CRLF, every line as many cells as the head', () => {
    expect(text.startsWith('\ufeffsection,')).toBe(true)
    expect(text.endsWith('\r\n')).toBe(true)
    expect(text.replaceAll('\r\n', '').includes('\r')).toBe(false)
  })

  it('gives the charges of the evaluation back at full precision', () => {
    const steps = [...evaluation.steps].sort((a, b) => (a.number < b.number ? -1 : 1))
    const lines = steps.flatMap(step => step.charges.map(line => ({ number: step.number, line })))
    expect(section('charge').length).toBe(lines.length)
    for (const [at, { number, line }] of lines.entries()) {
      const row = section('charge')[at]!
      expect([row.step, row.id, row.role]).toEqual([number, line.material, line.role])
      expect(row.amount === '' ? null : Number(row.amount)).toBe(line.massG ?? line.volumeMl)
      expect(row.mol === '' ? null : Number(row.mol)).toBe(line.amountMol)
    }
  })

  it('tells of each charge, each price and each other figure how sure it is and by whose word', () => {
    const marked = [...section('charge'), ...section('price'), ...section('figure')]
    expect(section('price').length).toBe(evaluation.shopping.reduce((sum, line) => sum + line.packs.length, 0))
    expect(new Set(section('figure').map(row => row.id))).toContain('temperature')
    for (const row of marked) {
      expect(marks, `${row.section} ${row.id}`).toContain(row.mark)
      if (row.mark === 'seen' || row.mark === 'invented') expect(row.source, `${row.section} ${row.id}`).not.toBe('')
    }
    for (const row of section('price')) expect([row.mark, row.source]).toEqual(['invented', 'made up for the demonstration'])
  })

  it('never writes an unknown amount or price as a figure', () => {
    for (const [at, line] of evaluation.shopping.entries()) {
      const row = section('shopping')[at]!
      expect(row.id).toBe(line.material)
      expect(row.amount).toBe(line.buy.amount === null ? '' : String(line.buy.amount))
      expect(row.cost === '').toBe(line.costMinor === null)
      if (line.costMinor === null) expect(row.state).toBe('price unknown')
    }
  })

  it('adds up to the total of the basket', () => {
    const orders = section('order').reduce((sum, row) => sum + Math.round(Number(row.cost) * 100), 0)
    expect(orders).toBe(evaluation.basket!.totalMinor)
    expect(Math.round(Number(section('total')[0]!.cost) * 100)).toBe(evaluation.basket!.totalMinor)
    expect(section('total')[0]!.state).toBe(evaluation.basket!.complete ? 'complete' : 'incomplete')
  })

  it('names the unknown as unknown and carries the cautions', () => {
    expect(
      section('hazard')
        .filter(row => row.state === 'unknown')
        .map(row => row.id),
    ).toEqual(evaluation.hazards.unknown)
    expect(section('caution')[0]!.note).toContain('Do not work alone')
  })
})

describe('the CSV', () => {
  // OWASP, "CSV Injection": a cell that begins with = + - @, a tab or a carriage return may run as a formula; from memory.
  it.each(['=HYPERLINK("http://a.example","b")', '+1+2', '-2+3', '@SUM(A1)', '\t=1'])('disarms the name %s', name => {
    const { library, plan, evaluation } = plans[0]!
    const hostile: Library = {
      ...library,
      materials: new Map([...library.materials].map(([id, material]) => [id, id === 'benzil' ? { ...material, name } : material])),
    }
    const named = rowsOf(planCsv(hostile, plan, evaluation)).filter(row => row.id === 'benzil')
    expect(named.length).toBeGreaterThan(0)
    for (const row of named) expect(row.name).toBe(`'${name}`)
  })
})
