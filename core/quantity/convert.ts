import type { Quantity } from './parse.ts'
import { type Unit, unitTable } from './unit.ts'

/**
 * A quantity in the base unit of its dimension: g, mL, mol, h, or a share of one.
 *
 * @example inBase({ value: 50, unit: '%' }) // 0.5
 */
export function inBase({ value, unit }: Quantity): number {
  const { times, per } = unitTable[unit]
  return (value * times) / per
}

/**
 * The same quantity in another unit of its dimension.
 *
 * @returns the number in that unit
 * @throws RangeError where the dimensions differ: our mistake, since parsing refuses what does not fit
 */
export function convert(quantity: Quantity, to: Unit): number {
  const from = unitTable[quantity.unit]
  const into = unitTable[to]
  if (from.dimension !== into.dimension) throw new RangeError(`${quantity.unit} is ${from.dimension}, ${to} is ${into.dimension}`)
  return (quantity.value * from.times * into.per) / (from.per * into.times)
}

/** Mass in g; throws RangeError for anything but a mass. */
export const massG = (quantity: Quantity): number => convert(quantity, 'g')
/** Volume in mL; throws RangeError for anything but a volume. */
export const volumeMl = (quantity: Quantity): number => convert(quantity, 'mL')
/** Amount of substance in mol; throws RangeError for anything else. */
export const amountMol = (quantity: Quantity): number => convert(quantity, 'mol')
/** Time in h; throws RangeError for anything but a time. */
export const timeH = (quantity: Quantity): number => convert(quantity, 'h')
/** Share as a fraction of one; throws RangeError for anything but a percentage. */
export const shareFraction = (quantity: Quantity): number => convert(quantity, '%') / 100
