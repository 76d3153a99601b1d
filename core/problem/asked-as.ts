import type { Problem } from './problem.ts'

/**
 * What can be asked for or set, and the places to ask, by their keys in JSON. A problem names them so, in backticks; the API says just
 * that, and each other door puts its own word there: an option of the command line, the words of a control of the page.
 */
export const askedNames = [
  'from',
  'to',
  'start',
  'goals',
  'avoid',
  'avoidStep',
  'avoidCode',
  'avoidList',
  'mustPass',
  'ownedOnly',
  'seenOnly',
  'maxSteps',
  'make',
  'count',
  'apart',
  'unbeaten',
  'keepsRecords: true',
  'keepsRecords: false',
  'reach',
  'read-reactions',
] as const
export type AskedName = (typeof askedNames)[number]
export type AskedWords = Readonly<Record<AskedName, string>>

/** The name as it stands in a problem until a door says it in its own words. */
export const askedAs = (name: AskedName): string => `\`${name}\``

/** A problem with each name in the words of a door. */
export function inWords(problem: Problem, words: AskedWords): Problem {
  const told = (text: string): string =>
    askedNames.reduce((said, name) => (said.includes(askedAs(name)) ? said.replaceAll(askedAs(name), () => words[name]) : said), text)
  return {
    ...problem,
    where: problem.where.map(part => told(part)),
    what: told(problem.what),
    why: told(problem.why),
    cure: told(problem.cure),
  }
}
