import { type Library, materialOf } from '../library/library.ts'
import { moneyText } from '../quantity/money.ts'
import { inUnit } from '../shopping/measure.ts'
import type { Quantity, ShoppingLine } from '../shopping/shopping.ts'
import { quantityWords } from './amounts.ts'

/**
 * A line of the list in the measure of the packs that are bought for it: what is sold by volume is read by volume. Unchanged where nothing is
 * bought, where the packs differ in measure, or where the library cannot turn grams into millilitres.
 */
export function asPacked(library: Library, line: ShoppingLine): ShoppingLine {
  const poured = line.packs.length > 0 && line.packs.every(pack => pack.unit === 'mL' || pack.unit === 'L')
  if (!poured || line.need.unit !== 'g') return line
  const material = materialOf(library, line.material)
  if (inUnit(library, material, 1, 'g', 'mL') === null) return line
  const inMl = ({ amount, unit }: Quantity): Quantity => ({
    amount: amount === null ? null : inUnit(library, material, amount, unit, 'mL'),
    unit: 'mL',
  })
  return {
    ...line,
    need: inMl(line.need),
    shelf: inMl(line.shelf),
    buy: inMl(line.buy),
    left: inMl(line.left),
    uses: line.uses.map(use => ({ ...use, amount: inMl(use.amount) })),
    lots: line.lots.map(lot => ({ ...lot, amount: inMl(lot.amount) })),
  }
}

/** What a line would be without the dearest pack that only the reserve asks for. */
export interface ReservePack {
  /** So much less would have to be bought for it. */
  readonly less: Quantity
  readonly savesMinor: number
}

/**
 * The dearest pack of a line that is bought for nothing but the reserve; null where there is none, or where the source leaves an amount open.
 *
 * @param reserve  added to every need, as a fraction
 */
export function packForReserve(library: Library, line: ShoppingLine, reserve: number): ReservePack | null {
  const material = materialOf(library, line.material)
  const { need, buy, left } = line
  if (need.amount === null || buy.amount === null || left.amount === null || line.open || line.atLeast) return null
  const held = (need.amount * reserve) / (1 + reserve)
  let found: ReservePack | null = null
  for (const pack of line.packs) {
    const size = inUnit(library, material, pack.amount, pack.unit, buy.unit)
    if (size === null) continue
    // Without this pack so much is missing; it may all come out of the reserve.
    const short = size - left.amount
    if (short <= 0 || short > held) continue
    if (found === null || pack.priceMinor > found.savesMinor)
      found = { less: { amount: short, unit: buy.unit }, savesMinor: pack.priceMinor }
  }
  return found
}

/** "0.41 mL less, out of the reserve, saves a pack of € 6.10." */
export const reservePackText = ({ less, savesMinor }: ReservePack, currency: string): string =>
  `${quantityWords(less)} less, out of the reserve, saves a pack of ${moneyText(savesMinor, currency)}.`
