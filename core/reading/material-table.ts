import Papa from 'papaparse'
import type { Material } from '../library/material.ts'
import { didYouMean } from '../problem/nearest.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { cellOf, guarded, unguarded } from './cell-text.ts'
import { delimiterOf } from './delimiter-of.ts'
import { keyOfHeading, materialKeys as keys, materialValue } from './material-columns.ts'
import { type Beneath, idFor, nothingBeneath, overKnown } from './over-known.ts'

/** Materials as CSV (or TSV), a column a key; what a spreadsheet would run as a formula is guarded. Reading gives the same records back. */
export function materialTable(materials: readonly Material[], delimiter: ',' | '\t' = ','): string {
  const used = keys.filter(key => materials.some(material => material[key as keyof Material] !== undefined))
  const rows = materials.map(material =>
    used.map(key => {
      const value = material[key as keyof Material]
      return value === undefined ? '' : guarded(cellOf(key, value))
    }),
  )
  return `${Papa.unparse([used, ...rows], { delimiter, newline: '\r\n' })}\r\n`
}

/**
 * Records of a table of materials, comma, semicolon or tab between the cells. Headings may be keys of the library format or what people write
 * for them ("density", "mp", "H codes", "source"); an id is made from the name where none is given.
 *
 * @param beneath  what is known: a line with the id of a material, or without an id but with its name, keeps of it what the table has no
 *                 column for
 * @returns raw records: the loader holds them against the schema and the rules
 */
export function readMaterialTable(
  name: string,
  text: string,
  beneath: Beneath = nothingBeneath,
): Checked<readonly Record<string, unknown>[]> {
  const body = text.replace(/^\ufeff/, '')
  const delimiter = delimiterOf(body.trimStart())
  // A large file that is no such table is told by its headings, before the rest of it is taken apart.
  const misheaded = headingFaults(name, Papa.parse<string[]>(body, { delimiter, skipEmptyLines: 'greedy', preview: 1 }).data[0] ?? [])
  if (misheaded.length > 0) return bad(misheaded)
  const parsed = Papa.parse<string[]>(body, { delimiter, skipEmptyLines: 'greedy' })
  const problems: Problem[] = parsed.errors
    .filter(error => error.type === 'Quotes')
    .map(error => ({
      code: 'csv-quotes',
      where: [name, `line ${(error.row ?? 0) + 1}`],
      what: 'A double quote is not closed.',
      why: 'Everything after it would end up in one cell.',
      cure: 'Close it, or write a quote inside a cell twice.',
    }))
  const [head, ...rows] = parsed.data
  if (head === undefined || rows.length === 0) return bad([...problems, emptyTable(name)])
  const columns = head.map(keyUnder)
  if (problems.length > 0) return bad(problems)
  const taken = new Set<string>()
  const faults: Problem[] = []
  const spoken = new Set(columns.flatMap(key => key ?? []))
  const records = rows.map((cells, at) => {
    if (cells.slice(columns.length).some(cell => cell.trim() !== '')) problems.push(tooManyCells(name, at + 2))
    const record: Record<string, unknown> = {}
    columns.forEach((key, column) => {
      const cell = unguarded(cells[column] ?? '')
      if (key === null || cell.trim() === '') return
      // With semicolons between cells a comma is a decimal sign; else it may be either.
      const value = materialValue(
        key,
        cell,
        `table ${name}`,
        [name, `line ${at + 2}`, head[column]!],
        delimiter === ';' ? 'decimal' : 'ask',
      )
      if (value.ok) record[key] = value.value
      else faults.push(...value.problems)
    })
    if (record.id === undefined && record.name === undefined) {
      faults.push(nameless(name, at + 2))
      return record
    }
    const id =
      record.id === undefined ? idFor(String(record.name ?? ''), beneath, taken, [name, `line ${at + 2}`]) : good(String(record.id))
    if (!id.ok) {
      faults.push(...id.problems)
      return record
    }
    record.id = id.value
    taken.add(id.value)
    return overKnown(record, spoken, beneath.byId.get(id.value), `from the table ${name}`)
  })
  return faults.length > 0 ? bad([...problems, ...faults]) : good(records, problems)
}

const keyUnder = (heading: string): string | null => keyOfHeading(unguarded(heading))

/** Problems that are told of a heading line at the most: a file that is no table at all would have thousands. */
const mostFaults = 20

function headingFaults(name: string, head: readonly string[]): readonly Problem[] {
  if (head.length === 0) return [emptyTable(name)]
  const columns = head.map(keyUnder)
  const problems = head.flatMap((heading, at) => (columns[at] === null ? [unknownColumn(name, heading, at)] : []))
  columns.forEach((key, at) => {
    if (key !== null && columns.indexOf(key) !== at) problems.push(columnTwice(name, head[at]!, key))
  })
  if (!columns.includes('name') && !columns.includes('id')) problems.push(noName(name))
  return problems.slice(0, mostFaults)
}

const why = 'A table is taken whole or not at all, so that nothing in it is lost unseen.'

const emptyTable = (name: string): Problem => ({
  code: 'csv-empty',
  where: [name],
  what: 'The table has no rows.',
  why,
  cure: 'Give a line of headings and a line for each material.',
})
const unknownColumn = (name: string, heading: string, at: number): Problem => ({
  code: 'csv-column-unknown',
  where: [name, `column ${at + 1}`],
  what: `Nothing is known by the heading "${heading.slice(0, 80)}".`,
  why,
  cure: `${didYouMean(heading, keys)}Headings are ${keys.join(', ')}; remove a column that is not meant.`,
})
const columnTwice = (name: string, heading: string, key: string): Problem => ({
  code: 'csv-column-twice',
  where: [name, heading.slice(0, 80)],
  what: `Two columns give "${key}".`,
  why: 'One of the two would be lost.',
  cure: 'Keep one of them.',
})
const noName = (name: string): Problem => ({
  code: 'csv-column-missing',
  where: [name],
  what: 'There is neither a column of names nor one of ids.',
  why: 'A material is found by its name or its id.',
  cure: 'Add a column headed "name"; for materials that are held, one headed "id" will do.',
})
const nameless = (name: string, line: number): Problem => ({
  code: 'csv-cell-empty',
  where: [name, `line ${line}`],
  what: 'This line has neither a name nor an id.',
  why: 'A material is found by its name or its id.',
  cure: 'Write one of the two, or remove the line.',
})
const tooManyCells = (name: string, line: number): Problem => ({
  code: 'csv-cells',
  where: [name, `line ${line}`],
  what: 'This line has more cells than there are headings.',
  why: 'A comma in a cell without quotes parts it in two.',
  cure: 'Put double quotes round the cell, or use tabs between cells.',
})
