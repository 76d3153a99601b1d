import Papa from 'papaparse'
import { type ChargeLine, type Role, roles } from '../library/transformation.ts'
import { guarded, unguarded } from './cell-text.ts'
import { lineKeys } from './line-key.ts'

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

/** What is read of a table of charges: lines for the reader, and the roles that the table states of them. */
export interface ChargeTableRead {
  readonly lines: readonly string[]
  /** By the key of its line (`lineKeys`); only roles of the library format. */
  readonly roles: Readonly<Record<string, Role>>
}

/**
 * A table of charges as the lines that the reader takes, one a row: "25 g benzoin".
 *
 * @returns null where the first line holds no headings of a material and an amount: then it is no such table
 */
export function readChargeTable(text: string): ChargeTableRead | null {
  const body = text.replace(/^\ufeff/, '')
  const [head] = Papa.parse<string[]>(body, { skipEmptyLines: 'greedy', preview: 1 }).data
  const at = (pattern: RegExp): number => head?.findIndex(heading => pattern.test(heading.trim().toLowerCase())) ?? -1
  const [material, amount, unit, role] = [at(columns.material), at(columns.amount), at(columns.unit), at(columns.role)]
  if (material < 0 || amount < 0) return null
  const [, ...rows] = Papa.parse<string[]>(body, { skipEmptyLines: 'greedy' }).data
  const read: { readonly line: string; readonly role: Role | undefined }[] = []
  for (const cells of rows) {
    const cell = (index: number): string => (index < 0 ? '' : (cells[index]?.trim() ?? ''))
    const line = lineOf(unguarded(cells[material] ?? '').trim(), cell(amount), cell(unit))
    const word = cell(role).toLowerCase()
    if (line !== '') read.push({ line, role: roles.find(one => one === word) })
  }
  const lines = read.map(one => one.line)
  const keys = lineKeys(lines)
  return { lines, roles: Object.fromEntries(read.flatMap((one, index) => (one.role === undefined ? [] : [[keys[index]!, one.role]]))) }
}

/** An id in braces stands at the end of a line, where the reader looks for it. */
function lineOf(material: string, amount: string, unit: string): string {
  const [, name = material, id = ''] = /^(.*?)(\s*\{[a-z0-9-]+\})$/.exec(material) ?? []
  const measure = `${amount} ${unit}`.trim()
  if (name === '') return amount === '' ? '' : measure
  if (amount === '') return `${name}${id}`
  return /per gram$/.test(measure) ? `${name} (${measure})${id}` : `${measure} ${name}${id}`
}
