import { z } from 'zod'
import { idSchema } from '../library/source.ts'
import { type PriceFrom, priceFromOf, priceFromSchema } from './price-from.ts'

/** Minor units of a currency; sums beyond a hundred million of most currencies are slips of the pen. */
const minor = z.number().int().nonnegative().max(1e10)
const currency = z.string().regex(/^[A-Z]{3}$/)

export const supplierSchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1),
  carriageMinor: minor,
  hazardousFeeMinor: minor,
  /** Nobody has said what it asks for carriage and fees: they count nothing, and what an order comes to is a lower bound. */
  carriageUnknown: z.literal(true).optional(),
  minimumOrderMinor: minor.optional(),
  /** Where its prices, carriage and fees were got, unless a pack says otherwise. */
  priceFrom: priceFromSchema.optional(),
})
export type Supplier = z.infer<typeof supplierSchema>

/** What a supplier sells. Prices in minor units (cents) of the pack's currency, or of the file's. */
export const packSchema = z.strictObject({
  supplier: idSchema,
  material: idSchema,
  /** From a millionth of a gram to a thousand tonnes. */
  amount: z.number().min(1e-6).max(1e6),
  unit: z.enum(['g', 'kg', 'mL', 'L']),
  priceMinor: minor,
  currency: currency.optional(),
  /** Where this price was got; an empty one = not stated, whatever holds for the others. */
  priceFrom: priceFromSchema.optional(),
  /** The price that this one was written over, in the same currency, with what was said of it alone. */
  inPlaceOf: z.strictObject({ priceMinor: minor, priceFrom: priceFromSchema.optional() }).optional(),
})
export type Pack = z.infer<typeof packSchema>

export const packsFileSchema = z.strictObject({
  format: z.literal('waybench-packs'),
  version: z.literal(1),
  note: z.string().optional(),
  currency,
  /** Price of one unit of a foreign currency in the file's currency. */
  rates: z.record(currency, z.number().min(1e-9).max(1e9)).optional(),
  /** Where all prices of the file were got that nothing else is said of. */
  priceFrom: priceFromSchema.optional(),
  suppliers: z.array(supplierSchema),
  packs: z.array(packSchema),
})
export type PacksFile = z.infer<typeof packsFileSchema>

/** Where the price of a pack was got. */
export const priceFromOfPack = (file: PacksFile, pack: Pack): PriceFrom =>
  priceFromOf(
    pack,
    file.suppliers.find(supplier => supplier.id === pack.supplier),
    file,
  )
