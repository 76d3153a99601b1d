import { molarMassOf } from '../chemistry/formula.ts'
import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import type { Transformation } from '../library/transformation.ts'
import { byId } from '../route/working-order.ts'

/**
 * A library of records that were checked before: a slice, or one that came back from a plan file.
 *
 * @param from title and molar masses; a formula it does not hold is weighed anew
 */
export function libraryOfParts(
  from: Pick<Library, 'title'> & { readonly molarMass?: Library['molarMass'] },
  materials: readonly Material[],
  transformations: readonly Transformation[],
): Library {
  const molarMass = new Map<string, number>()
  for (const { id, kind, formula } of materials) {
    if (formula === undefined || (kind !== 'compound' && kind !== 'polymer')) continue
    molarMass.set(id, from.molarMass?.get(id) ?? molarMassOf(formula))
  }
  const sorted = [...transformations].sort((a, b) => byId(a.id, b.id))
  const makers = new Map<string, Transformation[]>()
  const users = new Map<string, Transformation[]>()
  const push = (map: Map<string, Transformation[]>, key: string, t: Transformation): void => {
    const list = map.get(key)
    if (list) list.push(t)
    else map.set(key, [t])
  }
  for (const t of sorted) {
    push(makers, t.mainProduct, t)
    for (const compound of new Set(t.reactants.map(r => r.compound))) push(users, compound, t)
  }
  return {
    title: from.title,
    materials: new Map(materials.map(m => [m.id, m])),
    transformations: new Map(sorted.map(t => [t.id, t])),
    molarMass,
    makers,
    users,
  }
}
