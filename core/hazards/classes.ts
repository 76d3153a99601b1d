import type { Material } from '../library/material.ts'
import type { MaterialUse } from '../route/materials.ts'
import type { HazardClass } from './hazard-list.ts'
import { codesInEffect, isOnlyEvolved, knownOf } from './known.ts'

/** Codes that count as gravest, with any suffix (H350i, H360FD): explosive, fatal, mutagenic, carcinogenic, toxic for reproduction. */
const gravestPattern = /^H(20[0-5]|240|241|300|310|330|340|350|360)[A-Za-z]*$/

/** A merged code (H300+H310) is as grave as its gravest part. */
export const isGravest = (code: string): boolean => code.split('+').some(part => gravestPattern.test(part))

/**
 * The class in which a material is counted, worst first: gravest, unknown, danger (any other code under the signal word Danger), warning
 * (any other code), none (none assigned, with a source).
 *
 * @param as what it is in the route; a gas that is only given off goes without the codes of its cylinder
 */
export function hazardClassOf(material: Material, as: readonly MaterialUse[] = ['charged']): HazardClass {
  const evolved = isOnlyEvolved(material, as)
  const classes = evolved ? ofEvolved : ofCharged
  let hazardClass = classes.get(material)
  if (hazardClass === undefined) {
    hazardClass = classified(material, evolved)
    classes.set(material, hazardClass)
  }
  return hazardClass
}

/** Reckoned once: a material never changes, and every route that is drawn asks for the classes of all of its materials. */
const ofEvolved = new WeakMap<Material, HazardClass>()
const ofCharged = new WeakMap<Material, HazardClass>()

function classified(material: Material, evolved: boolean): HazardClass {
  const known = knownOf(material)
  const codes = codesInEffect(material, evolved)
  if (codes.some(isGravest)) return 'gravest'
  if (known === 'unknown' || (codes.length === 0 && known === 'remembered')) return 'unknown'
  if (codes.length === 0) return 'none'
  return material.hazards?.signalWord === 'Danger' ? 'danger' : 'warning'
}

/** Order of the list: what is not known stands first, since it may be anything. */
export const listOrder: readonly HazardClass[] = ['unknown', 'gravest', 'danger', 'warning', 'none']
