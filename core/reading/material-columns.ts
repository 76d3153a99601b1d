import { materialSchema } from '../library/material.ts'
import { type Checked, good } from '../problem/problem.ts'
import { type CommaRule, numberIn } from '../quantity/number.ts'
import { cellValue } from './cell-text.ts'

/** Keys of a material, each a column of a table and a data field of an SD file. */
export const materialKeys = Object.keys(materialSchema.shape)

/** Headings as people write them, small letters without blanks and marks, and the key they mean. */
const headings: ReadonlyMap<string, string> = new Map([
  ...materialKeys.map(key => [plain(key), key] as const),
  ...([
    ['material', 'name'],
    ['compound', 'name'],
    ['synonym', 'synonyms'],
    ['othernames', 'synonyms'],
    ['casnumber', 'cas'],
    ['casno', 'cas'],
    ['molecularformula', 'formula'],
    ['density', 'densityGPerMl'],
    ['densitygml', 'densityGPerMl'],
    ['mp', 'meltingC'],
    ['meltingpoint', 'meltingC'],
    ['bp', 'boilingC'],
    ['boilingpoint', 'boilingC'],
    ['flashpoint', 'flashC'],
    ['state', 'form'],
    ['hcodes', 'hazards'],
    ['hazardcodes', 'hazards'],
    ['hazard', 'hazards'],
    ['source', 'sources'],
    ['citation', 'sources'],
  ] as const),
])

function plain(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9]/g, '')
}

/** The key that a heading, or the name of a data field, means; null where it means none. */
export const keyOfHeading = (heading: string): string | null => headings.get(plain(heading)) ?? null

const numbers: ReadonlySet<string> = new Set(['densityGPerMl', 'meltingC', 'boilingC', 'flashC'])

/**
 * What people write under a heading, as the library holds it.
 *
 * @param from   what the file is called as the source of hazard codes
 * @param comma  how a comma before three digits is read
 * @returns a problem for a figure that is no number, or may be two
 */
export function materialValue(key: string, cell: string, from: string, where: readonly string[], comma: CommaRule): Checked<unknown> {
  const value = cellValue(key, cell)
  if (typeof value !== 'string') return good(key === 'synonyms' && !Array.isArray(value) ? [String(value)] : value)
  if (numbers.has(key)) return numberIn(value, where, comma)
  if (key === 'synonyms') return good(parts(value, /;/))
  // Without a signal word of its own a table cannot tell Danger from Warning: the loader asks for it.
  if (key === 'hazards') return good({ codes: parts(value, /[\s,;]+/), from })
  return good(key === 'sources' ? [{ citation: value, checked: false }] : value)
}

const parts = (value: string, between: RegExp): string[] =>
  value
    .split(between)
    .map(one => one.trim())
    .filter(Boolean)
