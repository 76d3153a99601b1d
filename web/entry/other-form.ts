import type { Problem } from '../../core/problem/problem.ts'
import { formWords } from '../../core/reading/stereo-forms.ts'
import type { Identified } from './api.ts'

/** The library holds other stereo forms of a structure that was typed, and not the structure itself. */
export const otherFormCode = 'structure-other-form'

/** On the page the forms are buttons, and so is the way to enter it as it was written. */
export const otherFormAsked = (problem: Problem): Problem => ({ ...problem, cure: 'One of these is meant, or yours is another:' })

/** "same CAS number; but it is its mirror image, the other hand": never the same structure where it is not. */
export function sameness({ by, form }: Identified['matches'][number]): string {
  const words = form === null ? '' : formWords[form]
  return by === 'other form' ? `same skeleton; ${words}` : `same ${by}${words === '' ? '' : `; but it ${words}`}`
}
