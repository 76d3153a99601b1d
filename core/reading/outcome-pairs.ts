import type { Measure } from './measures.ts'

/** What was weighed before and after it was made pure, or dry. Dried is not purified: "crude 5 g, dry 4 g" is none of them. */
const pairs = [
  [
    /(?<!\p{L})(?:crude|raw|impure|unpurified)(?!\p{L})/iu,
    /(?<!\p{L})(?:pure|purified|(?:re)?crystalli[sz]ed|(?:re)?distilled|sublimed)(?!\p{L})/iu,
  ],
  [/(?<!\p{L})(?:wet|moist|damp|undried)(?!\p{L})/iu, /(?<!\p{L})(?:dry|dried)(?!\p{L})/iu],
] as const

/**
 * Of two masses the one told to be the pure or the dry one: "5.2 g crude, 4.1 g pure".
 *
 * @returns null where either has no such word, or the line does not part the two
 */
export function purestOf(line: string, masses: readonly Measure[]): Measure | null {
  const [first, second] = [...masses].sort((one, other) => one.from - other.from)
  if (first === undefined || second === undefined) return null
  const between = line.slice(first.to, second.from)
  const parted = /[,;(]|\band\b|\bthen\b|\bafter\b/.exec(between)
  if (parted === null) return null
  const at = first.to + parted.index
  for (const [before, after] of pairs) {
    const is = (word: RegExp): readonly boolean[] => [word.test(line.slice(0, at)), word.test(line.slice(at))]
    const [[firstBefore, secondBefore], [firstAfter, secondAfter]] = [is(before), is(after)]
    if (firstBefore && !secondBefore && secondAfter && !firstAfter) return second
    if (firstAfter && !secondAfter && secondBefore && !firstBefore) return first
  }
  return null
}
