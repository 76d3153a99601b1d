import type { Material } from '../library/material.ts'
import { bad, type Checked, good } from '../problem/problem.ts'

/** Reads a cell that names a material. Handed in: which names there are, and which are asked about, is no matter of tables. */
export type MaterialCell = (text: string, where: readonly string[]) => Checked<Material>

const monthDays = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]

/** A date as `YYYY-MM-DD`, `YYYY-MM` or `DD.MM.YYYY`; what may be read in two ways (03/04/2026) is asked about. */
export function dateIn(
  text: string,
  where: readonly string[],
  why = 'The oldest bottle is used first, and an expired one not at all.',
): Checked<string> {
  const iso = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(text)
  const german = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/.exec(text)
  const [year, month, day] = iso
    ? [iso[1]!, iso[2]!, iso[3]]
    : german
      ? [german[3]!, german[2]!.padStart(2, '0'), german[1]!.padStart(2, '0')]
      : []
  const inMonth = monthDays[Number(month) - 1]
  const isLeap = (y: number) => (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0
  const most = month === '02' && !isLeap(Number(year)) ? 28 : inMonth
  if (year !== undefined && most !== undefined && (day === undefined || (Number(day) >= 1 && Number(day) <= most)))
    return good(day === undefined ? `${year}-${month}` : `${year}-${month}-${day}`)
  return bad([
    {
      code: 'csv-date',
      where,
      what: `"${text}" is not a date that can be read in one way only.`,
      why,
      cure: 'Write it as 2026-03-31 or 31.03.2026.',
    },
  ])
}
