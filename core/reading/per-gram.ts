import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { measured } from '../library/reference-charge.ts'
import { type ChargeRead, dropMl } from './charge-line.ts'

/** What goes in for each gram of product, in one of the two units that the library format has for it. */
export interface PerGram {
  readonly amount: number
  readonly unit: 'g' | 'mL'
  /** Reckoned here rather than stated: drops, moles. */
  readonly derived: boolean
}

const inG: Readonly<Record<string, number>> = { kg: 1000, g: 1, mg: 0.001 }
const inMl: Readonly<Record<string, number>> = { L: 1000, mL: 1, drop: dropMl }

/**
 * The amount per gram of product of a line in g or mL: "50 mg/g" is 0.05 g, "1 mmol/g" what a millimole of it weighs, or measures where it is
 * a solution.
 *
 * @returns null where it cannot be had in either: equivalents, or moles of what has no molar mass
 */
export function perGramOf({ perGramProduct, unit }: ChargeRead, material: Material, library: Library): PerGram | null {
  if (perGramProduct === null) return null
  const [massPart, volumePart] = [inG[unit], inMl[unit]]
  if (massPart !== undefined) return { amount: perGramProduct * massPart, unit: 'g', derived: false }
  if (volumePart !== undefined) return { amount: perGramProduct * volumePart, unit: 'mL', derived: unit === 'drop' }
  if (unit !== 'mol' && unit !== 'mmol') return null
  const { massG, volumeMl } = measured(library, material, perGramProduct, unit)
  if (material.form === 'solution' && volumeMl !== null) return { amount: volumeMl, unit: 'mL', derived: true }
  return massG === null ? null : { amount: massG, unit: 'g', derived: true }
}
