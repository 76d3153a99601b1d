import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'

/** Density taken for a solution that states none, g/mL. */
const waterDensity = 1

/**
 * Mass fraction of what a mixture contains: as stated, or from mol/L, density (1 g/mL where none is stated) and molar mass. 1 for what
 * contains nothing but itself; null where the library cannot tell.
 */
export function massFractionIn(library: Library, material: Material): number | null {
  if (material.kind !== 'mixture') return 1
  const contains = material.contains
  if (contains?.massFraction !== undefined) return contains.massFraction
  const molarMass = contains && library.molarMass.get(contains.compound)
  if (contains?.molPerL === undefined || molarMass === undefined) return null
  return Math.min(1, (contains.molPerL * molarMass) / (1000 * (material.densityGPerMl ?? waterDensity)))
}
