import type { Problem } from '../../core/problem/problem.ts'

/** The library holds other stereo forms of a structure that was typed, and not the structure itself. */
export const otherFormCode = 'structure-other-form'

/** On the page the forms are buttons, and so is the way to enter it as it was written. */
export const otherFormAsked = (problem: Problem): Problem => ({ ...problem, cure: 'One of these is meant, or yours is another:' })
