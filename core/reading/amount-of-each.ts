import type { Problem } from '../problem/problem.ts'
import { measuresIn } from './measures.ts'
import { openingOf } from './opening.ts'
import { solventsInRatio } from './solvent-ratio.ts'

/** Longer lines are no charge, and would take long to look through. Characters. */
const longest = 400
/** Between the names of a list; a comma without a blank is one of a name. */
const between = /\s*[,;]\s+(?:(?:and|then)\s+)*|\s+(?:and|then)\s+(?:then\s+)?/
const leadsList = /^\s*(?:portions?\s+)?(?:of\s+)?each(?:\s+of)?\s*:?\s+(.+)$/
const closesList = /^\s*(?:of\s+)?each\s*\)?\s*\.?$/
/** Words before a list that say no more than the amount does. */
const equally = /^(?:an?\s+|the\s+)?(?:(?:equal\s+)?(?:volumes?|amounts?|parts?|portions?|weights?|quantities)\s+of|mixture\s+of|both)\s+/i

/**
 * The lines that one amount of several things stands for: "5 g each of benzil and urea", "wash with water, then ethanol (2 x 10 mL each)", "hexane / ethyl
 * acetate 4:1, 100 mL". A
 * list is taken apart at every comma and "and", so that it is for a person to look at, never taken by itself.
 *
 * @returns null where the line says no such thing
 */
export function eachOf(line: string): readonly string[] | null {
  const text = line.trim()
  if (text.length > longest) return null
  const solvents = solventsInRatio(text)
  if (solvents !== null) return solvents
  if (!/\beach\b/.test(text)) return null
  const amounts = measuresIn(text, 'thousands').filter(one => one.kind === 'amount')
  const [only] = amounts
  if (only === undefined || amounts.length > 1) return null
  const [before, of, after] = [text.slice(0, only.from), text.slice(only.from, only.to).trim(), text.slice(only.to)]
  const listed = leadsList.exec(after)?.[1]
  const whole = listed ?? (closesList.test(after) ? before.replace(/[\s,:(]+$/, '') : null)
  if (whole === null) return null
  // "Wash with water and brine": each of the lines is a washing.
  const verb = listed === undefined ? openingOf(whole) : ''
  const lead = listed === undefined ? verb : before
  const names = whole
    .slice(verb.length)
    .replace(equally, '')
    .split(between)
    .map(name => name.trim())
  if (names.length < 2 || names.some(name => !/\p{L}/u.test(name))) return null
  return names.map(name => `${lead}${of} ${name}`)
}

/** Null where the line is no amount of each. */
export function amountOfEach(text: string, where: readonly string[]): Problem | null {
  const lines = eachOf(text)
  if (lines === null) return null
  return {
    code: 'amount-of-each',
    where,
    what: `"${text}" gives one amount for ${lines.length} materials.`,
    why: 'Where a list of names is to be parted is not guessed: "and" may belong to a name.',
    cure: `Write a line each: ${lines.join('; ')}.`,
  }
}
