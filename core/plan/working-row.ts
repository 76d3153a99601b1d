import type { Library } from '../library/library.ts'
import type { Mark } from '../library/mark.ts'
import type { Source } from '../library/source.ts'
import type { Transformation } from '../library/transformation.ts'
import { trustInYield } from '../library/trust.ts'
import { noBreakSpace, numberText } from '../quantity/print.ts'

export interface WorkingRow {
  readonly sign: '' | '+' | '\u2212' | '\u00d7' | '\u00f7'
  readonly label: string
  /** Number and unit, ready to print. */
  readonly value: string
  /** The reader's own figure. */
  readonly own?: boolean
}

/** The arithmetic behind a number: rows from top to bottom, the total under a rule, then what to know about it. */
export interface Working {
  readonly rows: readonly WorkingRow[]
  readonly total: { readonly label: string; readonly value: string }
  /** Scale, basis, flags: whole sentences. */
  readonly said: readonly string[]
  readonly sources: readonly Source[]
  /** How its figure was seen; null where it is reckoned and nothing else. */
  readonly seen: Mark | null
}

export const times = '\u00d7'
export const over = '\u00f7'
export const minus = '\u2212'
export const value = (amount: number, unit: string, figures = 4): string => `${numberText(amount, figures)}${noBreakSpace}${unit}`
export const plain = (amount: number): string => numberText(amount, 4)

export const nameOf = (library: Library, id: string): string => library.materials.get(id)?.name ?? id

/** As everywhere: what the loader knows of the record, the own bench before the books. */
export const seenAs = (transformation: Transformation): Mark => trustInYield(transformation)
