/** Keys of a material whose value is a text; all others are written as JSON. */
const textKeys: ReadonlySet<string> = new Set(
  'id name kind formula displayFormula smiles cas form note storageGroup wasteStream peroxideClass'.split(' '),
)

export const isTextKey = (key: string): boolean => textKeys.has(key)

/** A value of a record as it stands in a cell or a data field: texts as they are where that is unmistakable, all else as JSON. */
export function cellOf(key: string, value: unknown): string {
  if (!isTextKey(key) || typeof value !== 'string') return inOneLine(value)
  // Signs that end a record or open a field of an SD file are quoted too, and halves of a sign, which no file holds.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: a cell of one line cannot hold them
  return value === '' || value !== value.trim() || /^["$>]|^M {2}END|[\u0000-\u001f\u007f-\u009f\u2028\u2029\ufeff]|\p{Cs}/u.test(value)
    ? inOneLine(value)
    : value
}

/** As JSON, with the two signs escaped that it lets stand although they end a line elsewhere. */
const inOneLine = (value: unknown): string =>
  JSON.stringify(value).replace(/[\u2028\u2029]/g, sign => `\\u${sign.charCodeAt(0).toString(16)}`)

/** The value that a cell stands for; the text itself where it is no JSON. */
export function cellValue(key: string, cell: string): unknown {
  const isQuoted = cell.startsWith('"')
  if (isTextKey(key) && !isQuoted) return cell
  try {
    return JSON.parse(cell)
  } catch {
    return cell
  }
}

/** Signs that make a spreadsheet take a cell for a formula (OWASP, CSV injection); and the apostrophe itself, so that reading undoes writing. */
const first = /^[=+\-@\t\r']/
const number = /^[+-]?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/i

/** A cell that no spreadsheet runs as a formula. */
export const guarded = (cell: string): string => (first.test(cell) && !number.test(cell) ? `'${cell}` : cell)

/** The cell as it was before {@link guarded}. */
export const unguarded = (cell: string): string => (/^'[=+\-@\t\r']/.test(cell) ? cell.slice(1) : cell)
