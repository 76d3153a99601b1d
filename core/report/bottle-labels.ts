import { holdPointOf } from '../days/hold-point.ts'
import type { LabelledMaterial, WasteLine } from '../hazards/hazard-list.ts'
import { stepFigures } from '../library/figure-trust.ts'
import { type Library, materialOf, transformationOf } from '../library/library.ts'
import type { Marked } from '../library/mark.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { byNumber } from '../plan/merged-steps.ts'
import { durationText, noBreakSpace, numberText } from '../quantity/print.ts'

/** What is stuck on the bottle of an intermediate or a product; mass and dates are left to write. */
export interface BottleLabel {
  readonly material: string
  readonly name: string
  readonly formula: string | null
  readonly molarMass: string | null
  readonly step: string
  /** Null where the plan has no label for it: then it counts as unknown. */
  readonly hazard: LabelledMaterial | null
  /** "within 28 days of work-up, derived": how long it may wait. */
  readonly keeps: string
  /** How sure that is. */
  readonly keepsSure: Marked
}

/** A container of waste: what goes in, and what never. */
export interface WasteLabel {
  readonly stream: WasteLine
  readonly steps: readonly string[]
  readonly materials: readonly string[]
}

const notStated: Marked = { mark: 'unknown', source: null }
const derivedHold: Marked = { mark: 'derived', source: null }

/** Labels for every compound made, second products included, in order of steps. */
export function bottleLabels(library: Library, { steps, coProducts, hazards }: Evaluation): readonly BottleLabel[] {
  const inOrder = [...steps].sort((a, b) => byNumber(a.number, b.number))
  return inOrder.flatMap(step => {
    const transformation = transformationOf(library, step.transformation)
    const { hours, derived } = holdPointOf(library, transformation)
    const keeps = hours === 0 ? 'use at once' : `within ${durationText(hours)} of work-up${derived ? ', derived' : ''}`
    const others = coProducts.filter(one => one.step === step.number || one.step === step.transformation).map(one => one.compound)
    return [step.makes, ...others].map((material, at) => {
      const { name, formula, displayFormula } = materialOf(library, material)
      const mass = library.molarMass.get(material)
      return {
        material,
        name,
        formula: displayFormula ?? formula ?? null,
        molarMass: mass === undefined ? null : `${numberText(mass, 5, 2)}${noBreakSpace}g/mol`,
        step: step.number,
        hazard: hazards.materials.find(one => one.material === material) ?? null,
        keeps: at === 0 ? keeps : 'not stated',
        keepsSure:
          at > 0 ? notStated : derived ? derivedHold : (stepFigures(transformation).find(one => one.figure === 'hold point') ?? notStated),
      }
    })
  })
}

export const wasteLabels = ({ hazards }: Evaluation): readonly WasteLabel[] =>
  hazards.waste.map(stream => ({
    stream,
    steps: [...new Set(stream.from.map(part => part.step))].sort(byNumber),
    materials: [...new Set(stream.from.flatMap(part => part.materials))],
  }))
