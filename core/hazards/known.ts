import type { Material } from '../library/material.ts'
import { trustInHazards } from '../library/trust.ts'
import type { MaterialUse } from '../route/materials.ts'
import type { Known } from './hazard-list.ts'

/**
 * How sure a material's label is.
 *
 * `seen` = somebody assigned these codes, or assigned none, and `from` tells who; `remembered` = codes without such a source; `unknown` =
 * no hazard data, or an empty list that nobody stands behind. Nothing is ever safe because nothing is known.
 */
export function knownOf(material: Material): Known {
  const trust = trustInHazards(material)
  return trust === 'unknown' || trust === 'remembered' ? trust : 'seen'
}

/** Codes of the cylinder, not of the gas: a gas that a step gives off never carries them (H280, H281: gases under pressure, refrigerated). */
const cylinderCodes: ReadonlySet<string> = new Set(['H280', 'H281'])

/**
 * The hazard codes that count where a material is met as it is met: all of its label, less those of the cylinder where a step only gives it
 * off.
 *
 * @param evolved true where no line charges it and it comes off as a gas
 */
export function codesInEffect(material: Material, evolved: boolean): readonly string[] {
  const codes = material.hazards?.codes ?? []
  return evolved ? codes.filter(code => !cylinderCodes.has(code)) : codes
}

/** Only given off: a gas that leaves a step, or a by-product that is a gas at the bench, and that no line charges and nobody makes to keep. */
export const isOnlyEvolved = (material: Material, as: readonly MaterialUse[]): boolean =>
  as.length > 0 && as.every(use => use === 'gas' || (use === 'by-product' && material.form === 'gas'))
