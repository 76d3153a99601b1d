import type { Problem } from '../problem/problem.ts'

const amount = String.raw`\d+(?:[.,]\d+)?\s*(?:kg|mg|µg|ug|g|mL|ml|µL|uL|L|mmol|mol|equiv\.?|eq\.?)`
const before = new RegExp(String.raw`^(.*?)(${amount})\s+(?:portions?\s+)?(?:of\s+)?each(?:\s+of)?\s*:?\s+(.+)$`)
const behind = new RegExp(String.raw`^(.+?)\s*[,:(]?\s*\(?(${amount})\s+(?:of\s+)?each\)?\s*\.?$`)
/** Longer lines are no charge, and would take long to look through. Characters. */
const longest = 400
/** Between the names of a list; a comma without a blank is one of a name. */
const between = /\s*[,;]\s+(?:and\s+)?|\s+and\s+/

/**
 * The lines that one amount of several things stands for: "5 g each of benzil and urea", "water and ethanol, 10 mL each". A list is taken apart at
 * every comma and "and", so that it is for a person to look at, never taken by itself.
 *
 * @returns null where the line says no such thing
 */
export function eachOf(line: string): readonly string[] | null {
  if (line.length > longest || !/\beach\b/.test(line)) return null
  const first = before.exec(line.trim())
  const last = first === null ? behind.exec(line.trim()) : null
  const [lead, of, list] = first !== null ? [first[1]!, first[2]!, first[3]!] : ['', last?.[2] ?? '', last?.[1] ?? '']
  const names = list.split(between).map(name => name.trim())
  if (of === '' || names.length < 2 || names.some(name => !/\p{L}/u.test(name))) return null
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
