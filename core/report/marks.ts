import { type Mark, type Marked, marks } from '../library/mark.ts'

/** One sign beside the figure; none where it is reckoned from others that have theirs. */
export const markLetters: Readonly<Record<Mark, string>> = {
  seen: 's',
  remembered: 'r',
  'own bench': 'b',
  typed: 't',
  derived: 'd',
  'at least': 'l',
  about: 'a',
  planned: 'p',
  estimated: 'e',
  invented: 'i',
  unknown: '?',
  reckoned: '',
}

/** What a sign means, short enough for a legend. */
export const markWords: Readonly<Record<Mark, string>> = {
  seen: 'seen in a source',
  remembered: 'remembered',
  'own bench': 'own bench',
  typed: 'typed in this plan',
  derived: 'reckoned by the library',
  'at least': 'the least by the equation',
  about: 'about',
  planned: 'rule of thumb',
  estimated: 'estimated',
  invented: 'invented',
  unknown: 'not stated',
  reckoned: 'reckoned from figures that have a letter',
}

/** Mark and source in one: what a screen reader says, and what a pointer is told. */
export const markText = ({ mark, source }: Marked): string =>
  source === null ? markWords[mark] : source.startsWith(markWords[mark]) ? source : `${markWords[mark]}: ${source}`

/** The signs that occur with their meaning, in one order everywhere. */
export function legendRows(used: Iterable<Mark>): readonly { readonly mark: Mark; readonly letter: string; readonly words: string }[] {
  const wanted = new Set(used)
  return marks
    .filter(mark => wanted.has(mark) && mark !== 'reckoned')
    .map(mark => ({ mark, letter: markLetters[mark], words: markWords[mark] }))
}

export const noLetter = 'No letter: reckoned from those that have one.'

/** The legend as one line of text: "s seen in a source; e estimated. No letter: reckoned from those that have one." */
export function legendText(used: Iterable<Mark>): string {
  const rows = legendRows(used)
  return rows.length === 0 ? noLetter : `${rows.map(({ letter, words }) => `${letter} ${words}`).join('; ')}. ${noLetter}`
}
