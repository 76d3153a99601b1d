import { z } from 'zod'
import { reachNetwork } from '../../core/choose/reach-network.ts'
import { settingsSchema } from '../../core/plan/settings.ts'
import { reachFrom } from '../planning/reaching.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'
import { whileConnected } from './while-connected.ts'

const flagSchema = z.object({ kind: z.string(), material: z.string().nullable(), text: z.string() }).meta({ id: 'RouteFlag' })

const rowSchema = z
  .object({
    compound: z.string(),
    name: z.string(),
    steps: z.int().nullable(),
    bestYieldOnStart: z
      .number()
      .nullable()
      .meta({ description: 'Overall yield on start, a fraction, of the default route first by `start`.' }),
    route: z.array(z.string()).nullable(),
    routes: z.int().meta({ description: 'Number of default routes; at least so many where `counted` is false.' }),
    counted: z.boolean(),
    proven: z.boolean(),
    flags: z.array(flagSchema),
  })
  .meta({ id: 'ReachRow' })

const edgeSchema = z
  .object({ id: z.string(), name: z.string(), from: z.array(z.string()), to: z.string(), sure: z.enum(['seen', 'remembered']) })
  .meta({ id: 'ReachEdge' })

/** Everything a start can become, with the steps between, for the list and for the drawing. */
export const reach: Resource = (api, { workshop }) => {
  api.get(
    '/reach',
    {
      schema: {
        querystring: z.strictObject({
          from: z.string(),
          maxSteps: z.coerce.number().int().positive().optional(),
          hand: settingsSchema.shape.hand.unwrap().optional(),
        }),
        response: { 200: z.object({ reach: z.array(rowSchema), edges: z.array(edgeSchema) }), ...refusals },
      },
    },
    async (request, reply) => {
      const { hand, ...query } = request.query
      const settings = settingsSchema.parse(hand === undefined ? {} : { hand })
      const rows = await reachFrom(workshop, { ...query, settings }, whileConnected(reply))
      const { reach, edges } = reachNetwork(workshop.library, query.from, rows)
      return {
        reach: reach.map(row => ({ ...row, route: row.route && [...row.route], flags: [...row.flags] })),
        edges: edges.map(edge => ({ ...edge, from: [...edge.from] })),
      }
    },
  )
}
