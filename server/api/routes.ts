import { z } from 'zod'
import { axes } from '../../core/choose/query.ts'
import { routeList } from '../../core/choose/route-list.ts'
import { trusts } from '../../core/library/trust.ts'
import { settingsSchema } from '../../core/plan/settings.ts'
import { packsFileSchema } from '../../core/shopping/packs.ts'
import { withCarried } from '../library/with-carried.ts'
import type { Workshop } from '../library/workshop.ts'
import { routesInput, rowsIn } from '../planning/request.ts'
import { Running } from '../planning/running.ts'
import { inTurns, searched } from '../planning/searching.ts'
import { Refusal } from '../refusal.ts'
import { refusals } from '../replies.ts'
import { carriedSchema } from './carried.ts'
import type { Resource } from './resource.ts'
import { noSearch, streamed } from './search-lines.ts'
import { whileConnected } from './while-connected.ts'

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
    seenOnly: z
      .boolean()
      .default(false)
      .meta({ description: 'Only steps whose charge and yield were seen in a source or run at the own bench.' }),
    maxSteps: z.int().positive().nullish(),
    make: ids,
    count: z.int().positive().max(1000).default(10),
    unbeaten: z
      .array(z.enum(axes))
      .default([])
      .meta({ description: 'Two to four axes: lists only the routes that no other beats on all of them at once.' }),
    apart: z
      .int()
      .positive()
      .max(1000)
      .default(1)
      .meta({ description: 'A filter, not the best so many: only routes at least so many steps different from every one listed before.' }),
    prove: z
      .boolean()
      .default(false)
      .meta({ description: 'Has the integer solver prove the best by steps or hands-on hours where the search could not; takes seconds.' }),
    settings: settingsSchema.optional(),
    packs: packsFileSchema.nullish(),
    carried: carriedSchema,
  })
  .meta({ id: 'RoutesQuery' })

const hazardSchema = z.object({ gravest: z.int(), unknown: z.int(), danger: z.int(), warning: z.int() })
const rowSchema = z
  .object({
    steps: z.array(z.string()),
    overallYieldOnStart: z.number(),
    longestLinearYield: z.number(),
    yieldTrust: z.array(z.enum(trusts)).meta({ description: 'How sure the yield of each step is, in their order.' }),
    made: z.array(z.string()),
    bought: z.array(z.string()),
    value: z.number().nullable(),
    valueAtLeast: z.boolean().optional(),
    values: z.partialRecord(z.enum(axes), z.number().nullable()).optional(),
    hazard: hazardSchema,
    flags: z.array(z.object({ kind: z.string(), material: z.string().nullable(), text: z.string() })),
  })
  .meta({ id: 'RouteRow' })

const replySchema = z
  .object({
    routes: z.array(rowSchema),
    complete: z.boolean(),
    proven: z.boolean(),
    tiesInOrder: z.boolean(),
    best: z.object({ proven: z.boolean(), atMostAbovePercent: z.number().nullable() }),
    bound: z.number().optional(),
    gentlest: rowSchema.extend({ place: z.int(), yieldPointsLost: z.number() }).optional(),
    unbeaten: z.object({ axes: z.array(z.enum(axes)), exact: z.boolean() }).optional(),
    apart: z.int().optional(),
  })
  .meta({ id: 'RoutesReply' })

type Body = z.output<typeof querySchema>

const inputOf = (workshop: Workshop, { settings, packs, maxSteps, carried: _, ...query }: Body) =>
  routesInput(
    workshop,
    { ...query, ...(maxSteps == null ? {} : { maxSteps }) },
    { packs: packs ?? null, settings: settings ?? settingsSchema.parse({}) },
  )

/** The routes of a query, as the command line lists them: whole, or as they are found. */
export const routes: Resource = (api, { workshop }) => {
  const running = new Running()
  api.post('/routes', { schema: { body: querySchema, response: { 200: replySchema, ...refusals } } }, async (request, reply) => {
    const { shop } = withCarried(workshop, request.body.carried)
    const answer = await searched(routeList(inputOf(shop, request.body)), whileConnected(reply))
    return structuredClone(rowsIn(shop, answer)) as z.infer<typeof replySchema>
  })
  const description =
    'The same as lines of JSON, as they are found: first {"search"} with an id to stop it by, then {"row", "place"} for each route in order (none where the axis only re-orders), {"progress": {"found", "work", "bound"}} now and then, and last {"done"} with the whole reply, or {"problems"}. Closing the connection ends the search.'
  api.post('/routes/stream', { schema: { description, body: querySchema, response: refusals } }, async (request, reply) => {
    const { shop } = withCarried(workshop, request.body.carried)
    const search = running.begin()
    const input = { ...inputOf(shop, request.body), shouldStop: search.shouldStop }
    const lines = await streamed(search, inTurns(routeList(input), whileConnected(reply)), answer => rowsIn(shop, answer))
    reply.header('content-type', 'application/x-ndjson').header('cache-control', 'no-store')
    return reply.send(lines as never)
  })
  api.delete(
    '/routes/stream/:search',
    {
      schema: {
        description:
          'Has a running search make do with what it has: its stream then ends as usual, with `complete` false and the bound that holds.',
        params: z.object({ search: z.string().max(64) }),
        response: { 204: z.null(), ...refusals },
      },
    },
    async (request, reply) => {
      if (!running.stop(request.params.search)) throw new Refusal('not-found', [noSearch(request.params.search)])
      return reply.status(204).send(null)
    },
  )
}
