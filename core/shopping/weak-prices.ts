import type { Library } from '../library/library.ts'
import { inWeakOrder, type WeakKind, type WeakSpot } from '../library/weak-spots.ts'
import { type PacksFile, priceFromOfPack } from './packs.ts'
import { priceFigure } from './price-from.ts'

const told: Readonly<Record<string, { readonly kind: WeakKind; readonly what: string; readonly cure: string }>> = {
  unknown: {
    kind: 'price without source',
    what: 'where this price was got is not stated',
    cure: 'Say where it was read and when, in the packs file or where prices are put down.',
  },
  remembered: {
    kind: 'remembered price',
    what: 'this price is remembered, not read',
    cure: 'Look it up in the list of the supplier and enter it with its date.',
  },
  invented: {
    kind: 'invented price',
    what: 'this price is invented for a demonstration',
    cure: 'Enter a price that a supplier really asks.',
  },
}

/** Prices that rest on little: without a source, remembered, or invented. */
export function weakPrices(library: Library, file: PacksFile | null): readonly WeakSpot[] {
  const spots = (file?.packs ?? []).flatMap((pack): WeakSpot[] => {
    const { trust, source } = priceFigure(priceFromOfPack(file!, pack))
    const weak = told[source === null ? 'unknown' : trust]
    if (weak === undefined) return []
    const supplier = file!.suppliers.find(one => one.id === pack.supplier)?.name ?? pack.supplier
    const name = `${library.materials.get(pack.material)?.name ?? pack.material}, ${pack.amount} ${pack.unit}, ${supplier}`
    return [{ list: 'packs', id: pack.material, name, trust: source === null ? 'unknown' : trust, ...weak }]
  })
  return inWeakOrder(spots)
}
