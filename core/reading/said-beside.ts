import type { Role } from '../library/transformation.ts'

/** What a charge says besides material and amount. */
export interface SaidBeside {
  /** The charge without those words. */
  readonly rest: string
  /** Where the amount comes from, as the library format says it; absent where nothing is said. */
  readonly from?: 'from memory' | 'common practice'
  /** What it is for; absent where nothing is said. */
  readonly role?: Role
}

/** Each word of a source stands alone between marks: "DMF (about 60 mL, remembered)". */
const sources: readonly (readonly [RegExp, NonNullable<SaidBeside['from']>])[] = [
  [/(^|[\s,;(])(?:all\s+)?(?:(?:from|by)\s+memory|(?:as\s+)?remembered)(?=\s*(?:[),;{.]|$))/i, 'from memory'],
  [/(^|[\s,;(])(?:by\s+|as\s+)?common\s+practice(?=\s*(?:[),;{.]|$))/i, 'common practice'],
]

const purposes: readonly (readonly [string, Role])[] = [
  ['(?:re)?crystalli[sz](?:ing|ation)', 'recrystallisation'],
  ['(?:wash|rins)(?:ing|es)|(?:the|a)\\s+(?:wash|rinse)', 'wash'],
  ['extract(?:ing|ions?)', 'extraction'],
  ['quenching|(?:the|a)\\s+quench', 'quench'],
]

/**
 * Takes out of one charge what it says of its source and of its purpose: "potassium carbonate (20.7 g), from memory", "hexane, 20 mL for
 * recrystallization".
 *
 * @param charge  one charge as typed, perhaps with an id in braces at its end
 */
export function saidBeside(charge: string): SaidBeside {
  let rest = charge
  let from: SaidBeside['from']
  let role: Role | undefined
  for (const [pattern, source] of sources)
    if (pattern.test(rest)) {
      rest = rest.replace(pattern, '$1')
      from ??= source
    }
  for (const [words, purpose] of purposes) {
    const pattern = new RegExp(
      String.raw`(^|[\s,;(])(?:used\s+)?for\s+(?:the\s+(?=\w+ing|\w+ion))?(?:${words})(?=\s*(?:[),;{.:]|$|\d))`,
      'i',
    )
    if (!pattern.test(rest)) continue
    rest = rest.replace(pattern, '$1')
    role ??= purpose
  }
  if (from === undefined && role === undefined) return { rest: charge }
  return { rest: withoutEmpty(rest), ...(from === undefined ? {} : { from }), ...(role === undefined ? {} : { role }) }
}

/** Marks that parted the words from the rest part nothing now. */
const withoutEmpty = (text: string): string =>
  text
    .replace(/\(\s*[,;]*\s*\)/g, ' ')
    .replace(/[,;]\s*(?=[),;])/g, '')
    .replace(/\(\s*[,;]\s*/g, '(')
    .replace(/\s+(?=[),;])/g, '')
    .replace(/[\s,;]+(?=$|\{)/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
