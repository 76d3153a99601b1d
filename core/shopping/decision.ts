import type { Material } from '../library/material.ts'
import type { Making } from './made-up.ts'
import type { Offer } from './offers.ts'
import type { Supplier } from './packs.ts'

/** One material of the program: what is needed of it, what stands on the shelf, where it can come from. */
export interface Item {
  readonly material: Material
  /** In its unit; 0 for what is only there to make something up from. */
  readonly need: number
  readonly stock: number
  readonly offers: readonly Offer[]
  readonly makings: readonly Making[]
}

/** What the solver decided. */
export interface Decision {
  /** Whole packs. */
  readonly counts: ReadonlyMap<Offer, number>
  /** How much of the solution is made up this way, in its unit. */
  readonly made: ReadonlyMap<Making, number>
  /** Solutions that nothing suffices to make up. */
  readonly missing: ReadonlySet<string>
}

/** Rounding in sums of amounts, as a part of them; no balance sees it. */
export const rounding = 1e-9

/** What is taken of a material in all: needed as it is, and to make up solutions from. */
export function demandOf(material: string, need: number, made: ReadonlyMap<Making, number>): number {
  let demand = need
  for (const [making, amount] of made) {
    if (making.source === material) demand += amount * making.sourcePerUnit
    if (making.rest === material) demand += amount * making.restPerUnit
  }
  return demand
}

/** Is every need covered by shelf, packs and makings? The answer looked at, with no tolerance but that of rounding. */
export function coversNeeds(items: readonly Item[], { counts, made, missing }: Decision): boolean {
  return items.every(item => {
    const { id } = item.material
    if (missing.has(id)) return true
    const bought = item.offers.reduce((sum, offer) => sum + offer.size * (counts.get(offer) ?? 0), 0)
    const own = [...made].reduce((sum, [making, amount]) => (making.target === id ? sum + amount : sum), 0)
    return item.stock + bought + own >= demandOf(id, item.need, made) * (1 - 2 * rounding)
  })
}

/** Is every supplier's minimum order reached? */
export function reachesMinimums({ counts }: Decision): boolean {
  const goods = new Map<Supplier, number>()
  for (const [offer, count] of counts) goods.set(offer.supplier, (goods.get(offer.supplier) ?? 0) + offer.priceMinor * count)
  return [...goods].every(([supplier, minor]) => minor >= (supplier.minimumOrderMinor ?? 0))
}
