import Papa from 'papaparse'
import { expect, it } from 'vitest'
import { lineFigure } from '../../../../core/library/figure-trust.ts'
import type { Transformation } from '../../../../core/library/transformation.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { recordsIn } from '../../../../server/library/records-in.ts'
import { writtenAs } from '../../../../server/library/written-as.ts'
import { bundledWorkshop } from '../../../support/app.ts'

// Law: no table makes an amount surer than it is. Nothing outside is needed to say so.

const workshop = await bundledWorkshop()
const lophine = bundled().library.transformations.get('lophine')!
const table = writtenAs(
  'charges-csv',
  { format: 'waybench-library', version: 1, title: 'some', materials: [], transformations: [lophine] },
  workshop.library,
  workshop.names(),
)
/** The table without its last columns, as a spreadsheet writes it after they were deleted. */
const cut = (columns: number): string =>
  Papa.unparse(Papa.parse<string[]>(table, { skipEmptyLines: true }).data.map(cells => cells.slice(0, cells.length - columns)))
const read = (text: string, over = lophine): Transformation => {
  const known = { ...workshop, library: { ...workshop.library, transformations: new Map([[over.id, over]]) } }
  const records = recordsIn([{ name: 'mine.csv', text }], known)
  if (!records.ok) throw new Error(JSON.stringify(records.problems))
  return records.value.transformations[0] as Transformation
}

it('a table that says where amounts come from says it alone', () => {
  expect(read(table)).toEqual(lophine)
})

it('what a table has no column for is kept of the line whose amount it repeats', () => {
  for (const columns of [1, 2, 3]) expect(read(cut(columns)), String(columns)).toEqual(lophine)
})

it('an amount that it changes comes from the table, and counts as remembered', () => {
  const changed = (text: string): string => text.replace(',15.4,g,', ',12,g,').replace(',5.25,g,', ',5,g,')
  const mine = read(changed(cut(1)))
  const told = mine.charge.map(line => [line.amount, lineFigure(mine, line).mark])
  expect(told.slice(0, 3)).toEqual([
    [5, 'remembered'],
    [2.5, 'seen'],
    [12, 'remembered'],
  ])
  expect(lineFigure(mine, mine.charge[0]!).source).toBe('from the table mine.csv')
  expect(mine.sources).toEqual([...lophine.sources, { citation: 'from the table mine.csv', for: 'charge', checked: false }])
  // A column that is there and says nothing of the amount does not say that it was read; where it says something, that holds.
  const filled = read(changed(table))
  const [first, , third] = filled.charge
  expect([first!.from, lineFigure(filled, first!).mark]).toEqual(['from the table mine.csv', 'remembered'])
  expect(third!.from).toBe(lophine.charge[2]!.from)
  // A second table of that name speaks by the same source.
  expect(read(changed(table).replace(',2.5,mL,', ',3,mL,'), mine).sources).toEqual(mine.sources)
})
