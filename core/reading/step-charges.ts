import type { Material } from '../library/material.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { numberIn } from '../quantity/number.ts'
import { unitNamed } from '../quantity/unit.ts'
import { type ChargeCells, type ChargeTableCells, chargeCells } from './charge-columns.ts'
import { fromIn, yesOrNo } from './charge-table.ts'

/** Raw charge lines of a step, in the order of the table; the loader holds them against the schema and the rules. */
export type StepCharges = ReadonlyMap<string, readonly Readonly<Record<string, unknown>>[]>

const why = 'A table is read by its headings; what has no place in it would be lost.'

/**
 * A table that says of which step each charge is: just the lines that `chargeTable` wrote.
 *
 * @param materialIn  reads a cell that names a material, where no id does
 * @param calls       whether a material is called so; null = it is not held, and nobody can tell
 * @returns null where it is no table of charges, or one without steps: such a table belongs into a preparation
 */
export function stepChargesIn(
  name: string,
  text: string,
  materialIn: (text: string, where: readonly string[]) => Checked<Material>,
  calls: (id: string, name: string) => boolean | null = () => null,
): Checked<StepCharges> | null {
  const table = chargeCells(text)
  if (table === null || !table.headings.includes('step')) return null
  const problems: Problem[] = headingFaults(name, table)
  if (problems.length > 0) return bad(problems)
  if (table.rows.length === 0) return bad([noRows(name)])
  const steps = new Map<string, Record<string, unknown>[]>()
  const warnings: Problem[] = []
  for (const row of table.rows) {
    const where = [name, `line ${row.line}`]
    const step = row.cells.get('step')
    if (step === undefined) problems.push(cellMissing(where, 'step', 'It names the transformation that the line is a charge of.'))
    if (row.tooMany) problems.push(tooManyCells(where))
    const line = lineOf(row, where, table.comma, calls, materialIn)
    if (line.ok) warnings.push(...line.warnings)
    else problems.push(...line.problems)
    if (line.ok && step !== undefined) steps.set(step, [...(steps.get(step) ?? []), line.value])
  }
  return problems.length > 0 ? bad(problems) : good(steps, warnings)
}

function lineOf(
  { cells }: ChargeCells,
  where: readonly string[],
  comma: 'decimal' | 'ask',
  calls: (id: string, name: string) => boolean | null,
  materialIn: (text: string, where: readonly string[]) => Checked<Material>,
): Checked<Record<string, unknown>> {
  const problems: Problem[] = []
  const warnings: Problem[] = []
  const read = <T>(checked: Checked<T>): T | undefined => {
    if (checked.ok) warnings.push(...checked.warnings)
    else problems.push(...checked.problems)
    return checked.ok ? checked.value : undefined
  }
  const number = (heading: 'amount' | 'per gram of product'): number | undefined => {
    const cell = cells.get(heading)
    return cell === undefined ? undefined : read(numberOf(cell, [...where, heading], comma))
  }
  const id = cells.get('id')
  const named = cells.get('material')
  const isOther = id !== undefined && named !== undefined && calls(id, named) === false
  if (isOther) problems.push(nameOfAnother(where, id, named))
  const material = id ?? (named === undefined ? undefined : read(materialIn(named, [...where, 'material']))?.id)
  if (id === undefined && named === undefined)
    problems.push(cellMissing(where, 'id', 'It names what is charged; a name in the column "material" will do.'))
  for (const heading of ['unit', 'role'] as const)
    if (!cells.has(heading)) problems.push(cellMissing(where, heading, 'Each line of a charge has one, an open amount too.'))
  const derived = yesOrNo(cells.get('derived'))
  if (cells.has('derived') && derived === undefined) problems.push(neitherYesNorNo([...where, 'derived'], cells.get('derived')!))
  const [amount, perGramProduct] = [number('amount'), number('per gram of product')]
  const unit = cells.get('unit') ?? ''
  const at = cells.get('at')?.toLowerCase()
  const from = fromIn(cells)
  const line = {
    material,
    role: cells.get('role')?.toLowerCase(),
    amount: amount ?? null,
    unit: unitNamed(unit) ?? unit,
    ...(perGramProduct === undefined ? {} : { perGramProduct }),
    ...(derived === undefined ? {} : { derived }),
    ...(at === undefined ? {} : { at }),
    ...(from === undefined ? {} : { from }),
  }
  return problems.length > 0 ? bad(problems) : good(line, warnings)
}

/** A number as this program writes it is just that number; any other as people write it. */
function numberOf(cell: string, where: readonly string[], comma: 'decimal' | 'ask'): Checked<number> {
  return /^\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i.test(cell) && Number.isFinite(Number(cell)) ? good(Number(cell)) : numberIn(cell, where, comma)
}

function headingFaults(name: string, { headings, written }: ChargeTableCells): Problem[] {
  return headings.flatMap((heading, at): Problem[] => {
    if (heading === null)
      return written[at]!.trim() === ''
        ? []
        : [
            {
              code: 'csv-column-unknown',
              where: [name, written[at]!.slice(0, 80)],
              what: `The heading "${written[at]!.slice(0, 80)}" is not one of a table of charges.`,
              why,
              cure: 'Correct or remove it; known are step, id, material, amount, unit, per gram of product, role, at, derived, from.',
            },
          ]
    return headings.indexOf(heading) === at
      ? []
      : [
          {
            code: 'csv-column-repeated',
            where: [name, heading],
            what: `The column "${heading}" stands twice.`,
            why,
            cure: 'Keep one of them.',
          },
        ]
  })
}

const cellMissing = (where: readonly string[], heading: string, reason: string): Problem => ({
  code: 'csv-cell-empty',
  where: [...where, heading],
  what: `The cell under "${heading}" is empty.`,
  why: reason,
  cure: 'Fill it in, or remove the line.',
})
const nameOfAnother = (where: readonly string[], id: string, name: string): Problem => ({
  code: 'csv-id-and-name',
  where: [...where, 'material'],
  what: `The line has the id "${id.slice(0, 80)}" and the name "${name.slice(0, 80)}", which that material is not called by.`,
  why: 'One of the two was changed, and which is meant is not guessed.',
  cure: 'Write the id of the one that is meant; or empty the cell of the id, and the name alone is read.',
})
const tooManyCells = (where: readonly string[]): Problem => ({
  code: 'csv-cells',
  where,
  what: 'This line has more cells than there are headings.',
  why: 'A comma in a cell without quotes parts it in two.',
  cure: 'Put double quotes round the cell, or use tabs between cells.',
})
const neitherYesNorNo = (where: readonly string[], cell: string): Problem => ({
  code: 'csv-yes-no',
  where,
  what: `"${cell.slice(0, 80)}" is neither yes nor no.`,
  why: 'An amount that was reckoned is told from one that a source prints.',
  cure: 'Write yes, no, or leave the cell empty.',
})
const noRows = (name: string): Problem => ({
  code: 'file-empty',
  where: [name],
  what: 'The table has headings and no lines.',
  why: 'There is nothing to take over.',
  cure: 'Add the charges, one a line.',
})
