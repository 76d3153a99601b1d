import type { Reading } from './api.ts'
import { outcomeLine } from './draft.ts'

/** What is wrong with what was written of what came out, and texts that one of them may have meant. */
export interface OutcomeWords {
  readonly wrong: string
  readonly offers: readonly string[]
}

/**
 * The words that stand beside "What came out" where nothing was made of it.
 *
 * @returns null where it was read, or where nothing is written
 */
export function outcomeWords(outcome: string, reading: Pick<Reading, 'unread' | 'problems'>): OutcomeWords | null {
  const text = outcome.trim()
  if (text === '') return null
  const line = outcomeLine(outcome)
  if (/^\d+(?:[.,]\d+)?$/.test(text))
    return { wrong: `“${text}” has no unit: grams, or percent of theory?`, offers: [`${text} g`, `${text} %`] }
  const problem = reading.problems.find(one => one.where.includes(line))
  if (problem !== undefined) return { wrong: `${problem.what} ${problem.cure}`, offers: offersOf(problem.cure, text) }
  return reading.unread.includes(line) ? { wrong: `“${text}” is not read: write 46.5 g, 45-48 g or 74 %.`, offers: [] } : null
}

/** Lines of a cure whose figure was written, as they stand in the blank; examples of it are none. */
const offersOf = (cure: string, text: string): readonly string[] =>
  [...cure.matchAll(/"(?:isolated ([^"]+)|(yield [^"]+))"/g)]
    .map(match => (match[1] ?? match[2]!).replace(/^yield /, ''))
    .filter(offer => text.includes(offer))
