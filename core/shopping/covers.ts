import type { Offer } from './offers.ts'
import type { Supplier } from './packs.ts'

/** One way to buy enough of one material: so many of each pack, at its least cost for the suppliers it uses. */
export interface Cover {
  readonly suppliers: readonly Supplier[]
  readonly costMinor: number
  readonly counts: ReadonlyMap<Offer, number>
}

/** More suppliers of one material than this have too many groups; branches in all, for the packs of one group. */
const mostSuppliers = 6
const mostBranches = 20_000

/**
 * For every group of suppliers the cheapest packs that cover an amount, carriage and fees left out; groups that are no cheaper than a smaller
 * one of theirs are left out. Any basket without minimum orders buys each material by one of these.
 *
 * @param amount to be covered, in the unit of the offers; above 0
 * @param slack  rounding that no balance sees, same unit
 * @returns null where that takes too much work; the basket then counts packs one by one
 */
export function coversOf(offers: readonly Offer[], amount: number, slack: number): readonly Cover[] | null {
  const suppliers = [...new Set(offers.map(offer => offer.supplier))]
  if (suppliers.length > mostSuppliers) return null
  const best: (Cover | null)[] = []
  for (let group = 1; group < 1 << suppliers.length; group++) {
    const own = suppliers.filter((_, at) => (group >> at) & 1)
    let below = Number.POSITIVE_INFINITY
    for (let at = 0; at < suppliers.length; at++) if ((group >> at) & 1) below = Math.min(below, costOf(best[group & ~(1 << at)]))
    const found = cheapest(
      offers.filter(offer => own.includes(offer.supplier)),
      amount - slack,
      below,
    )
    if (found === 'too much') return null
    // No cheaper than a smaller group: what the smaller one costs stands for it when still larger ones are compared.
    best[group] = found === null ? smallest(best, group, suppliers.length) : { suppliers: own, ...found }
  }
  return [...new Set(best.filter(cover => cover !== null))]
}

const costOf = (cover: Cover | null | undefined): number => cover?.costMinor ?? Number.POSITIVE_INFINITY

function smallest(best: readonly (Cover | null)[], group: number, count: number): Cover | null {
  let least: Cover | null = null
  for (let at = 0; at < count; at++) {
    const one = (group >> at) & 1 ? (best[group & ~(1 << at)] ?? null) : null
    if (one !== null && one.costMinor < costOf(least)) least = one
  }
  return least
}

/** Fewest minor units for packs of these offers that reach an amount, if fewer than `below`; depth first, by unit price. */
function cheapest(
  offers: readonly Offer[],
  amount: number,
  below: number,
): { readonly costMinor: number; readonly counts: ReadonlyMap<Offer, number> } | 'too much' | null {
  const sorted = offers
    .filter(offer => !offers.some(other => other !== offer && isBetter(other, offer, offers)))
    .sort((a, b) => a.priceMinor / a.size - b.priceMinor / b.size)
  const counts = sorted.map(() => 0)
  let best = below
  let bestCounts: readonly number[] | null = null
  let branches = 0
  const walk = (at: number, left: number, cost: number): boolean => {
    if (++branches > mostBranches) return false
    if (left <= 0) {
      if (cost < best) {
        best = cost
        bestCounts = [...counts]
      }
      return true
    }
    const offer = sorted[at]
    // Prices are whole minor units, so a bound may be rounded up.
    if (offer === undefined || cost + Math.ceil((left * offer.priceMinor) / offer.size - 1e-9) >= best) return true
    for (let count = Math.ceil(left / offer.size); count >= 0; count--) {
      counts[at] = count
      const goesOn = walk(at + 1, left - count * offer.size, cost + count * offer.priceMinor)
      counts[at] = 0
      if (!goesOn) return false
    }
    return true
  }
  if (!walk(0, amount, 0)) return 'too much'
  const found: readonly number[] | null = bestCounts
  if (found === null) return null
  return { costMinor: best, counts: new Map(sorted.flatMap((offer, at) => (found[at]! > 0 ? [[offer, found[at]!] as const] : []))) }
}

/** A pack that is no smaller and no dearer makes another needless; of equal ones the first stays. */
const isBetter = (one: Offer, other: Offer, offers: readonly Offer[]): boolean =>
  one.size >= other.size &&
  one.priceMinor <= other.priceMinor &&
  (one.size > other.size || one.priceMinor < other.priceMinor || offers.indexOf(one) < offers.indexOf(other))
