import type { Basket } from '../shopping/shopping.ts'

/** "carriage of Kiln Lane not stated": what the total leaves out of the orders; null where every carriage is known. */
export function carriageOpen({ orders }: Pick<Basket, 'orders'>): string | null {
  const open = orders.filter(order => order.carriageUnknown).map(order => order.name)
  return open.length === 0 ? null : `carriage of ${open.join(', ')} not stated`
}

/** Nothing that is to be bought has a price: there is no total, and certainly not one of zero. */
export const hasNoPrice = ({ totalMinor, priceUnknown }: Pick<Basket, 'totalMinor' | 'priceUnknown'>): boolean =>
  totalMinor === null || (totalMinor === 0 && priceUnknown.length > 0)
