import type { Library } from '../../core/library/library.ts'
import type { Material } from '../../core/library/material.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { readStrength } from '../../core/reading/strength-text.ts'

/** What a person typed of a solution; an empty text is nothing said. */
export interface TypedSolution {
  readonly form: Material['form']
  /** Id of the compound in it. */
  readonly of: string
  readonly strength: string
  /** Id of what it is made up with; empty = water. */
  readonly rest: string
}

/** A strength, or what it is of, has been said: then both are needed. */
export const isOfSomething = ({ form, of, strength, rest }: TypedSolution): boolean =>
  form === 'solution' && [of, strength, rest].some(text => text.trim() !== '')

/** What a solution contains and how strong it is, or what keeps that from being told; nothing typed is left out in silence. */
export function solutionTyped(
  typed: TypedSolution,
  library: Library,
): { readonly contains: NonNullable<Material['contains']> | null; readonly problems: readonly Problem[] } {
  if (!isOfSomething(typed)) return { contains: null, problems: [] }
  const compound = library.materials.get(typed.of)
  const rest = library.materials.get(typed.rest)
  const strength =
    typed.strength.trim() === ''
      ? null
      : readStrength(
          typed.strength,
          { name: compound?.name ?? typed.of, formula: compound?.formula, molarMass: library.molarMass.get(typed.of) ?? null },
          ['new material', 'strength'],
        )
  const problems = [
    ...(compound === undefined || compound.kind === 'mixture' ? [ofNothing(compound?.name)] : []),
    ...(typed.rest.trim() !== '' && rest === undefined ? [madeUpWithNothing] : []),
    ...(strength === null ? [noStrength] : strength.ok || compound === undefined ? [] : strength.problems),
  ]
  if (problems.length > 0 || strength === null || !strength.ok) return { contains: null, problems }
  return { contains: { compound: typed.of, ...strength.value, ...(rest === undefined ? {} : { rest: rest.id }) }, problems: [] }
}

const ofNothing = (mixture: string | undefined): Problem => ({
  code: 'solution-of-nothing',
  where: ['new material', 'of'],
  what: mixture === undefined ? 'What is dissolved in it is not said.' : `${mixture} is a mixture itself.`,
  why: 'Its moles are those of the compound in it.',
  cure: 'Choose the compound from the list; one that the library does not hold is entered first, as a material of its own.',
})

const madeUpWithNothing: Problem = {
  code: 'solution-made-up-with-nothing',
  where: ['new material', 'rest'],
  what: 'What it is made up with is not a material of the library.',
  why: 'It is bought, and it counts among the hazards.',
  cure: 'Choose it from the list, or leave it empty for water.',
}

const noStrength: Problem = {
  code: 'strength-missing',
  where: ['new material', 'strength'],
  what: 'How strong it is is not said.',
  why: 'Every amount of it is reckoned from its strength.',
  cure: 'Write one figure with its unit: 37 % (by mass), 3 M, 0.5 N, 2 % w/v or 40 g/L.',
}
