import type { GainingCircle } from '../network/routes.ts'
import { askedAs } from '../problem/asked-as.ts'
import type { Problem } from '../problem/problem.ts'
import type { RoutesQuery } from './query.ts'

/** The search ended before it found a route. */
export const undecided = (query: RoutesQuery, bound: number | null): Problem => ({
  code: 'search-cut-short',
  where: [askedAs('from'), query.from, askedAs('to'), query.to],
  what: 'The search was ended before it found a route.',
  why: bound === null ? 'It is not known whether there is one.' : `If there is one, its value is at least ${bound}.`,
  cure: `Allow it more work, or narrow the question with ${askedAs('maxSteps')} or ${askedAs('avoid')}.`,
})

/** A circle that makes more of itself, named. */
export const gainingCircle = (error: GainingCircle): Problem => ({
  code: 'circle-gains',
  where: [...error.compounds],
  what: `One round of ${error.compounds.join(' -> ')} gives back more than it took.`,
  why: 'With such a circle anything could be had for nothing; it is always a fault in coefficients, charges or yields.',
  cure: 'Correct the transformations between these compounds.',
})
