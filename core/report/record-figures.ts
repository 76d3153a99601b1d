import { type FigureTrust, lineFigure, materialFigures, stepFigures } from '../library/figure-trust.ts'
import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { physicalFigures } from '../library/physical.ts'
import type { Transformation } from '../library/transformation.ts'
import { durationText, massText } from '../quantity/print.ts'
import { temperatureText } from './bench-sheet.ts'
import { nameIn } from './names.ts'

/** A figure of a record, as it is printed, with how sure it is. */
export interface RecordFigure extends FigureTrust {
  /** Absent where the record states none that could be printed in a word or two. */
  readonly value?: string
}

/** Everything a material's record states. */
export function figuresOfMaterial(material: Material): readonly RecordFigure[] {
  const values = new Map<string, string>(physicalFigures(material).map(one => [one.figure, one.value]))
  return materialFigures(material).map(one => valued(one, values.get(one.figure)))
}

/** Everything a transformation's record states, its charges in one. */
export const figuresOfStep = (step: Transformation): readonly RecordFigure[] =>
  stepFigures(step).map(one => valued(one, printed(step, one.figure)))

/** The lines of its charge at the scale of the source. */
export const chargesOfStep = (library: Library, step: Transformation): readonly (RecordFigure & { readonly material: string })[] =>
  step.charge.map(line => {
    const amount = line.amount ?? line.perGramProduct
    const value =
      amount === undefined || amount === null ? undefined : `${amount} ${line.unit}${line.amount === null ? ' per g of product' : ''}`
    return { material: nameIn(library)(line.material), ...valued(lineFigure(step, line), value) }
  })

const valued = (one: FigureTrust, value: string | undefined): RecordFigure => (value === undefined ? one : { ...one, value })

function printed(step: Transformation, figure: FigureTrust['figure']): string | undefined {
  const { yieldPercent, kind, temperatureC, elapsedHours, largestProvenG, smallestProvenG, holdPoint, coProducts } = step
  const unit = kind === 'isolation' ? 'g per 100 g' : '%'
  switch (figure) {
    case 'yield':
      return `${yieldPercent.typical} ${unit}`
    case 'range of the yield':
      return `${yieldPercent.low}–${yieldPercent.high} ${unit}`
    case 'second product':
      return coProducts?.map(one => `${one.yieldPercent.typical} %`).join(', ')
    case 'times':
      return `${durationText(elapsedHours)} in all`
    case 'temperature':
      return temperatureText(temperatureC) ?? undefined
    case 'largest scale':
      return largestProvenG === undefined ? undefined : massText(largestProvenG)
    case 'smallest scale':
      return smallestProvenG === undefined ? undefined : massText(smallestProvenG)
    case 'hold point':
      return holdPoint
    default:
      return undefined
  }
}
