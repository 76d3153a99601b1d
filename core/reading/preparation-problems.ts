import type { Problem } from '../problem/problem.ts'

/** Longer than any preparation on a page; keeps a wrong file from being read for minutes. In characters. */
export const longestText = 50_000
/** Lines of a preparation; what comes after them stays unread. */
export const mostLines = 200

export const tooLong = (length: number): Problem => ({
  code: 'text-too-long',
  where: ['text'],
  what: `The text has ${length} characters; a preparation has at most ${longestText}.`,
  why: 'One preparation is read at a time.',
  cure: 'Give the equation and the charges of one step alone.',
})

export const tooManyLines = (count: number): Problem => ({
  code: 'text-too-long',
  where: [`line ${mostLines + 1}`],
  what: `The text has ${count} lines; only the first ${mostLines} were read.`,
  why: 'One preparation is read at a time.',
  cure: 'Give the equation and the charges of one step alone; the lines after these are kept as typed.',
})

export const noLimiting: Problem = {
  code: 'limiting-unknown',
  where: ['charges'],
  what: 'No reactant of the equation has an amount in moles.',
  why: 'Equivalents and the theoretical yield are counted on the limiting reactant.',
  cure: 'Give the mass, volume or moles of at least one reactant, by a name the library knows.',
}

/** Any of them may be a reactant, and give out before the one that the theory is counted on. */
export const ifNoReactant = (unread: readonly string[]): string =>
  `theory, equivalents and yield hold only if the unread ${unread.length === 1 ? 'line is not a reactant' : 'lines are no reactants'}: ${unread.map(line => `"${line}"`).join(', ')}`
