import { bad, type Checked, good, type Problem } from '../problem/problem.ts'

/** How a single comma before exactly three digits is read: "1,200" is 1.2 in Berlin and 1200 in Boston. */
export type CommaRule = 'ask' | 'thousands' | 'decimal'

/** Spaces that people and typesetters put between groups of three digits, and plain ones. */
const spaces = /[\s\u00a0\u2007\u2009\u202f]/g
const vulgarFractions = new Map<string, number>([
  ['½', 1 / 2],
  ['¼', 1 / 4],
  ['¾', 3 / 4],
  ['⅓', 1 / 3],
  ['⅔', 2 / 3],
  ['⅛', 1 / 8],
])
/** Nothing on a bench passes a billion of any unit; beyond it a product of two amounts would soon leave the range of numbers. */
const largest = 1e9

/** The start of a text that looks like a number, for cutting it off before its unit; null where there is none. */
export function numberAtStart(text: string): string | null {
  const pattern =
    /^\s*[+\-\u2212\u2013]?\s*(?:\d+\s+\d+\s*[/\u2044]\s*\d+|\d+\s*[/\u2044]\s*\d+|\d+\s*[½¼¾⅓⅔⅛]|[½¼¾⅓⅔⅛]|(?:\d{1,3}(?:[ \u00a0\u2007\u2009\u202f]\d{3})+(?!\d)|\d+)(?:[.,]\d+)*(?:[eE][+\-\u2212]?\d+)?|[.,]\d+(?:[eE][+\-\u2212]?\d+)?)/
  return pattern.exec(text)?.[0] ?? null
}

/**
 * A number as people write it: decimal point or comma, groups of three parted by spaces or commas, 1e-3, 2 1/2, ½.
 *
 * @param text   the number alone, without a unit
 * @param where  where it was written, for the problem
 * @param comma  how "1,200" is read; by default it is asked about
 * @returns a finite number, -1e9 to 1e9; or one Problem
 * @example numberIn('0,125') // 0.125
 */
export function numberIn(text: string, where: readonly string[] = [], comma: CommaRule = 'ask'): Checked<number> {
  const problem = (code: string, what: string, cure: string): { readonly ok: false; readonly problems: readonly Problem[] } =>
    bad([{ code, where, what, why: 'Every amount of the plan is computed from the numbers given.', cure }])
  const shown = text.length > 40 ? `${text.slice(0, 40)}...` : text
  const written = text.trim().replace(/[\u2212\u2013]/g, '-')
  const sign = written.startsWith('-') ? -1 : 1
  const digits = written.replace(/^[+-]\s*/, '')

  const fraction = fractionIn(digits)
  const plain = fraction === null ? plainDigits(digits, comma) : null
  if (plain === 'two readings')
    return problem(
      'number-two-readings',
      `"${shown}" can be read in two ways: with a decimal comma or with a comma between thousands.`,
      'Write 1.2 with a point or 1200 without a comma.',
    )
  const value = fraction ?? (plain === null ? Number.NaN : Number(plain))
  if (Number.isNaN(value)) return problem('number-unreadable', `"${shown}" is not a number.`, 'Give a number such as 24, 1.5 or 0,75.')
  if (value > largest)
    return problem('number-too-large', `"${shown}" is beyond anything a bench can hold.`, 'Check the digits and the exponent.')
  if (value === 0 && /[1-9]/.test(digits.replace(/[eE].*$/, '')))
    return problem('number-too-small', `"${shown}" is too small to tell from nothing.`, 'Check the digits and the exponent.')
  return good(sign * value + 0)
}

function fractionIn(digits: string): number | null {
  const vulgar = /^(\d*)\s*([½¼¾⅓⅔⅛])$/.exec(digits)
  if (vulgar !== null) return Number(vulgar[1] || '0') + vulgarFractions.get(vulgar[2]!)!
  const mixed = /^(?:(\d+)\s+)?(\d+)\s*[/\u2044]\s*(\d+)$/.exec(digits)
  if (mixed === null) return null
  const below = Number(mixed[3])
  return below === 0 ? Number.NaN : Number(mixed[1] ?? '0') + Number(mixed[2]) / below
}

/** The digits with a decimal point and nothing between groups, ready for Number(); null where they make no number. */
function plainDigits(digits: string, comma: CommaRule): string | null | 'two readings' {
  const [mantissa = '', exponent] = digits.split(/[eE]/) as [string?, string?]
  const tail = exponent === undefined ? '' : `e${exponent}`
  if (exponent !== undefined && !/^[+-]?\d{1,4}$/.test(exponent)) return null
  const grouped = /^\d{1,3}(?:[\s\u00a0\u2007\u2009\u202f]\d{3})+(?=$|[.,])/.test(mantissa) ? mantissa.replace(spaces, '') : mantissa
  if (/^(\d+\.?\d*|\.\d+)$/.test(grouped)) return grouped + tail
  // Commas in groups of three, then perhaps a point: English thousands. Points in groups, then a comma: the other way round.
  if (/^[1-9]\d{0,2}(,\d{3}){2,}$/.test(grouped) || /^[1-9]\d{0,2}(,\d{3})+\.\d+$/.test(grouped)) return grouped.replaceAll(',', '') + tail
  if (/^[1-9]\d{0,2}(\.\d{3})+,\d+$/.test(grouped)) return grouped.replaceAll('.', '').replace(',', '.') + tail
  if (/^[1-9]\d{0,2},\d{3}$/.test(grouped)) {
    if (comma === 'ask') return 'two readings'
    return grouped.replace(',', comma === 'decimal' ? '.' : '') + tail
  }
  if (/^(\d+,\d+|,\d+)$/.test(grouped)) return grouped.replace(',', '.') + tail
  return null
}
