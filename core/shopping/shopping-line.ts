import { type Library, materialOf } from '../library/library.ts'
import { isBuyable, type Material } from '../library/material.ts'
import { percentText, quantityText } from '../quantity/print.ts'
import { type Decision, demandOf } from './decision.ts'
import { type Making, madeUpText } from './made-up.ts'
import type { StockUnit } from './measure.ts'
import type { Need } from './needs.ts'
import type { Offer } from './offers.ts'
import { type Lot, type Stock, takenFrom } from './shelf-use.ts'
import type { PackCount, ShoppingLine } from './shopping.ts'

/** A material of the list with all that is known of its supply. */
export interface Row {
  readonly material: Material
  readonly unit: StockUnit
  readonly need: Need | null
  readonly stock: Stock
  readonly offers: readonly Offer[]
}

/**
 * One line of the list.
 *
 * @param decision null = nothing was decided: the line stands without packs
 * @returns null for what was only looked at as something to make a solution up from, and not bought to fill a minimum order either
 */
export function shoppingLine(library: Library, row: Row, decision: Decision | null): ShoppingLine | null {
  const { material, unit, need, stock } = row
  const quantity = (amount: number | null) => ({ amount, unit })
  const made = decision?.made ?? new Map<Making, number>()
  const drawn = [...made].filter(([making]) => making.source === material.id || making.rest === material.id)
  const onTop = row.offers.some(offer => (decision?.counts.get(offer) ?? 0) > 0)
  if (need === null && drawn.length === 0 && !onTop) return null
  const own = need === null ? 0 : need.amount
  const demand = own === null && drawn.length === 0 ? null : demandOf(material.id, own ?? 0, made)
  const free = need?.free === true
  const shelf = demand === null ? null : free ? demand : Math.min(stock.usable, demand)
  const making = [...made].find(([m]) => m.target === material.id) ?? null
  const buy = free ? 0 : demand === null || shelf === null ? null : making === null ? demand - shelf : 0
  const packs: PackCount[] = row.offers.flatMap(offer => {
    const count = decision?.counts.get(offer) ?? 0
    const { supplier, amount, unit: packUnit } = offer.pack
    return count > 0 ? [{ supplier, amount, unit: packUnit, count, priceMinor: offer.priceMinor, priceFrom: offer.stated.price }] : []
  })
  const bought = row.offers.reduce((sum, offer) => sum + offer.size * (decision?.counts.get(offer) ?? 0), 0)
  const nothingToBuy = buy !== null && buy <= 0
  const priced = nothingToBuy || (buy !== null && decision !== null && row.offers.length > 0)
  const inherited = drawn.map(([m]) => m.target)
  return {
    material: material.id,
    need: quantity(demand),
    shelf: quantity(demand === null && !free ? stock.usable : shelf),
    buy: quantity(buy),
    open: need?.open ?? false,
    planned: need?.planned ?? false,
    atLeast: need?.atLeast ?? false,
    packs,
    costMinor: priced ? packs.reduce((sum, pack) => sum + pack.count * pack.priceMinor, 0) : null,
    left: quantity(buy === null || packs.length === 0 ? 0 : Math.max(0, bought - buy)),
    uses: [
      ...(need?.uses ?? []),
      ...drawn.map(([m, amount]) => ({
        step: '',
        role: `to make up ${materialOf(library, m.target).name}`,
        amount: quantity(amount * (m.source === material.id ? m.sourcePerUnit : m.restPerUnit)),
      })),
    ],
    madeUp: making === null ? null : madeUpText(library, ...making),
    lots: shelf === null ? [] : takenFrom(stock, shelf).map(lot => ({ ...lot, amount: quantity(lot.amount) })),
    notes: [
      ...(need?.notes ?? []),
      ...stock.notes,
      ...(shelf === null ? [] : takenFrom(stock, shelf).flatMap(lot => weighMore(lot, unit) ?? [])),
      ...(free ? ['Counts as on the shelf.'] : []),
      ...(!isBuyable(material) && !nothingToBuy ? ['Not sold: it is made and used on the spot.'] : []),
      ...row.offers.flatMap(offer => ((decision?.counts.get(offer) ?? 0) > 0 ? (ownPrice(offer) ?? []) : [])),
      ...(onTop && nothingToBuy ? ['Bought only to reach the minimum order of its supplier.'] : []),
      ...(inherited.length > 0 && need === null
        ? [`Only to make up ${inherited.map(id => materialOf(library, id).name).join(', ')}.`]
        : []),
    ],
  }
}

/** A price that the reader wrote over the one in the list of packs. */
function ownPrice({ pack, supplier, writtenOver }: Offer): string | null {
  if (writtenOver === undefined) return null
  return `Own price of ${pack.amount} ${pack.unit} from ${supplier.name}, in place of ${writtenOver}.`
}

/** Where a bottle is not all that its label says, more is weighed than is needed. */
function weighMore(lot: Lot, unit: StockUnit): string | null {
  if (lot.assay === 1) return null
  const text = (value: number) => quantityText({ value, unit })
  const bottle = lot.opened === null ? 'the bottle' : `the bottle opened ${lot.opened}`
  return `${text(lot.amount)} is ${text(lot.amount / lot.assay)} out of ${bottle}, at its assay of ${percentText(lot.assay)}.`
}
