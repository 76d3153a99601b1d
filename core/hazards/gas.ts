import { molarGasVolumeL } from '../chemistry/solution.ts'
import { type Library, materialOf, transformationOf } from '../library/library.ts'
import { coefficientOf } from '../library/reference-charge.ts'
import type { Transformation } from '../library/transformation.ts'
import { highestFill, type Vessel } from '../route/batches.ts'
import type { ChargedStep } from '../route/charged.ts'
import type { GasLine } from './hazard-list.ts'

/** A gas a transformation gives, moles per mole of the limiting reactant at full conversion. */
export interface GasOf {
  readonly compound: string
  readonly perMolLimiting: number
  readonly from: GasLine['from']
}

/** As the source states it; where it states none, every gas among the products of the equation. */
export function gasesOf(library: Library, transformation: Transformation): readonly GasOf[] {
  const stated = transformation.gasEvolved.map(({ compound, perMolLimiting }): GasOf => ({ compound, perMolLimiting, from: 'source' }))
  if (stated.length > 0) return stated
  const limiting = coefficientOf(transformation, transformation.limiting)
  return transformation.products
    .filter(product => materialOf(library, product.compound).form === 'gas' && product.compound !== transformation.mainProduct)
    .map(({ compound, coefficient }): GasOf => ({ compound, perMolLimiting: coefficient / limiting, from: 'equation' }))
}

/**
 * Worst-case gas of every step, full conversion at 25 C and 1 atm (24.47 L/mol): all batches together and per batch, with the free volume of
 * the vessel beside it.
 *
 * @param vessels owned; the smallest that holds the batch is taken. Empty = not stated: no free volume is told
 */
export function gasOf(library: Library, steps: readonly ChargedStep[], vessels: readonly Vessel[]): readonly GasLine[] {
  return steps.flatMap(step => {
    const transformation = transformationOf(library, step.transformation)
    return gasesOf(library, transformation).flatMap(({ compound, perMolLimiting, from }): readonly GasLine[] => {
      if (step.limiting.amountMol === null) return []
      const litres = step.limiting.amountMol * perMolLimiting * molarGasVolumeL
      return [
        {
          step: step.number,
          compound,
          litres,
          litresPerBatch: litres / step.batches,
          freeVesselMl: freeVolumeMl(library, transformation, step, vessels),
          from,
        },
      ]
    })
  })
}

/** Nominal volume less what stands in it, mL; null where no fitting vessel or no volume is stated. */
function freeVolumeMl(library: Library, transformation: Transformation, step: ChargedStep, vessels: readonly Vessel[]): number | null {
  const liquidMl = step.volumeMl.perBatch
  if (liquidMl === null) return null
  const kind = transformation.vesselKind ?? 'flask'
  const fill = highestFill(library, transformation, null)
  const volumes = vessels.filter(v => kind === 'other' || v.kind === kind).map(v => v.volumeMl)
  const holding = volumes.filter(volume => volume * fill >= liquidMl * (1 - 1e-9))
  const chosen = holding.length > 0 ? Math.min(...holding) : Math.max(0, ...volumes)
  return chosen > liquidMl ? chosen - liquidMl : null
}
