import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { measured } from '../library/reference-charge.ts'
import type { Unit } from '../library/source.ts'

/** The two units in which stock is counted and bought. */
export type StockUnit = 'g' | 'mL'

/**
 * An amount of a material in g or mL.
 *
 * @returns null where the library cannot turn one into the other: no density, no molar mass
 */
export function inUnit(library: Library, material: Material, amount: number, from: Unit, to: StockUnit): number | null {
  // The plain cases first, so that a material without a density still adds up with itself, and exactly.
  if (from === to) return amount
  const { massG, volumeMl } = measured(library, material, amount, from)
  return to === 'g' ? massG : volumeMl
}
