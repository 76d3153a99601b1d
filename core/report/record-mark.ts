import { recordFigure } from '../library/figure-trust.ts'
import { type Library, transformationOf } from '../library/library.ts'
import type { Marked } from '../library/mark.ts'
import type { Evaluation } from '../plan/evaluation.ts'

/** How sure the words of steps are: those of a record that was only remembered go before those of one that was read. */
export function recordMark(library: Library, { steps }: Pick<Evaluation, 'steps'>, numbers: readonly string[]): Marked {
  const told = steps.filter(step => numbers.includes(step.number)).map(step => recordFigure(transformationOf(library, step.transformation)))
  return told.find(one => one.mark === 'remembered') ?? told[0] ?? { mark: 'unknown', source: null }
}
