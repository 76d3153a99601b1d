import { type Cover, coversOf } from './covers.ts'
import type { Item } from './decision.ts'
import { isHazardousGood } from './hazardous-goods.ts'
import type { Offer } from './offers.ts'
import type { Supplier } from './packs.ts'
import type { RecipeChoice } from './recipe-choices.ts'

/** Orders at these suppliers and no others, with a hazardous-goods fee paid to some of them, under one choice of recipes. */
export interface SupplierGroup {
  readonly choice: RecipeChoice
  readonly suppliers: readonly Supplier[]
  /** Those from whom hazardous goods may come: the fee is paid, or there is none. */
  readonly hazardousFrom: ReadonlySet<Supplier>
  /** Carriage and fees. */
  readonly fixedMinor: number
  /** No basket of this group costs less: minimum orders are left out. */
  readonly boundMinor: number
}

/** May this pack of the item be bought within the group? */
export const isOpenTo = ({ suppliers, hazardousFrom }: Pick<SupplierGroup, 'suppliers' | 'hazardousFrom'>, item: Item, offer: Offer) =>
  isHazardousGood(item.material) ? hazardousFrom.has(offer.supplier) : suppliers.includes(offer.supplier)

/** More suppliers than this have too many groups. */
export const mostSuppliersInGroups = 6

/**
 * Every group of suppliers that can serve all needs, in the order of its bound.
 *
 * @param most suppliers in a group
 * @param coversBy the ways to buy one material that come into question; as a rule the cheapest
 * @returns null where there are too many, or a material whose packs take too much work
 */
export function supplierGroups(
  choices: readonly RecipeChoice[],
  all: readonly Supplier[],
  most = all.length,
  coversBy: (offers: readonly Offer[], amount: number) => readonly Cover[] | null = (offers, amount) => coversOf(offers, amount, 0),
): readonly SupplierGroup[] | null {
  if (all.length > mostSuppliersInGroups) return null
  const groups: SupplierGroup[] = []
  const known = new Map<Item, Map<number, readonly Cover[] | null>>()
  const coversFor = (item: Item, amount: number): readonly Cover[] | null => {
    const own = known.get(item) ?? new Map<number, readonly Cover[] | null>()
    known.set(item, own)
    if (!own.has(amount)) own.set(amount, coversBy(item.offers, amount))
    return own.get(amount)!
  }
  const maskOf = (suppliers: readonly Supplier[]) => suppliers.reduce((mask, supplier) => mask | (1 << all.indexOf(supplier)), 0)
  const withFee = maskOf(all.filter(supplier => supplier.hazardousFeeMinor > 0))
  for (const choice of choices) {
    const goods: { readonly hazardous: boolean; readonly covers: readonly { readonly mask: number; readonly costMinor: number }[] }[] = []
    for (const { item, amount } of choice.wanted) {
      const covers = coversFor(item, amount)
      if (covers === null) return null
      goods.push({
        hazardous: isHazardousGood(item.material),
        covers: covers.map(cover => ({ mask: maskOf(cover.suppliers), costMinor: cover.costMinor })),
      })
    }
    for (let open = 1; open < 1 << all.length; open++) {
      const suppliers = all.filter((_, at) => (open >> at) & 1)
      if (suppliers.length > most) continue
      const feeable = open & withFee
      for (let paid = feeable; ; paid = (paid - 1) & feeable) {
        const allowed = (open & ~withFee) | paid
        let boundMinor = 0
        for (const { hazardous, covers } of goods) {
          let least = Number.POSITIVE_INFINITY
          const within = hazardous ? allowed : open
          for (const cover of covers) if ((cover.mask & ~within) === 0 && cover.costMinor < least) least = cover.costMinor
          boundMinor += least
        }
        const fixedMinor =
          suppliers.reduce((sum, supplier) => sum + supplier.carriageMinor, 0) +
          all.reduce((sum, supplier, at) => sum + ((paid >> at) & 1 ? supplier.hazardousFeeMinor : 0), 0)
        if (boundMinor < Number.POSITIVE_INFINITY)
          groups.push({
            choice,
            suppliers,
            hazardousFrom: new Set(all.filter((_, at) => (allowed >> at) & 1)),
            fixedMinor,
            boundMinor: boundMinor + fixedMinor,
          })
        if (paid === 0) break
      }
    }
  }
  return groups.sort((a, b) => a.boundMinor - b.boundMinor)
}
