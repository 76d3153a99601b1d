import type { Problem } from '../problem/problem.ts'
import type { CommaRule } from '../quantity/number.ts'
import { type Dimension, type Unit, unitTable } from '../quantity/unit.ts'
import { amountUnread, type Measure } from './measures.ts'

/** Why an amount cannot be taken as it stands, and how it is written: a problem that still lacks where it is. */
export type Unclear = Omit<Problem, 'where'>

const why = 'An amount that is guessed is charged, bought and logged as if it had been read.'

/** "5 mL each", "10 mL, several times": how much goes in altogether does not follow. */
export const unclearRepeats = (text: string, said: string): Unclear => ({
  code: 'amount-unclear',
  what: `"${text}" says "${said}", and how much that makes altogether is not plain.`,
  why,
  cure: 'Write how often, a cross and the amount, such as "3 x 10 mL", or the sum alone.',
})

/** "10 mL + 2 x 5 mL": two amounts of one kind, which may be parts, or one of them a slip; null where no two are. */
export function unclearSum(text: string, amounts: readonly Measure[]): Unclear | null {
  const several = amounts.filter(one => !one.perGram && amounts.some(other => other !== one && !other.perGram && isSecond(one, other)))
  if (several.length === 0) return null
  return {
    code: 'amount-unclear',
    what: `"${text}" gives ${several.length} amounts of one material.`,
    why,
    cure: 'If they all go in, write a line for each of them or their sum; if not, leave the one that does.',
  }
}

/** Where an amount stands that is not read, and why. */
type Unread = Pick<Measure, 'from' | 'to'> & { readonly why: Unclear }

/** The first amount of a line that is meant as one and cannot be read as a number with a unit; null where all can. */
export function unreadIn(line: string, comma: CommaRule): Unread | null {
  const found = amountUnread(line, comma)
  if (found === null) return brokenNumber(line) ?? withoutUnit(line)
  const { from, to, written, problems } = found
  return { from, to, why: problems[0] ?? divided(written) }
}

/** "5 .2 g", "1. 5 g": what stands before the blank may be a part of the number, or count the lines of a list. */
function brokenNumber(line: string): Unread | null {
  const amount = String.raw`\d+\s*(?:kg|mg|g|m[lL]|L|mmol|mol)\b`
  const match = new RegExp(String.raw`(?<![\p{L}\p{N}.,-])(\d+)(?:\s+(?=[.,]${amount})|[.,]\s+(?=${amount}))`, 'u').exec(line)
  if (match === null) return null
  const written = new RegExp(`^.{${match[0].length}}[.,]?${amount}`).exec(line.slice(match.index))![0]
  const [joined, second] = [written.replace(/(\d)\s*([.,])\s*(\d)/, '$1$2$3'), /[.,]\s/.test(match[0])]
  const list = second ? ` If "${match[0].trim()}" only counts the lines, take it out.` : ''
  return {
    from: match.index,
    to: match.index + match[0].length,
    why: { code: 'amount-unclear', what: `"${written}" has a blank within its number.`, why, cure: `Write "${joined}".${list}` },
  }
}

/** A slash between numbers that is no common fraction: a range, a choice, or a division. */
const divided = (written: string): Unclear => ({
  code: 'amount-unclear',
  what: `"${written}" can be a range, a choice or a division.`,
  why,
  cure: `Write a range with a dash${range(written)}, or a single number.`,
})

const range = (written: string): string => {
  const [, low, high, unit] = /^\s*([\d.,]+)\s*[/⁄]\s*([\d.,]+)\s*(.+)$/.exec(written) ?? []
  return unit === undefined ? '' : `, "${low}-${high} ${unit}"`
}

/** "Wash with water (3 x 10)". */
function withoutUnit(line: string): Unread | null {
  const match = /(?<![\p{L}\p{N}.,-])\d{1,2}\s*[x×*]\s*\d+(?:[.,]\d+)?(?=\s*(?:\)|[,;]\s|$))/u.exec(line)
  if (match === null) return null
  return {
    from: match.index,
    to: match.index + match[0].length,
    why: {
      code: 'amount-unclear',
      what: `"${match[0]}" has no unit.`,
      why,
      cure: `Say of what unit it is, such as "${match[0]} mL".`,
    },
  }
}

/** An amount per gram of product that makes neither a mass nor a volume. */
export const unclearPerGram = (text: string): Unclear => ({
  code: 'amount-unclear',
  what: `"${text}" gives per gram what is neither a mass nor a volume.`,
  why,
  cure: 'Write it in g or mL, such as "5 mL per gram".',
})

/** The same measure in another unit is told once more ("1.1 kg (1100 g)"); anything else of the same kind is a second amount. */
function isSecond(one: Measure, other: Measure): boolean {
  if (dimensionOf(one) !== dimensionOf(other)) return false
  return one.unit === other.unit || Math.abs(inBase(one) / inBase(other) - 1) > 0.01
}

const dimensionOf = ({ unit }: Measure): Dimension | 'drop' | 'equiv' | null =>
  unit === 'drop' || unit === 'equiv' ? unit : (unitTable[unit as Unit]?.dimension ?? null)

function inBase({ unit, value }: Measure): number {
  const row = unitTable[unit as Unit]
  return row === undefined ? value : (value * row.times) / row.per
}
