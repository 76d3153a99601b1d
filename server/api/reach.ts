import { z } from 'zod'
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
      const { library } = workshop
      const { hand, ...query } = request.query
      const settings = settingsSchema.parse(hand === undefined ? {} : { hand })
      const rows = await reachFrom(workshop, { ...query, settings }, whileConnected(reply))
      const start = library.materials.get(request.query.from)
      const reached = new Set([...rows.map(row => row.compound), start?.contains?.compound ?? request.query.from])
      // Every step that leads on from something reached: the drawing folds them by distance.
      const edges = rows.flatMap(row =>
        (library.makers.get(row.compound) ?? []).flatMap(step => {
          const from = step.reactants.map(r => r.compound).filter(id => reached.has(id) && id !== row.compound)
          return from.length === 0
            ? []
            : [
                {
                  id: step.id,
                  name: step.name,
                  from,
                  to: row.compound,
                  sure: step.confidence === 'checked' ? ('seen' as const) : ('remembered' as const),
                },
              ]
        }),
      )
      const name = (id: string) => library.materials.get(id)?.name ?? id
      return {
        reach: rows.map(row => ({ ...row, name: name(row.compound), route: row.route && [...row.route], flags: [...row.flags] })),
        edges,
      }
    },
  )
}
