import type { Problem } from '../../core/problem/problem.ts'
import type { MaterialCell } from '../../core/shopping/csv-cells.ts'
import type { CsvRead } from '../../core/shopping/csv-table.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import { packsFromCsv } from '../../core/shopping/packs-csv.ts'
import type { ShelfItem } from '../../core/shopping/shelf.ts'
import { shelfFromCsv } from '../../core/shopping/shelf-csv.ts'
import { Refusal } from '../refusal.ts'

export const isCsv = (path: string): boolean => /\.(csv|tsv)$/i.test(path)

/** A shelf out of CSV, or a refusal that answers every line at fault and quotes it whole. */
export function shelfOfCsv(materialIn: MaterialCell, path: string, text: string): readonly ShelfItem[] {
  const read = shelfFromCsv(materialIn, path, text)
  refuseLines(path, read)
  return read.values
}

/** Packs out of CSV, in one currency; what is told of a supplier need stand on one line only. */
export function packsOfCsv(materialIn: MaterialCell, path: string, text: string, currency: string): PacksFile {
  const read = packsFromCsv(materialIn, path, text, { format: 'waybench-packs', version: 1, currency, suppliers: [], packs: [] })
  refuseLines(path, read)
  return read.file
}

/** Nothing is taken from a file with a line that cannot be read: the file stays as it is, to be corrected and read again. */
function refuseLines(path: string, { refused, problems }: CsvRead<unknown>): void {
  const lines = refused.flatMap(row => row.problems.map(problem => ({ ...problem, what: `${problem.what} The line reads: ${row.text}` })))
  const unread = refused.filter(row => row.problems.length === 0)
  const whole: Problem[] = problems.map((problem, at) =>
    at === 0 && unread.length > 0
      ? { ...problem, why: `${problem.why} ${unread.length === 1 ? 'One line was' : `${unread.length} lines were`} therefore not read.` }
      : problem,
  )
  if (whole.length + lines.length > 0) throw new Refusal('bad-input', [...whole, ...lines])
  if (refused.length > 0) throw new Error(`${path}: lines refused without a reason`)
}
