import { tellsWhatToDo } from './tells-what-to-do.ts'
import { startsWithVerb, verbs } from './verbs.ts'

/** Verbs that open a clause of their own though nothing is charged by them. */
const idle =
  'distil(?:led)?|evaporated?|concentrated?|collect(?:ed)?|separate|let|leave|left|stand|keep|kept|hold|held|steam|grind|ground|swirl|suck(?:ed)?|shaken?|chill(?:ed)?|removed?|press(?:ed)?|drain(?:ed)?'
const boundary = new RegExp(String.raw`(?:\s*[,;]\s*(?:(?:and|then)\s+)*|\s+(?:and\s+then|and|then)\s+)(?=(?:${verbs}|${idle})\b)`, 'i')

/**
 * What a line tells to do, one thing after the other: "filter, wash with 50 mL water and dry" is three clauses. A line that does not begin
 * with what is done is one: there a word such as "dried" describes the material.
 *
 * @returns pieces of the line as they stand in it, in order; the line itself where it is one clause
 */
export function clausesOf(line: string): readonly string[] {
  if (!startsWithVerb.test(line) && !tellsWhatToDo(line)) return [line]
  return line
    .split(boundary)
    .map(clause => clause.trim())
    .filter(clause => clause !== '')
}

/** "5 g benzil in 20 mL ethanol": where a second amount begins; what stands before it is a line of its own. */
export const joined = /\s+(?:in|and|with)\s+(?=(?:ca\.?\s+|about\s+)?\d[\d.,]*\s*(?:g|mg|kg|mL|ml|L)\s)/
