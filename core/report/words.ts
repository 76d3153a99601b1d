import { byNumberThenName } from './order.ts'

/** Prefixes of a name that are not its first letter, as in *o*-phenylenediamine. Source: IUPAC recommendations on typography (locants). */
const locant = /^(o|m|p|N|E|Z|cis|trans|tert|sec|meso|endo|exo)(?=-)/

const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve']

/** A count in words up to twelve, as a sentence says it. */
export const inWords = (count: number): string => small[count] ?? String(count)

/** "one bottle", "six bottles", "14 bottles". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${inWords(count)} ${count === 1 ? one : many}`

/** First letter as a capital; that of a name with a locant (o-phenylenediamine) after the locant. */
export function capital(text: string): string {
  const prefix = locant.exec(text)?.[1]
  const at = prefix === undefined ? 0 : prefix.length + 1
  return text.slice(0, at) + text.charAt(at).toUpperCase() + text.slice(at + 1)
}

/** First letter small, as inside a sentence; an abbreviation in capitals stays. */
export const lowerFirst = (text: string): string => (/^[A-Z][A-Z]/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1))

/** Names as a list in a sentence: "a, b and c". */
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`

/** "4 C" as the library writes it becomes "4 °C", with a space that does not break. */
export const degrees = (text: string): string => text.replace(/(\d) C\b(?![-\u2013])/g, '$1\u00a0°C')

/** One sentence: a capital at its head and a stop at its end, whatever the source wrote. */
export const sentence = (text: string): string => {
  const trimmed = degrees(text.trim())
  return trimmed === '' ? '' : `${capital(trimmed)}${/[.!?:]$/.test(trimmed) ? '' : '.'}`
}

/** "step 2a", "steps 1, 2a and 2b". */
export const stepsText = (numbers: readonly string[]): string =>
  numbers.length === 0 ? '' : `step${numbers.length > 1 ? 's' : ''} ${listed([...numbers].sort(byNumberThenName))}`
