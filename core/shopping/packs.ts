import { z } from 'zod'
import { idSchema } from '../library/source.ts'

const minor = z.number().int().nonnegative()
const currency = z.string().regex(/^[A-Z]{3}$/)

export const supplierSchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1),
  carriageMinor: minor,
  hazardousFeeMinor: minor,
  minimumOrderMinor: minor.optional(),
})
export type Supplier = z.infer<typeof supplierSchema>

/** What a supplier sells. Prices in minor units (cents) of the pack's currency, or of the file's. */
export const packSchema = z.strictObject({
  supplier: idSchema,
  material: idSchema,
  amount: z.number().positive(),
  unit: z.enum(['g', 'kg', 'mL', 'L']),
  priceMinor: minor,
  currency: currency.optional(),
})
export type Pack = z.infer<typeof packSchema>

export const packsFileSchema = z.strictObject({
  format: z.literal('waybench-packs'),
  version: z.literal(1),
  note: z.string().optional(),
  currency,
  /** Price of one unit of a foreign currency in the file's currency. */
  rates: z.record(currency, z.number().positive()).optional(),
  suppliers: z.array(supplierSchema),
  packs: z.array(packSchema),
})
export type PacksFile = z.infer<typeof packsFileSchema>
