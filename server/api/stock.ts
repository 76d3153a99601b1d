import { z } from 'zod'
import { materialCell } from '../../core/reading/material-cell.ts'
import { leftOvers } from '../../core/shopping/next-uses.ts'
import { packsFileSchema } from '../../core/shopping/packs.ts'
import { packsFromCsv } from '../../core/shopping/packs-csv.ts'
import { shelfItemSchema } from '../../core/shopping/shelf.ts'
import { shelfFromCsv } from '../../core/shopping/shelf-csv.ts'
import { problemSchema, refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

const table = { name: z.string().max(300), text: z.string().max(5_000_000) }
const refusedSchema = z.object({
  refused: z
    .array(z.object({ line: z.int(), text: z.string(), problems: z.array(problemSchema) }))
    .meta({ description: 'Lines that were not taken, whole, each with everything wrong with it.' }),
  notes: z.array(problemSchema).meta({ description: 'What was assumed in lines that were taken.' }),
  problems: z.array(problemSchema).meta({ description: 'What is wrong with the table as a whole; then all its lines are refused.' }),
})
const shelfReplySchema = refusedSchema.extend({ items: z.array(shelfItemSchema) }).meta({ id: 'ShelfTableReply' })
const packsReplySchema = refusedSchema.extend({ packs: packsFileSchema, taken: z.int() }).meta({ id: 'PacksTableReply' })

const leftBodySchema = z
  .strictObject({
    left: z
      .array(
        z.strictObject({
          material: z.string().max(200),
          left: z.strictObject({ amount: z.number().nullable(), unit: z.enum(['g', 'mL']) }),
        }),
      )
      .max(500),
    compounds: z.array(z.string().max(200)).max(500).default([]),
    transformations: z.array(z.string().max(200)).max(500).default([]),
  })
  .meta({ id: 'LeftOversQuery' })
const leftReplySchema = z
  .object({
    leftOvers: z.array(
      z.object({
        material: z.string(),
        left: z.object({ amount: z.number().nullable(), unit: z.enum(['g', 'mL']) }),
        couldServe: z.array(
          z.object({ transformation: z.string(), name: z.string(), makes: z.string(), times: z.number(), downstream: z.boolean() }),
        ),
      }),
    ),
  })
  .meta({ id: 'LeftOversReply' })

/** Shelf and packs as people keep them, in a table: read here, where all names of materials are known; nothing is stored. */
export const stock: Resource = (api, { workshop }) => {
  api.post(
    '/stock/shelf',
    { schema: { body: z.strictObject(table).meta({ id: 'ShelfTable' }), response: { 200: shelfReplySchema, ...refusals } } },
    request => {
      const { values, refused, notes, problems } = shelfFromCsv(materialCell(workshop.names()), request.body.name, request.body.text)
      return structuredClone({ items: values, refused, notes, problems }) as z.infer<typeof shelfReplySchema>
    },
  )
  api.post(
    '/stock/packs',
    {
      schema: {
        body: z.strictObject({ ...table, before: packsFileSchema }).meta({ id: 'PacksTable' }),
        response: { 200: packsReplySchema, ...refusals },
      },
    },
    request => {
      const { name, text, before } = request.body
      const { values, refused, notes, problems, file } = packsFromCsv(materialCell(workshop.names()), name, text, before)
      return structuredClone({ packs: file, taken: values.length, refused, notes, problems }) as z.infer<typeof packsReplySchema>
    },
  )
  api.post('/stock/left-overs', { schema: { body: leftBodySchema, response: { 200: leftReplySchema, ...refusals } } }, request => {
    const { left, compounds, transformations } = request.body
    const known = left.filter(one => workshop.library.materials.has(one.material))
    const found = leftOvers(workshop.library, known, { compounds: new Set(compounds), transformations: new Set(transformations) })
    const name = (id: string) => workshop.library.transformations.get(id)?.name ?? id
    return {
      leftOvers: found.map(one => ({ ...one, couldServe: one.couldServe.map(use => ({ ...use, name: name(use.transformation) })) })),
    }
  })
}
