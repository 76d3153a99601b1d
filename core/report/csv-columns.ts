import { minorDigitsOf } from '../quantity/money.ts'

/** Columns of the file, the same for every section; what a section has no use for stays empty. */
export const csvColumns = [
  'section',
  'step',
  'id',
  'name',
  'role',
  'amount',
  'unit',
  'mol',
  'equivalents',
  'p10_g',
  'median_g',
  'p90_g',
  'cost',
  'currency',
  'state',
  'codes',
  'note',
  'mark',
  'source',
] as const
type Column = (typeof csvColumns)[number]
/** One row of the file. */
export type Cells = Partial<Record<Column, string | number | null>>

/** Minor units as a bare number of the currency: 6230 EUR is 62.3. */
export const major = (minor: number, currency = 'EUR'): number => minor / 10 ** minorDigitsOf(currency)
