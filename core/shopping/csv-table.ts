import Papa from 'papaparse'
import { didYouMean } from '../problem/nearest.ts'
import type { Problem } from '../problem/problem.ts'

/** A line of the file as text by column; what is empty is absent. */
export interface CsvRow {
  /** As an editor counts them, 1 = first. */
  readonly line: number
  readonly cells: ReadonlyMap<string, string>
  /** The line as it was, to be shown, corrected and read again. */
  readonly text: string
}

/** A line that was not taken, whole, with everything wrong with it. */
export interface RefusedRow {
  readonly line: number
  readonly text: string
  readonly problems: readonly Problem[]
}

/** What a CSV file gave: nothing of it is lost, each line is either among the values or among the refused. */
export interface CsvRead<T> {
  readonly values: readonly T[]
  readonly refused: readonly RefusedRow[]
  /** What was assumed in lines that were taken. */
  readonly notes: readonly Problem[]
  /** What is wrong with the file as a whole; then all its lines are refused. */
  readonly problems: readonly Problem[]
}

export interface Column {
  readonly name: string
  /** Other headings that are understood. */
  readonly also?: readonly string[]
  readonly required?: boolean
}

/** With `;` between cells a comma is a decimal sign; else it may be either, and `1,200` is asked about. */
export interface CsvTable {
  readonly rows: readonly CsvRow[]
  readonly refused: readonly RefusedRow[]
  readonly problems: readonly Problem[]
  readonly comma: 'decimal' | 'ask'
}

const why = 'A table is read by its headings; what has no place in it would be lost.'
const folded = (heading: string): string => heading.toLowerCase().replace(/[\s_\-.]+/g, '')

/**
 * A CSV table with a line of headings, parted by semicolons, commas or tabs, with or without a byte order mark.
 *
 * @param name    of the file, for the problems
 * @param columns that are understood; order in the file is free
 */
export function csvTable(name: string, text: string, columns: readonly Column[]): CsvTable {
  const body = text.startsWith('\ufeff') ? text.slice(1) : text
  const heading = body.split(/\r\n|\r|\n/, 1)[0] ?? ''
  const delimiter = delimiterOf(heading)
  const parsed = Papa.parse<string[]>(body, { delimiter })
  const table = { comma: delimiter === ';' ? ('decimal' as const) : ('ask' as const) }
  const lines = withLines(parsed.data, delimiter)
  const problems: Problem[] = parsed.errors.map(error => ({
    code: 'csv-syntax',
    where: [name, `line ${lines[error.row ?? 0]?.line ?? 1}`],
    what: `The quotation marks of this line do not pair: ${error.message}.`,
    why: 'What follows an open quotation mark is read as one cell to the end of the file.',
    cure: 'Close the quotation mark, or double those that belong to the text.',
  }))
  const [head, ...rest] = lines
  const known = new Map(columns.flatMap(column => [column.name, ...(column.also ?? [])].map(word => [folded(word), column.name])))
  const names = (head?.cells ?? []).map(cell => known.get(folded(cell)) ?? null)
  // A word may be the id of one bottle and the name of several: under the heading of ids it is the id, and never asked about.
  const ids = (head?.cells ?? []).findIndex((cell, index) => folded(cell) === idHeading && names[index] === 'material')
  const isNameBesideId = (index: number) => ids >= 0 && index !== ids && names[index] === 'material'
  for (const [index, cell] of (head?.cells ?? []).entries()) {
    if (cell.trim() === '') {
      if (rest.some(row => (row.cells[index] ?? '').trim() !== ''))
        problems.push(columnProblem(name, 'csv-column-unnamed', `Column ${index + 1} has no heading.`, 'Name it, or empty it.'))
    } else if (names[index] === null)
      problems.push(
        columnProblem(
          name,
          'csv-column-unknown',
          `The heading "${cell.trim()}" is not one of this table.`,
          `${didYouMean(cell.trim(), known.keys())}Correct or remove it; known are ${columns.map(c => c.name).join(', ')}.`,
        ),
      )
    else if (names.findIndex((other, at) => other === names[index] && at !== ids) < index && index !== ids)
      problems.push(columnProblem(name, 'csv-column-repeated', `The column "${names[index]}" stands twice.`, 'Keep one of them.'))
  }
  for (const column of columns)
    if (column.required === true && !names.includes(column.name))
      problems.push(
        columnProblem(
          name,
          'csv-column-missing',
          `The column "${column.name}" is missing.`,
          `Begin the file with a line of headings: ${columns.map(c => c.name).join(';')}.`,
        ),
      )

  const filled = rest.filter(row => row.cells.some(cell => cell.trim() !== ''))
  if (problems.length > 0)
    return { ...table, rows: [], refused: filled.map(({ line, text: own }) => ({ line, text: own, problems: [] })), problems }
  const rows: CsvRow[] = []
  const refused: RefusedRow[] = []
  for (const { line, cells, text: own } of filled) {
    const extra = cells.slice(names.length).filter(cell => cell.trim() !== '')
    if (extra.length > 0) {
      const what = `This line has more cells than there are headings: "${extra[0]}".`
      const cure = 'Quote a text that holds the separator, or write a number without one.'
      refused.push({ line, text: own, problems: [{ code: 'csv-row-too-long', where: [name, `line ${line}`], what, why, cure }] })
      continue
    }
    const hasId = (cells[ids] ?? '').trim() !== ''
    const entries = cells.flatMap((cell, index): [string, string][] => {
      if (cell.trim() === '' || names[index] == null || (hasId && isNameBesideId(index))) return []
      const text = plain(cell.trim())
      return [[names[index]!, index === ids ? exactly(text) : text]]
    })
    rows.push({ line, cells: new Map(entries), text: own })
  }
  return { ...table, rows, refused, problems }
}

/** The heading over ids of materials. */
const idHeading = 'id'
/** As the reader of names takes an id for nothing but itself; what already says so, or is no id, stays as it is. */
const exactly = (text: string): string => (/^[a-z0-9]+(-[a-z0-9]+)*$/.test(text) ? `{${text}}` : text)

/**
 * A table as CSV with semicolons, lines ended by CRLF; what a spreadsheet would run as a formula is written so that it does not. A column
 * `material` holds ids and is headed so, so that each is read back as just that one.
 */
export function csvText(columns: readonly string[], rows: readonly (readonly (string | number | undefined)[])[]): string {
  // A text that looks as if it had been made harmless gets one more sign, so that reading takes off just the one that was put on.
  const written = (cell: string) => (harmless.test(cell) ? `'${cell}` : cell)
  const data = rows.map(row => row.map(cell => (cell === undefined ? '' : written(String(cell)))))
  return `${Papa.unparse({ fields: columns.map(column => (column === 'material' ? idHeading : column)), data }, { delimiter: ';', newline: '\r\n', escapeFormulae: true })}\r\n`
}

/** The sign that stands most often in the line of headings; a semicolon where none does. */
function delimiterOf(heading: string): string {
  const count = (sign: string) => heading.split(sign).length - 1
  return [';', '\t', ','].reduce((best, sign) => (count(sign) > count(best) ? sign : best))
}

/** Undoes what {@link csvText} does to a cell that begins like a formula. */
const plain = (cell: string): string => (harmless.test(cell) ? cell.slice(1) : cell)
const harmless = /^'+[=+\-@\t\r]/

function withLines(
  data: readonly (readonly string[])[],
  delimiter: string,
): readonly { readonly line: number; readonly cells: readonly string[]; readonly text: string }[] {
  let line = 1
  return data.map(cells => {
    const row = { line, cells, text: Papa.unparse([[...cells]], { delimiter }) }
    line += 1 + cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\r|\n/g)?.length ?? 0), 0)
    return row
  })
}

const columnProblem = (name: string, code: string, what: string, cure: string): Problem => ({
  code,
  where: [name, 'line 1'],
  what,
  why,
  cure,
})
