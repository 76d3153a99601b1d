import { z } from 'zod'

/** Where a figure comes from. `checked` = it was read there; `for` = what it is the source of. */
export const sourceSchema = z.strictObject({
  citation: z.string().min(1),
  url: z.string().optional(),
  for: z.string().optional(),
  detail: z.string().optional(),
  checked: z.boolean(),
})
export type Source = z.infer<typeof sourceSchema>

export const idPattern = /^[a-z0-9]+(-[a-z0-9]+)*$/
export const idSchema = z.string().regex(idPattern)

export const unitSchema = z.enum(['g', 'kg', 'mg', 'mL', 'L', 'mol', 'mmol'])
export type Unit = z.infer<typeof unitSchema>
