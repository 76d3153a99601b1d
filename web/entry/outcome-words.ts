import type { Reading } from './api.ts'
import { outcomeLine } from './draft.ts'

/** What is wrong with what was written of what came out, and texts that one of them may have meant. */
export interface OutcomeWords {
  readonly wrong: string
  readonly offers: readonly string[]
}

const mass = /\d+(?:[.,]\d+)?\s*(?:kg|mg|g)\b/gi

/**
 * The words that stand beside "What came out" where nothing was made of it.
 *
 * @returns null where it was read, or where nothing is written
 */
export function outcomeWords(outcome: string, reading: Pick<Reading, 'unread' | 'problems'>): OutcomeWords | null {
  const text = outcome.trim()
  if (text === '') return null
  const line = outcomeLine(outcome)
  const problem = reading.problems.find(one => one.where.includes(line))
  if (problem !== undefined) return { wrong: `${problem.what} ${problem.cure}`, offers: [] }
  if (!reading.unread.includes(line)) return null
  if (/^\d+(?:[.,]\d+)?$/.test(text))
    return { wrong: `“${text}” has no unit: grams, or percent of theory?`, offers: [`${text} g`, `${text} %`] }
  const masses = text.match(mass) ?? []
  if (masses.length > 1)
    return { wrong: `“${text}” gives several masses: keep that of the dry, purified product alone.`, offers: [...new Set(masses)] }
  if (/\d\s*(?:mL|L|cm3|cc)\b/i.test(text))
    return { wrong: `“${text}” gives a volume: weigh it and write grams, or write the yield in percent.`, offers: [] }
  return { wrong: `“${text}” gives neither a mass nor a yield: write 46.5 g, 45-48 g or 74 %.`, offers: [] }
}
