import { type Library, materialOf } from '../library/library.ts'
import { isBuyable } from '../library/material.ts'
import type { Transformation } from '../library/transformation.ts'
import { trustInHazards } from '../library/trust.ts'

/** How long a product may wait from the end of work-up to the next set-up, h. Source: definition 12 of the design. */
export const holdHours: Readonly<Record<NonNullable<Transformation['holdPoint']>, number>> = {
  never: 0,
  hours: 4,
  overnight: 18,
  weeks: 672,
}

/**
 * The hold point of a step's product. Where the library states none: weeks for a solid that one can buy and that forms no peroxides, hours
 * for all else, and marked as derived. A product whose hazards nobody knows gets no weeks: unknown is not stable.
 */
export function holdPointOf(library: Library, transformation: Transformation): { readonly hours: number; readonly derived: boolean } {
  if (transformation.holdPoint !== undefined) return { hours: holdHours[transformation.holdPoint], derived: false }
  const product = materialOf(library, transformation.mainProduct)
  const keeps =
    product.form === 'solid' && isBuyable(product) && product.peroxideClass === undefined && trustInHazards(product) !== 'unknown'
  return { hours: keeps ? holdHours.weeks : holdHours.hours, derived: true }
}
