import type { Unit } from '../library/source.ts'
import type { Checked, Problem } from '../problem/problem.ts'
import { numberIn } from '../quantity/number.ts'
import { parseQuantity } from '../quantity/parse.ts'
import { dateIn, type MaterialCell } from './csv-cells.ts'
import { type Column, type CsvRead, type CsvRow, csvTable, csvText, type RefusedRow } from './csv-table.ts'
import type { ShelfItem } from './shelf.ts'

const columns: readonly Column[] = [
  { name: 'material', also: ['name', 'id', 'substance', 'compound'], required: true },
  { name: 'amount', also: ['quantity'], required: true },
  { name: 'unit' },
  { name: 'assay', also: ['purity'] },
  { name: 'opened' },
  { name: 'expires', also: ['expiry', 'best before', 'use by'] },
  { name: 'place', also: ['location'] },
]

/** Units of stock; what a spreadsheet holds in micrograms is turned into milligrams. */
const stockUnits: Readonly<Record<string, { readonly unit: Unit; readonly times: number }>> = {
  µg: { unit: 'mg', times: 0.001 },
  µL: { unit: 'mL', times: 0.001 },
}

/**
 * A shelf out of a CSV file. Separator `;`, `,` or tab; numbers with point or comma; amounts as "24 g" or with the unit in its own column.
 *
 * @param materialIn reads the cells that name a material
 * @param name of the file, for the problems
 * @returns the bottles of the good lines, and every other line whole with what is wrong with it
 */
export function shelfFromCsv(materialIn: MaterialCell, name: string, text: string): CsvRead<ShelfItem> {
  const table = csvTable(name, text, columns)
  const values: ShelfItem[] = []
  const refused: RefusedRow[] = [...table.refused]
  const notes: Problem[] = []
  const firstLine = new Map<string, number>()
  for (const row of table.rows) {
    const { item, problems, warnings } = itemOf(materialIn, name, row, table.comma)
    const key = JSON.stringify([...row.cells].sort())
    const before = firstLine.get(key)
    if (before !== undefined)
      problems.push({
        code: 'csv-row-repeated',
        where: [name, `line ${row.line}`],
        what: `This line says the same as line ${before}.`,
        why: 'Stock that is counted twice is missed on the bench day.',
        cure: 'Remove it; or, if there are two such bottles, write the sum, or a place for each.',
      })
    else firstLine.set(key, row.line)
    if (item !== null && problems.length === 0) {
      values.push(item)
      notes.push(...warnings)
    } else refused.push({ line: row.line, text: row.text, problems })
  }
  return { values, notes, refused: refused.sort((a, b) => a.line - b.line), problems: table.problems }
}

/** The shelf as CSV: `shelfFromCsv` gives the same items back. */
export function shelfToCsv(items: readonly ShelfItem[]): string {
  return csvText(
    columns.map(column => column.name),
    items.map(item => [item.material, item.amount, item.unit, item.assay, item.opened, item.expires, item.place]),
  )
}

function itemOf(
  materialIn: MaterialCell,
  name: string,
  row: CsvRow,
  comma: 'decimal' | 'ask',
): { item: ShelfItem | null; problems: Problem[]; warnings: Problem[] } {
  const problems: Problem[] = []
  const warnings: Problem[] = []
  const cell = <T>(column: string, read: (text: string, where: readonly string[]) => Checked<T>): T | undefined => {
    const text = row.cells.get(column)
    const where = [name, `line ${row.line}`, column]
    if (text === undefined) return undefined
    const checked = read(text, where)
    if (checked.ok) {
      warnings.push(...checked.warnings)
      return checked.value
    }
    problems.push(...checked.problems)
    return undefined
  }
  for (const column of ['material', 'amount'])
    if (!row.cells.has(column))
      problems.push({
        code: 'csv-cell-empty',
        where: [name, `line ${row.line}`, column],
        what: `The ${column} is missing.`,
        why: 'Without it the line says nothing that can be counted on.',
        cure: 'Fill it in, or remove the line.',
      })
  const material = cell('material', materialIn)
  // The unit may stand in its own column or behind the number.
  const unit = row.cells.get('unit')
  const quantity = cell('amount', (text, where) =>
    parseQuantity(unit === undefined || /[a-zµμ]\.?$/i.test(text) ? text : `${text} ${unit}`, where, {
      dimensions: ['mass', 'volume', 'amount'],
      comma,
    }),
  )
  const assay = cell('assay', (text, where) => assayIn(text, where, comma))
  const opened = cell('opened', dateIn)
  const expires = cell('expires', dateIn)
  const place = row.cells.get('place')
  if (material === undefined || quantity === undefined) return { item: null, problems, warnings }
  const small = stockUnits[quantity.unit]
  return {
    item: {
      material: material.id,
      amount: small === undefined ? quantity.value : quantity.value * small.times,
      unit: small === undefined ? (quantity.unit as Unit) : small.unit,
      ...(assay === undefined ? {} : { assay }),
      ...(opened === undefined ? {} : { opened }),
      ...(expires === undefined ? {} : { expires }),
      ...(place === undefined ? {} : { place }),
    },
    problems,
    warnings,
  }
}

/** "98 %" or 0.98; a bare 98 is asked about. */
function assayIn(text: string, where: readonly string[], comma: 'decimal' | 'ask'): Checked<number> {
  const percent = text.endsWith('%')
  const number = numberIn(percent ? text.slice(0, -1) : text, where, comma)
  if (!number.ok) return number
  const fraction = percent ? number.value / 100 : number.value
  if (fraction > 0 && fraction <= 1) return { ok: true, value: fraction, warnings: number.warnings }
  const problem: Problem = {
    code: 'csv-assay',
    where,
    what: `An assay of "${text}" is not a part of one.`,
    why: 'Stock counts at its assay.',
    cure: 'Write 98 % or 0.98; leave it empty where the bottle states none.',
  }
  return { ok: false, problems: [problem] }
}
