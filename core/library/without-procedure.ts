import { type Library, materialOf } from './library.ts'
import { compoundIn } from './reference-charge.ts'
import type { Transformation } from './transformation.ts'

/**
 * A step without anything to do it by: what it takes and makes is named, with no condition, note or source, and no amount but that of its
 * limiting reactant, on which weights are reckoned. So a step is told of which no plan is made: a search has to know that it is there, to
 * say why it is not taken.
 */
export const withoutProcedure = (library: Library, step: Transformation): Transformation => ({
  id: step.id,
  name: step.name,
  kind: step.kind,
  reactants: step.reactants,
  products: step.products,
  mainProduct: step.mainProduct,
  limiting: step.limiting,
  charge: step.charge.map(({ material, role, unit, amount }) => ({
    material,
    role,
    unit,
    amount: compoundIn(materialOf(library, material)) === step.limiting ? amount : null,
  })),
  yieldPercent: step.yieldPercent,
  elapsedHours: step.elapsedHours,
  operations: [],
  equipment: [],
  atmosphere: step.atmosphere,
  needsHood: step.needsHood,
  exotherm: step.exotherm,
  gasEvolved: step.gasEvolved,
  hazardNotes: [],
  sources: [],
  confidence: step.confidence,
})
