import { lineFigure, recordFigure } from '../library/figure-trust.ts'
import { type Library, transformationOf } from '../library/library.ts'
import type { Mark, Marked } from '../library/mark.ts'
import type { AmountBasis, ChargedLine, ChargedStep } from '../route/charged.ts'
import type { Evaluation } from './evaluation.ts'

const own: Partial<Record<AmountBasis, { readonly mark: Exclude<Mark, 'reckoned'>; readonly source: string }>> = {
  'at-least': { mark: 'at least', source: 'the source gives none: what the equation takes at full conversion' },
  about: { mark: 'about', source: "what the solution is made up with, at the solution's own volume" },
  planned: { mark: 'planned', source: 'common practice: the source gives no amount' },
  open: { mark: 'unknown', source: 'the source gives no amount' },
}

/** Below this part of the amount in hand nothing is left over; rounding in sums of amounts. */
const rounding = 1e-9

/**
 * How sure one charged line is: as its source states it at its scale, reckoned, planned or left open; the start itself, where all that is in
 * hand goes in, as typed.
 */
export function lineMark(
  library: Library,
  { start }: Pick<Evaluation, 'start'>,
  step: ChargedStep,
  line: ChargedLine,
): Marked & { readonly mark: Exclude<Mark, 'reckoned'> } {
  const stated = own[line.basis]
  if (stated !== undefined) return stated
  const usable = start.haveG === null ? null : start.haveG - start.keptBackG
  if (
    line.basis !== 'derived' &&
    line.supply === 'start' &&
    usable !== null &&
    line.massG !== null &&
    Math.abs(line.massG - usable) <= rounding * usable
  )
    return { mark: 'typed', source: 'the amount in hand' }
  const transformation = transformationOf(library, step.transformation)
  const row = line.line === null ? undefined : transformation.charge[line.line]
  const { mark, source } = row === undefined ? recordFigure(transformation) : lineFigure(transformation, row)
  return { mark, source }
}
