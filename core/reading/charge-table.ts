import Papa from 'papaparse'
import { type ChargeLine, type Role, roles, type Stage, stages, type Transformation } from '../library/transformation.ts'
import { unitNamed } from '../quantity/unit.ts'
import { cellOf, cellValue, guarded } from './cell-text.ts'
import { type ChargeCells, chargeCells, chargeHeadings } from './charge-columns.ts'
import { lineKeys } from './line-key.ts'
import { measuresIn } from './measures.ts'
import { idNamed } from './names.ts'

/**
 * Charges as CSV (or TSV), a line a charge: the ids of step and material, the material's name for people, and every key of a charge line. An
 * amount left open is an empty cell, its unit stands all the same. `stepChargesIn` gives the same lines back.
 */
export function chargeTable(
  steps: readonly Pick<Transformation, 'id' | 'charge'>[],
  nameOf: (material: string) => string,
  delimiter: ',' | '\t' = ',',
): string {
  const rows = steps.flatMap(({ id, charge }) =>
    charge.map(({ material, amount, unit, perGramProduct, role, at, derived, from }) =>
      [
        id,
        material,
        guarded(nameOf(material)),
        amount === null ? '' : String(amount),
        unit,
        perGramProduct === undefined ? '' : String(perGramProduct),
        role,
        at ?? '',
        derived === undefined ? '' : derived ? 'yes' : 'no',
        from === undefined ? '' : guarded(cellOf('note', from)),
      ].map(String),
    ),
  )
  return `${Papa.unparse([[...chargeHeadings], ...rows], { delimiter, newline: '\r\n' })}\r\n`
}

/** What a table states of a line besides what the text of the line holds. */
export interface LineFacts {
  readonly at?: Stage
  readonly derived?: boolean
  /** Empty = as the sources of the record say, whatever the line says. */
  readonly from?: string
  /** Of an amount that is left open: in what it is measured out. */
  readonly unit?: ChargeLine['unit']
}

/** What is read of a table of charges: lines for the reader, and what the table states of them besides. */
export interface ChargeTableRead {
  readonly lines: readonly string[]
  /** By the key of its line (`lineKeys`); only roles of the library format. */
  readonly roles: Readonly<Record<string, Role>>
  readonly facts: Readonly<Record<string, LineFacts>>
}

/**
 * A table of charges as the lines that the reader takes, one a row: "25 g benzoin".
 *
 * @returns null where the first line holds no headings of a material and an amount: then it is no such table
 */
export function readChargeTable(text: string): ChargeTableRead | null {
  const table = chargeCells(text)
  if (table === null) return null
  const read = table.rows.flatMap(row => {
    const line = lineOf(row)
    const role = row.cells.get('role')?.toLowerCase()
    return line === '' ? [] : [{ line, role: roles.find(one => one === role), facts: factsOf(row) }]
  })
  const lines = read.map(one => one.line)
  const keys = lineKeys(lines)
  const told = <V>(value: (at: number) => V | undefined): Readonly<Record<string, V>> =>
    Object.fromEntries(keys.flatMap((key, at) => (value(at) === undefined ? [] : [[key, value(at)!]])))
  return {
    lines,
    roles: told(at => read[at]!.role),
    facts: told(at => (Object.keys(read[at]!.facts).length === 0 ? undefined : read[at]!.facts)),
  }
}

/** A charge as read, with what a person or a table says of it besides. */
export function withFacts({ from: read, ...line }: ChargeLine, role: string | undefined, facts: LineFacts | undefined): ChargeLine {
  const isOpen = line.amount === null && line.perGramProduct === undefined
  const from = facts?.from ?? read
  return {
    ...line,
    ...(role === undefined ? {} : { role: role as Role }),
    ...(facts?.unit !== undefined && isOpen ? { unit: facts.unit } : {}),
    ...(facts?.derived === undefined ? {} : { derived: facts.derived }),
    ...(facts?.at === undefined ? {} : { at: facts.at }),
    ...(from === undefined || from === '' ? {} : { from }),
  }
}

function factsOf({ cells }: ChargeCells): LineFacts {
  const at = stages.find(one => one === cells.get('at')?.toLowerCase())
  const derived = yesOrNo(cells.get('derived'))
  const from = fromIn(cells)
  const unit = cells.has('amount') || cells.has('per gram of product') ? null : unitNamed(cells.get('unit') ?? '')
  return {
    ...(at === undefined ? {} : { at }),
    ...(derived === undefined ? {} : { derived }),
    ...(from === undefined ? {} : { from }),
    ...(unit === null ? {} : { unit: unit as ChargeLine['unit'] }),
  }
}

/** Where an amount comes from, as its cell says it. */
export function fromIn(cells: ChargeCells['cells']): string | undefined {
  const cell = cells.get('from')
  return cell === undefined ? undefined : String(cellValue('note', cell))
}

/** As a cell says it; undefined where it says neither. */
export function yesOrNo(cell: string | undefined): boolean | undefined {
  const word = cell?.toLowerCase()
  if (word === 'yes' || word === 'true' || word === '1') return true
  return word === 'no' || word === 'false' || word === '0' ? false : undefined
}

/** An id in braces stands at the end of a line, where the reader looks for it. */
function lineOf({ cells }: ChargeCells): string {
  const material = cells.get('material') ?? ''
  const [, written = material, braced = ''] = /^(.*?)(\s*\{[a-z0-9-]+\})$/.exec(material) ?? []
  const id = cells.has('id') ? ` {${cells.get('id')}}` : braced
  // A name that holds an amount itself ("ampoule of 5 mL") would be taken for the charge: then the id stands alone.
  const name = idNamed(id) !== null && measuresIn(written, 'ask').some(one => one.kind === 'amount') ? '' : written
  const unit = cells.get('unit') ?? ''
  const perGram = cells.get('per gram of product')
  const measure = perGram === undefined ? `${cells.get('amount') ?? ''} ${unit}`.trim() : `${perGram} ${unit} per gram`
  if (name === '' && id === '') return cells.has('amount') ? measure : ''
  if (!cells.has('amount') && perGram === undefined) return `${name}${id}`.trim()
  return /per gram$/.test(measure) ? `${name} (${measure})${id}`.trim() : `${measure} ${name}`.trim() + id
}
