import { type Library, materialOf } from '../library/library.ts'
import { compoundIn } from '../library/reference-charge.ts'
import { minorDigitsOf } from '../quantity/money.ts'
import type { ChargedLine } from '../route/charged.ts'
import { makingsOf } from './made-up.ts'
import { inUnit } from './measure.ts'
import type { PacksFile } from './packs.ts'

/**
 * What a line costs at the cheapest pack price per unit, in minor units of the file's currency: a comparison of routes, not a basket (whole
 * packs, carriage and fees come with that). A solution without a pack costs what it can be made up from. Water is free.
 *
 * @returns null where no pack has a price that can be compared
 */
export function linePrices(library: Library, packs: PacksFile | null): (line: ChargedLine) => number | null {
  const packsOf = new Map<string, PacksFile['packs'][number][]>()
  /** Compounds that something with a pack is or contains: of nothing else is there a making to price. */
  const priced = new Set<string | null>()
  for (const pack of packs?.packs ?? []) {
    const packed = library.materials.get(pack.material)
    if (packed === undefined) continue
    const before = packsOf.get(packed.id)
    if (before === undefined) packsOf.set(packed.id, [pack])
    else before.push(pack)
    priced.add(compoundIn(packed))
  }
  const perG = new Map<string, number | null>()
  const perMl = new Map<string, number | null>()
  const cheapest = (id: string, unit: 'g' | 'mL'): number | null => {
    if (id === 'water') return 0
    const known = unit === 'g' ? perG : perMl
    const before = known.get(id)
    if (before !== undefined) return before
    let best: number | null = null
    const offer = (price: number) => {
      if (best === null || price < best) best = price
    }
    const material = materialOf(library, id)
    for (const pack of packsOf.get(id) ?? []) {
      if (packs === null) continue
      const size = inUnit(library, material, pack.amount, pack.unit, unit)
      const currency = pack.currency ?? packs.currency
      const rate = currency === packs.currency ? 1 : packs.rates?.[currency]
      if (size === null || rate === undefined) continue
      offer((pack.priceMinor * rate * 10 ** (minorDigitsOf(packs.currency) - minorDigitsOf(currency))) / size)
    }
    if (best === null && priced.has(compoundIn(material))) {
      for (const making of makingsOf(library, material, unit, m => (m.form === 'solid' ? 'g' : 'mL'))) {
        const source = pricedAlone(making.source, making.sourceUnit)
        const rest = pricedAlone(making.rest, making.restUnit)
        if (source !== null && rest !== null) offer(source * making.sourcePerUnit + rest * making.restPerUnit)
      }
    }
    known.set(id, best)
    return best
  }
  /** By its own packs: what a solution is made from is not itself made up. */
  const pricedAlone = (id: string, unit: 'g' | 'mL'): number | null => (id === 'water' || packsOf.has(id) ? cheapest(id, unit) : null)

  return line => {
    if (line.massG !== null) {
      const price = cheapest(line.material, 'g')
      if (price !== null) return price * line.massG
    }
    if (line.volumeMl !== null) {
      const price = cheapest(line.material, 'mL')
      if (price !== null) return price * line.volumeMl
    }
    return null
  }
}
