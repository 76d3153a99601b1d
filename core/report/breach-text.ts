import { counted, listed } from './words.ts'

/** More materials than this are counted. */
const mostNamed = 3

/** What a plan uses against what was asked, as said of it: "acetic acid, potassium hydroxide and two others". */
export function usedText(used: readonly string[]): string {
  if (used.length <= mostNamed) return parted(used)
  return parted([...used.slice(0, mostNamed - 1), counted(used.length - mostNamed + 1, 'other')])
}

/** Names that hold a comma are parted by semicolons. */
const parted = (names: readonly string[]): string =>
  names.length > 1 && names.some(name => name.includes(', ')) ? `${names.slice(0, -1).join('; ')}; and ${names.at(-1)}` : listed(names)

/** One sentence for the head of a print: the plan uses what was asked to be kept clear of. Null where it does not. */
export function breachSentence(breach: { readonly asked: readonly string[]; readonly used: readonly string[] } | null): string | null {
  return breach === null ? null : `Without ${listed(breach.asked)} was asked; this plan still uses ${parted(breach.used)}.`
}
