import Papa from 'papaparse'
import { unguarded } from './cell-text.ts'
import { delimiterOf } from './delimiter-of.ts'

/** Headings of a table of charges as it is written, in order. */
export const chargeHeadings = ['step', 'id', 'material', 'amount', 'unit', 'per gram of product', 'role', 'at', 'derived', 'from'] as const
export type ChargeHeading = (typeof chargeHeadings)[number]

/** What people head them with, small letters and single blanks. */
const understood: Readonly<Record<ChargeHeading, RegExp>> = {
  step: /^(step|step id|transformation|transformation id)$/,
  id: /^(id|material id)$/,
  material: /^(material|name|compound|substance)$/,
  amount: /^(amount|quantity|charge)$/,
  unit: /^units?$/,
  'per gram of product': /^per ?gram( of)?( product)?$/,
  role: /^role$/,
  at: /^(at|stage|where)$/,
  derived: /^(derived|reckoned)$/,
  from: /^(amount )?from$/,
}

/** A line of the table: texts by heading, what is empty is absent. */
export interface ChargeCells {
  /** As an editor counts them, 1 = first. */
  readonly line: number
  readonly cells: ReadonlyMap<ChargeHeading, string>
  /** More cells than there are headings. */
  readonly tooMany: boolean
}

export interface ChargeTableCells {
  readonly headings: readonly (ChargeHeading | null)[]
  /** The headings as written. */
  readonly written: readonly string[]
  readonly rows: readonly ChargeCells[]
  /** With semicolons between cells a comma is a decimal sign; else it may be either. */
  readonly comma: 'decimal' | 'ask'
}

/**
 * The cells of a table of charges.
 *
 * @returns null where the first line holds no headings of a material and an amount: then it is no such table
 */
export function chargeCells(text: string): ChargeTableCells | null {
  const body = text.replace(/^\ufeff/, '')
  const delimiter = delimiterOf(body.trimStart())
  const [head] = Papa.parse<string[]>(body, { delimiter, skipEmptyLines: 'greedy', preview: 1 }).data
  const headings = (head ?? []).map(headingOf)
  const has = (heading: ChargeHeading) => headings.includes(heading)
  if (!has('amount') || !(has('material') || has('id'))) return null
  const parsed = Papa.parse<string[]>(body, { delimiter, skipEmptyLines: false })
  let line = 1
  const lines = parsed.data.map(cells => {
    const row = { line, cells }
    line += 1 + cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0)
    return row
  })
  const [, ...rows] = lines.filter(({ cells }) => cells.some(cell => cell.trim() !== ''))
  return {
    headings,
    written: head ?? [],
    rows: rows.map(({ line: at, cells }) => ({
      line: at,
      cells: new Map(
        cells.flatMap((cell, index): [ChargeHeading, string][] => {
          const heading = headings[index]
          const value = unguarded(cell).trim()
          return heading == null || value === '' || headings.indexOf(heading) !== index ? [] : [[heading, value]]
        }),
      ),
      tooMany: cells.slice(headings.length).some(cell => cell.trim() !== ''),
    })),
    comma: delimiter === ';' ? 'decimal' : 'ask',
  }
}

function headingOf(cell: string): ChargeHeading | null {
  const plain = unguarded(cell)
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
  return chargeHeadings.find(heading => understood[heading].test(plain)) ?? null
}
