import type { Library } from '../library/library.ts'
import type { Material } from '../library/material.ts'
import type { Problem } from '../problem/problem.ts'
import { minorDigitsOf, moneyText } from '../quantity/money.ts'
import { inUnit, type StockUnit } from './measure.ts'
import { type Pack, type PacksFile, priceFromOfPack, type Supplier } from './packs.ts'
import { type PriceFrom, priceFromOf } from './price-from.ts'

/** A pack that can be bought: its size in the unit of the need, its price in the plan's currency. */
export interface Offer {
  readonly pack: Pack
  readonly supplier: Supplier
  readonly size: number
  /** Whole minor units of the file's currency. */
  readonly priceMinor: number
  /** The price that this one was written over, as it is printed; absent where there was none. */
  readonly writtenOver?: string
  /** Where the price, and the fees of its supplier, were got. */
  readonly stated: { readonly price: PriceFrom; readonly fees: PriceFrom }
}

/**
 * The packs of one material, each comparable with the need. What cannot be compared (no density, no rate, no such supplier) is told and
 * left out: it is not bought on a guess.
 */
export function offersOf(
  library: Library,
  material: Material,
  unit: StockUnit,
  file: PacksFile,
): { readonly offers: readonly Offer[]; readonly problems: readonly Problem[] } {
  const offers: Offer[] = []
  const problems: Problem[] = []
  for (const [index, pack] of file.packs.entries()) {
    if (pack.material !== material.id) continue
    const leaveOut = (code: string, what: string, cure: string) =>
      problems.push({
        code,
        where: ['packs', `${index + 1}`, material.id],
        what,
        why: 'This pack is left out of the basket, so that the total may be too high or incomplete.',
        cure,
      })
    const supplier = file.suppliers.find(s => s.id === pack.supplier)
    const size = inUnit(library, material, pack.amount, pack.unit, unit)
    const priceMinor = priceIn(file, pack)
    if (supplier === undefined)
      leaveOut(
        'pack-supplier-unknown',
        `The supplier "${pack.supplier}" is not in the list of suppliers.`,
        'Add it with its carriage and fees.',
      )
    else if (size === null)
      leaveOut(
        'pack-not-comparable',
        `A pack of ${pack.amount} ${pack.unit} cannot be compared with a need in ${unit}: ${material.name} has no density here.`,
        'State the density in the library, or the pack in the other measure.',
      )
    else if (priceMinor === null)
      leaveOut(
        'pack-currency-without-rate',
        `A price in ${pack.currency} cannot be turned into ${file.currency}.`,
        `Add "${pack.currency}" to the rates of the packs file.`,
      )
    else
      offers.push({
        pack,
        supplier,
        size,
        priceMinor,
        ...(pack.inPlaceOf === undefined ? {} : { writtenOver: moneyText(pack.inPlaceOf.priceMinor, pack.currency ?? file.currency) }),
        stated: { price: priceFromOfPack(file, pack), fees: priceFromOf(supplier, file) },
      })
  }
  return { offers, problems }
}

/** Price of one pack in minor units of the file's currency, rounded to whole ones; null without a rate. */
function priceIn(file: PacksFile, { priceMinor, currency = file.currency }: Pack): number | null {
  if (currency === file.currency) return priceMinor
  const rate = file.rates?.[currency]
  return rate === undefined ? null : Math.round(priceMinor * rate * 10 ** (minorDigitsOf(file.currency) - minorDigitsOf(currency)))
}
