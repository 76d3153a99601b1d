import { molarMass, parseFormula } from '../../core/chemistry/formula.ts'
import type { Library } from '../../core/library/library.ts'
import type { Material } from '../../core/library/material.ts'
import type { Transformation } from '../../core/library/transformation.ts'

/** A material with what a test leaves out filled in: a harmless solid that nobody doubts. */
export const material = (own: Partial<Material> & Pick<Material, 'id'>): Material => ({
  name: own.id.replaceAll('-', ' '),
  kind: 'compound',
  form: 'solid',
  hazards: { codes: [], signalWord: 'none', from: 'data sheet of a test' },
  sources: [],
  ...own,
})

/** A transformation with what a test leaves out filled in: A to B, no tasks. */
export const transformation = (own: Partial<Transformation> & Pick<Transformation, 'id'>): Transformation => ({
  name: own.id,
  kind: 'reaction',
  reactants: [{ compound: 'a', coefficient: 1 }],
  products: [{ compound: 'b', coefficient: 1 }],
  mainProduct: 'b',
  limiting: 'a',
  charge: [{ material: 'a', role: 'substrate', amount: 10, unit: 'g' }],
  yieldPercent: { low: 70, typical: 80, high: 90 },
  elapsedHours: 1,
  operations: [],
  equipment: [],
  atmosphere: 'air',
  needsHood: false,
  exotherm: 'none',
  gasEvolved: [],
  hazardNotes: [],
  sources: [],
  confidence: 'memory',
  ...own,
})

/** A library of just these, unchecked. Molar masses come from the formulas. */
export function smallLibrary(materials: readonly Material[], transformations: readonly Transformation[] = []): Library {
  const masses = new Map<string, number>()
  for (const { id, formula } of materials) {
    const composition = formula === undefined ? null : parseFormula(formula)
    if (composition?.ok) masses.set(id, molarMass(composition.value))
  }
  return {
    title: 'a test',
    materials: new Map(materials.map(m => [m.id, m])),
    transformations: new Map(transformations.map(t => [t.id, t])),
    molarMass: masses,
    makers: new Map(),
    users: new Map(),
  }
}
