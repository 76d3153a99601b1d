import { z } from 'zod'
import { axes } from '../../core/choose/query.ts'
import { settingsSchema } from '../../core/plan/settings.ts'
import { packsFileSchema } from '../../core/shopping/packs.ts'
import { listRoutes } from '../planning/request.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

const ids = z.array(z.string().max(200)).max(200).default([])

const querySchema = z
  .strictObject({
    from: z.string().max(200),
    to: z.string().max(200),
    by: z.enum(axes).default('start'),
    avoid: ids,
    avoidStep: ids,
    mustPass: ids,
    avoidCode: ids,
    avoidList: ids,
    ownedOnly: z.boolean().default(false),
    maxSteps: z.int().positive().nullish(),
    make: ids,
    count: z.int().positive().max(1000).default(10),
    settings: settingsSchema.optional(),
    packs: packsFileSchema.nullish(),
  })
  .meta({ id: 'RoutesQuery' })

const hazardSchema = z.object({ gravest: z.int(), unknown: z.int(), danger: z.int(), warning: z.int() })
const rowSchema = z
  .object({
    steps: z.array(z.string()),
    overallYieldOnStart: z.number(),
    longestLinearYield: z.number(),
    made: z.array(z.string()),
    bought: z.array(z.string()),
    value: z.number().nullable(),
    hazard: hazardSchema,
    flags: z.array(z.object({ kind: z.string(), material: z.string().nullable(), text: z.string() })),
  })
  .meta({ id: 'RouteRow' })

const replySchema = z
  .object({
    routes: z.array(rowSchema),
    complete: z.boolean(),
    proven: z.boolean(),
    bound: z.number().optional(),
    gentlest: rowSchema.extend({ place: z.int(), yieldPointsLost: z.number() }).optional(),
  })
  .meta({ id: 'RoutesReply' })

/** The routes of a query, as the command line lists them. */
export const routes: Resource = (api, { workshop }) => {
  api.post('/routes', { schema: { body: querySchema, response: { 200: replySchema, ...refusals } } }, request => {
    const { settings, packs, maxSteps, ...query } = request.body
    const rows = listRoutes(
      workshop,
      { ...query, ...(maxSteps == null ? {} : { maxSteps }) },
      { packs: packs ?? null, settings: settings ?? settingsSchema.parse({}) },
    )
    return structuredClone(rows) as z.infer<typeof replySchema>
  })
}
