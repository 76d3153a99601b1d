import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import type { Basket, Order, ShoppingLine } from '../shopping/shopping.ts'
import { costText } from './answers.ts'
import { asPacked } from './as-packed.ts'
import { carriageOpen } from './basket-gaps.ts'
import { nameIn } from './names.ts'
import { capital, counted, listed } from './words.ts'

/** One supplier's order: its lines as far as they are bought there. */
export interface SupplierGroup {
  readonly order: Order
  readonly name: string
  /** The demo's suppliers say so in their name; it is set apart from it. */
  readonly invented: boolean
  readonly lines: readonly ShoppingLine[]
}

/** The shopping list as it is read in a shop: what has no price first, then supplier by supplier. */
export interface ShoppingSheet {
  readonly title: string
  /** Price unknown: never free. */
  readonly unknown: readonly ShoppingLine[]
  readonly suppliers: readonly SupplierGroup[]
  /** To buy, but no basket says where: without a solver, or with packs that cannot cover the need. */
  readonly unplaced: readonly ShoppingLine[]
  readonly madeUp: readonly ShoppingLine[]
  readonly shelf: readonly ShoppingLine[]
  readonly left: readonly ShoppingLine[]
  /** What the total leaves out, in words; null where it is complete. */
  readonly missing: string | null
  /** What is to be known of its lines, each once: "Salt: Own price of 1 kg from Kiln Lane, in place of € 2.00." */
  readonly notes: readonly string[]
}

const suffix = / \(invented\)$/

export function shoppingSheetOf(library: Library, evaluation: Evaluation): ShoppingSheet {
  const { basket } = evaluation
  const shopping = evaluation.shopping.map(line => asPacked(library, line))
  const nameOf = nameIn(library)
  const toBuy = shopping.filter(line => line.madeUp === null && (line.buy.amount === null || line.buy.amount > 0 || line.packs.length > 0))
  const unpriced = new Set(basket?.priceUnknown ?? [])
  const unknown = shopping.filter(line => unpriced.has(line.material))
  const packed = toBuy.filter(line => line.packs.length > 0 && !unpriced.has(line.material))
  const suppliers = (basket?.orders ?? []).map(order => ({
    order,
    name: order.name.replace(suffix, ''),
    invented: suffix.test(order.name),
    lines: packed.filter(line => line.packs.some(pack => pack.supplier === order.supplier)),
  }))
  const placed = new Set([...unknown, ...packed])
  const unplaced = toBuy.filter(line => !placed.has(line))
  const missing = basket === null ? [] : missingParts(basket, nameOf)
  return {
    title: titleOf(unknown.length + packed.length + unplaced.length, evaluation),
    unknown,
    suppliers,
    unplaced,
    madeUp: shopping.filter(line => line.madeUp !== null),
    shelf: shopping.filter(line => (line.shelf.amount ?? 0) > 0),
    left: shopping.filter(line => line.packs.length > 0 && (line.left.amount ?? 0) > 0),
    missing: missing.length === 0 ? null : `At least: ${listed(missing)}.`,
    notes: [...new Set(shopping.flatMap(line => line.notes.map(note => `${capital(nameOf(line.material))}: ${note}`)))],
  }
}

/** "Buy seven materials: € 62.30 and one price unknown". */
function titleOf(count: number, evaluation: Evaluation): string {
  if (count === 0) return 'Nothing to buy'
  return evaluation.basket === null ? `Buy ${counted(count, 'material')}` : `Buy ${counted(count, 'material')}: ${costText(evaluation)}`
}

function missingParts(basket: Basket, nameOf: (id: string) => string): readonly string[] {
  const { priceUnknown: prices, amountUnknown: amounts } = basket
  return [
    ...(prices.length === 0 ? [] : [`${counted(prices.length, 'price')} unknown (${listed(prices.map(nameOf))})`]),
    ...(amounts.length === 0 ? [] : [`${counted(amounts.length, 'amount')} left open by the source (${listed(amounts.map(nameOf))})`]),
    ...[carriageOpen(basket)].filter(text => text !== null),
  ]
}
