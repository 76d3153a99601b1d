import type { ChargedStep } from '../route/charged.ts'
import type { StepWork } from './tasks.ts'

export interface VesselKindOwned {
  readonly kind: string
  readonly volumeMl: number
  readonly count: number
}

/** Filled to at most so much: less where gas, foam or a strong exotherm needs room. Source: scale table (fill-max, fill-gas-foam). */
const usualFill = 2 / 3
const carefulFill = 1 / 2

/**
 * Which of the vessels owned a batch can go into, as indices into `vessels`. Where none has room at the usual fill, those that hold it at all
 * (the source may have filled its own fuller); an empty list where none does.
 */
export function fittingVessels(work: StepWork, step: ChargedStep, vessels: readonly VesselKindOwned[]): readonly number[] {
  const { vesselKind = 'flask', foam, gasEvolved, exotherm } = work.transformation
  const fill = foam === true || gasEvolved.length > 0 || exotherm === 'strong' ? carefulFill : usualFill
  const batchMl = step.volumeMl.perBatch ?? 0
  const withFill = (most: number) =>
    vessels.flatMap((vessel, index) =>
      (vesselKind === 'other' || vessel.kind === vesselKind) && vessel.volumeMl * most >= batchMl * (1 - 1e-9) ? [index] : [],
    )
  const roomy = withFill(fill)
  return roomy.length > 0 ? roomy : withFill(1)
}
