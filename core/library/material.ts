import { z } from 'zod'
import { idSchema, sourceSchema } from './source.ts'

/** What a mixture is a form of: `massFraction` (0 to 1) or `molPerL`, made up with `rest` (water where absent). */
export const containsSchema = z.strictObject({
  compound: idSchema,
  massFraction: z.number().min(1e-9).lte(1).optional(),
  molPerL: z.number().positive().optional(),
  rest: idSchema.optional(),
})

export const hazardsSchema = z.strictObject({
  codes: z.array(z.string()),
  signalWord: z.enum(['Danger', 'Warning', 'none']),
  from: z.string().optional(),
})

/** Whatever is weighed, poured and bought. Keys as in the library format. */
export const materialSchema = z.strictObject({
  id: idSchema,
  name: z.string().min(1),
  synonyms: z.array(z.string().min(1)).optional(),
  kind: z.enum(['compound', 'polymer', 'mixture', 'feedstock']),
  formula: z.string().min(1).optional(),
  displayFormula: z.string().min(1).optional(),
  smiles: z.string().min(1).optional().meta({
    description:
      'SMILES, with hands and double bonds as far as the name and the CAS number state them. Of a racemate with one relative configuration: one of its hands and, behind it, the stereo group of CXSMILES, "O[C@@H]1CCCC[C@H]1O |&1:1,6|" (atoms counted from 0).',
  }),
  cas: z.string().min(1).optional(),
  form: z.enum(['solid', 'liquid', 'gas', 'solution']),
  densityGPerMl: z.number().positive().optional(),
  meltingC: z.number().optional(),
  boilingC: z.number().optional(),
  flashC: z.number().optional(),
  contains: containsSchema.optional(),
  hazards: hazardsSchema.optional(),
  note: z.string().min(1).optional(),
  reactivityGroups: z.array(z.number().int()).optional(),
  storageGroup: z.string().min(1).optional(),
  wasteStream: z.string().min(1).optional(),
  peroxideClass: z.string().min(1).optional(),
  exposureLimit: z
    .strictObject({
      basis: z.string(),
      twa: z.string().optional(),
      stel: z.string().optional(),
      ceiling: z.string().optional(),
      notation: z.string().optional(),
    })
    .optional(),
  buyable: z.boolean().optional(),
  sources: z.array(sourceSchema),
})
export type Material = z.infer<typeof materialSchema>

/** May be bought: as stated, else true for anything but a polymer. */
export const isBuyable = (material: Material): boolean => material.buyable ?? material.kind !== 'polymer'
