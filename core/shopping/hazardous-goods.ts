import type { Material } from '../library/material.ts'

/** Physical (H2xx) and health (H3xx) statements, and the European supplements on the same two subjects; not H4xx (environment). */
const feePattern = /^(H[23]\d\d|EUH0)/

/**
 * Does a supplier charge its hazardous-goods fee for this? Yes for any physical or health hazard code, and yes where the hazards are
 * unknown: no data, or an empty list that nobody stands behind.
 *
 * @example isHazardousGood(sodiumChloride) // false: none assigned, and its `from` tells by whom
 */
export function isHazardousGood(material: Material): boolean {
  const { hazards } = material
  if (hazards === undefined) return true
  if (hazards.codes.length === 0) return hazards.from === undefined || /^(from )?memory\b/i.test(hazards.from)
  return hazards.codes.some(code => feePattern.test(code))
}
