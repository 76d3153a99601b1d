import { z } from 'zod'
import { idSchema, unitSchema } from '../library/source.ts'

export const shelfItemSchema = z.strictObject({
  material: idSchema,
  /** No shelf holds more than a thousand tonnes of anything, in whatever unit. */
  amount: z.number().nonnegative().max(1e9),
  unit: unitSchema,
  /** Fraction of the material that is what the label says. */
  assay: z.number().min(1e-6).lte(1).optional(),
  opened: z.string().optional(),
  expires: z.string().optional(),
  place: z.string().optional(),
  /** A second product that this transformation of the plan gives: its amount follows the plan, and it is there once that step is done. */
  gainedIn: idSchema.optional(),
})
export type ShelfItem = z.infer<typeof shelfItemSchema>

export const shelfFileSchema = z.strictObject({
  format: z.literal('waybench-shelf'),
  version: z.literal(1),
  note: z.string().optional(),
  items: z.array(shelfItemSchema),
})
export type ShelfFile = z.infer<typeof shelfFileSchema>
