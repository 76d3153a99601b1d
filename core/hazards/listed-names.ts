import { plainLetters } from '../library/plain-letters.ts'

/** A name as lists compare it: case, accents, hyphens, commas and blanks do not keep a substance from its row. */
export const comparable = (name: string): string => plainLetters(name).replace(/[^\p{L}\p{N}]+/gu, '')

/** At most this many letters and digits is an abbreviation, which several substances may share (DF, 4-AP). */
const longestAbbreviation = 5

export const isAbbreviation = (comparableName: string): boolean => comparableName.length <= longestAbbreviation

/** Marks of hand and of rotation before a name: (1R,2S)-, (+)-. */
const hands = /\((?:\d*[RSEZ],?)+\)-|\([+\-\u2212]\)-/g

/**
 * The names a row of a list stands for, as they compare: whole; without what stands in brackets; what stands in brackets; the part before
 * "and its salts", "its esters" and the like; the parts that a comma and a blank divide ("benzilic acid, 2,2-diphenyl-...").
 */
export function namesListed(name: string, synonyms: readonly string[] = []): ReadonlySet<string> {
  const found = new Set<string>()
  const add = (text: string) => {
    const key = comparable(text)
    if (/\p{L}/u.test(key) && key.length > 1) found.add(key)
  }
  for (const one of [name, ...synonyms]) {
    add(one)
    // Only brackets that stand apart are asides: those of (chloromethyl)benzene belong to its name.
    const bare = one.replace(/\s+\([^()]*\)/g, '').replace(hands, '')
    add(bare)
    for (const [, inside] of one.matchAll(/\s\(([^()]*)\)/g)) add(inside ?? '')
    const head = bare.split(/,? (?:and )?(?:its|their) |,? incl\. /)[0] ?? ''
    add(head)
    for (const part of head.split(/, /)) add(part)
  }
  return found
}
