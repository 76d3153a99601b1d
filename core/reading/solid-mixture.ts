import { type Composition, molarMass, parseFormula } from '../chemistry/formula.ts'
import type { Toolkit } from '../chemistry/structure.ts'
import type { Material } from '../library/material.ts'

/** A salt or hydrate that the library holds as something to weigh a compound from, as one formula unit. */
export interface FormulaUnit {
  readonly composition: Composition
  /** Water of crystallisation, molecules a unit; null where something else than water goes with the compound. */
  readonly water: number | null
}

/** The mass fraction of a record has three or four figures. */
const massTolerance = 0.005

/** A solid that is weighed out for the compound in it: a hydrate, a hydrochloride, a grade. Solutions stand for their compound. */
export const isWeighedOnly = (material: Material | undefined): boolean =>
  material?.kind === 'mixture' &&
  material.form === 'solid' &&
  material.contains !== undefined &&
  Math.abs((material.contains.massFraction ?? 0) - 1) > massTolerance

/**
 * One formula unit of a solid that contains a compound: from its structure, or from a formula that it is called by; only where just its share of
 * the unit's mass is the compound.
 *
 * @param compound  what it contains
 * @param typed     what it was called by
 * @returns null where nothing of it tells: a grade, an amalgam
 */
export function formulaUnitOf(material: Material, compound: Material, typed: string, toolkit: Toolkit | null): FormulaUnit | null {
  const own = compound.formula === undefined ? null : parseFormula(compound.formula)
  const share = material.contains?.massFraction
  if (own?.ok !== true || share === undefined) return null
  const structure = material.smiles === undefined ? null : (toolkit?.parse(material.smiles) ?? null)
  const written = [material.formula, material.displayFormula, typed, material.name, ...(material.synonyms ?? [])]
  const compositions = [
    ...(structure?.ok === true ? [structure.value.composition] : []),
    ...written.flatMap(text => {
      const read = text === undefined ? null : parseFormula(text)
      return read?.ok === true ? [read.value] : []
    }),
  ]
  for (const composition of compositions) {
    const rest = without(composition, own.value)
    if (rest === null || Math.abs(molarMass(own.value) / molarMass(composition) / share - 1) > massTolerance) continue
    const water = rest.get('O') ?? 0
    const isWater = water > 0 && [...rest].every(([symbol, count]) => near(count, symbol === 'O' ? water : symbol === 'H' ? 2 * water : 0))
    return { composition, water: isWater ? water : null }
  }
  return null
}

/** Atoms of the whole that the part does not have; null where it has more of one. */
function without(whole: Composition, part: Composition): ReadonlyMap<string, number> | null {
  const rest = new Map(whole.counts)
  for (const [symbol, count] of part.counts) rest.set(symbol, (rest.get(symbol) ?? 0) - count)
  return [...rest.values()].some(count => count < -1e-6) ? null : rest
}

const near = (one: number, other: number): boolean => Math.abs(one - other) < 1e-6
