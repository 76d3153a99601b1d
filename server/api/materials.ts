import { z } from 'zod'
import { findMaterials } from '../../core/library/find.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

const foundSchema = z
  .object({
    id: z.string(),
    name: z.string(),
    kind: z.string(),
    form: z.string(),
    formula: z.string().optional(),
    cas: z.string().optional(),
    matched: z.string().meta({ description: 'What the words matched: the name, a synonym, the formula or the CAS number.' }),
    canStart: z.boolean().meta({ description: 'Some transformation takes it as a reactant.' }),
    densityGPerMl: z.number().optional(),
  })
  .meta({ id: 'FoundMaterial' })

/** Search by name, synonym, formula or CAS number. */
export const materials: Resource = (api, { workshop }) => {
  api.get(
    '/materials',
    {
      schema: {
        querystring: z.strictObject({ q: z.string().max(200).default(''), most: z.coerce.number().int().min(1).max(100).default(20) }),
        response: { 200: z.object({ materials: z.array(foundSchema) }), ...refusals },
      },
    },
    request => ({
      materials: findMaterials(workshop.library, request.query.q, request.query.most).map(({ material, matched, canStart }) => ({
        id: material.id,
        name: material.name,
        kind: material.kind,
        form: material.form,
        formula: material.displayFormula ?? material.formula,
        cas: material.cas,
        matched,
        canStart,
        densityGPerMl: material.densityGPerMl,
      })),
    }),
  )
}
