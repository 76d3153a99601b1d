import Papa from 'papaparse'
import type { ChargeLine } from '../library/transformation.ts'
import { guarded, unguarded } from './cell-text.ts'

/** Headings of a table of charges, small letters. */
const columns = {
  material: /^(material|name|compound|substance|id)$/,
  amount: /^(amount|quantity|charge)$/,
  unit: /^units?$/,
  role: /^role$/,
}

/** Charge lines as CSV (or TSV): material, amount, unit, role; an amount left open is an empty cell. */
export function chargeTable(charge: readonly ChargeLine[], nameOf: (material: string) => string, delimiter: ',' | '\t' = ','): string {
  const rows = charge.map(({ material, amount, unit, role, perGramProduct }) => [
    guarded(nameOf(material)),
    perGramProduct === undefined ? (amount === null ? '' : String(amount)) : String(perGramProduct),
    perGramProduct === undefined ? unit : `${unit} per gram`,
    role,
  ])
  return `${Papa.unparse([['material', 'amount', 'unit', 'role'], ...rows], { delimiter, newline: '\r\n' })}\r\n`
}

/**
 * A table of charges as the lines that the reader takes, one a row: "25 g benzoin".
 *
 * @returns null where the first line holds no headings of a material and an amount: then it is no such table
 */
export function linesOfChargeTable(text: string): readonly string[] | null {
  const body = text.replace(/^\ufeff/, '')
  const [head] = Papa.parse<string[]>(body, { skipEmptyLines: 'greedy', preview: 1 }).data
  const at = (pattern: RegExp): number => head?.findIndex(heading => pattern.test(heading.trim().toLowerCase())) ?? -1
  const [material, amount, unit] = [at(columns.material), at(columns.amount), at(columns.unit)]
  if (material < 0 || amount < 0) return null
  const [, ...rows] = Papa.parse<string[]>(body, { skipEmptyLines: 'greedy' }).data
  return rows.flatMap(cells => {
    const name = unguarded(cells[material] ?? '').trim()
    const measure = `${cells[amount]?.trim() ?? ''} ${unit < 0 ? '' : (cells[unit]?.trim() ?? '')}`.trim()
    if (name === '') return measure === '' ? [] : [measure]
    if (measure === '' || (cells[amount]?.trim() ?? '') === '') return [name]
    return [/per gram$/.test(measure) ? `${name} (${measure})` : `${measure} ${name}`]
  })
}
