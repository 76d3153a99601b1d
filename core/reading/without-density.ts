import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import { measured } from '../library/reference-charge.ts'
import type { Unit } from '../library/source.ts'
import type { Problem } from '../problem/problem.ts'
import type { ChargeRead } from './charge-line.ts'

/** An amount of a charge in a unit of the library. */
export interface Measurable {
  readonly amount: number
  readonly unit: Unit
}

/** A volume that only a density turns into grams, or a mass that only a density turns into millilitres of a solution. */
export function wantsDensity({ densityGPerMl, contains }: Material, unit: Unit): boolean {
  if (densityGPerMl !== undefined) return false
  const isVolume = unit === 'mL' || unit === 'L'
  const isMass = unit === 'g' || unit === 'mg' || unit === 'kg'
  return contains?.molPerL === undefined ? isVolume : isMass
}

/** What the line says beside such an amount and what can be reckoned with: "6.1 mL (50 mmol)". Null where it says nothing of the kind. */
export function statedInstead(read: ChargeRead, library: Library, material: Material): Measurable | null {
  for (const { amount, unit } of read.alsoStated) {
    if (unit === 'equiv' || unit === 'drop' || wantsDensity(material, unit)) continue
    if (amount > 0 && measured(library, material, amount, unit).amountMol !== null) return { amount, unit }
  }
  return null
}

export const densityMissingCode = 'density-missing'

export const densityMissing = (text: string, { id, name, contains }: Material, where: readonly string[]): Problem => ({
  code: densityMissingCode,
  where,
  what:
    contains?.molPerL === undefined
      ? `"${text}" is a volume of ${name}, whose density is not known.`
      : `"${text}" is a mass of ${name}, whose strength is known by volume only.`,
  why: 'Without it neither grams nor moles are told of this line, and another amount of the step cannot be measured out.',
  cure: `Write ${contains?.molPerL === undefined ? 'its mass, or its moles beside the volume' : 'its volume'}, or put ${name} {${id}} right: give it its density.`,
})
