import { type Library, materialOf } from '../library/library.ts'
import { isHazardousGood } from './hazardous-goods.ts'
import type { Offer } from './offers.ts'
import type { Supplier } from './packs.ts'
import type { PriceFrom } from './price-from.ts'
import type { Order } from './shopping.ts'

/** One order a supplier, dearest goods first. */
export function ordersOf(library: Library, counts: ReadonlyMap<Offer, number>): readonly Order[] {
  const goods = new Map<Supplier, { minor: number; hazardous: boolean; priceFrom: PriceFrom }>()
  for (const [offer, count] of counts) {
    const order = goods.get(offer.supplier) ?? { minor: 0, hazardous: false, priceFrom: offer.stated.fees }
    order.minor += offer.priceMinor * count
    order.hazardous ||= isHazardousGood(materialOf(library, offer.pack.material))
    goods.set(offer.supplier, order)
  }
  return [...goods]
    .map(([supplier, { minor, hazardous, priceFrom }]) => {
      const hazardousFeeMinor = hazardous ? supplier.hazardousFeeMinor : 0
      return {
        supplier: supplier.id,
        name: supplier.name,
        goodsMinor: minor,
        carriageMinor: supplier.carriageMinor,
        hazardousFeeMinor,
        ...(supplier.carriageUnknown ? { carriageUnknown: true as const } : {}),
        minimumMinor: supplier.minimumOrderMinor ?? 0,
        totalMinor: minor + supplier.carriageMinor + hazardousFeeMinor,
        priceFrom,
      }
    })
    .sort((a, b) => b.totalMinor - a.totalMinor || compare(a.supplier, b.supplier))
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
