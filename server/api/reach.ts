import { Readable } from 'node:stream'
import { z } from 'zod'
import { reachNetwork } from '../../core/choose/reach-network.ts'
import { trusts } from '../../core/library/trust.ts'
import { settingsSchema } from '../../core/plan/settings.ts'
import { jsonInPieces } from '../json-in-pieces.ts'
import { withCarried } from '../library/with-carried.ts'
import { type ReachAsked, reachIn, reachInput } from '../planning/reaching.ts'
import { Running } from '../planning/running.ts'
import { inTurns, searched } from '../planning/searching.ts'
import { Refusal } from '../refusal.ts'
import { refusals } from '../replies.ts'
import { carriedSchema } from './carried.ts'
import type { Resource } from './resource.ts'
import { noSearch, streamed } from './search-lines.ts'
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
    yieldTrust: z.enum(trusts).nullable().meta({ description: 'How sure the least sure yield of that route is.' }),
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

const replySchema = z
  .object({
    reach: z.array(rowSchema),
    edges: z.array(edgeSchema),
    complete: z
      .boolean()
      .meta({ description: 'False = it was stopped: rows that are not proven were not looked at, nor all routes counted.' }),
  })
  .meta({ id: 'ReachReply' })

const hand = settingsSchema.shape.hand.unwrap().optional()
const querySchema = z.strictObject({ from: z.string().max(200), maxSteps: z.coerce.number().int().positive().optional(), hand })
const bodySchema = z
  .strictObject({ from: z.string().max(200), maxSteps: z.int().positive().nullish(), hand, carried: carriedSchema })
  .meta({ id: 'ReachQuery' })

/** Everything a start can become, with the steps between, for the list and for the drawing: whole, or as it is found. */
export const reach: Resource = (api, { workshop }) => {
  const running = new Running()
  const asked = ({ from, maxSteps, hand }: z.output<typeof bodySchema> | z.output<typeof querySchema>): ReachAsked => ({
    from,
    ...(maxSteps == null ? {} : { maxSteps }),
    settings: settingsSchema.parse(hand === undefined ? {} : { hand }),
  })
  api.get('/reach', { schema: { querystring: querySchema, response: { 200: replySchema, ...refusals } } }, async (request, reply) => {
    const answer = await searched(reachNetwork(reachInput(workshop, asked(request.query))), whileConnected(reply))
    const text = jsonInPieces(reachIn(workshop, answer))
    return reply.type('application/json').send(Readable.from(text, { objectMode: false }) as never)
  })
  const description =
    'The same as lines of JSON, as it is found: first {"search"} with an id to stop it by, then {"rows"} that real routes have just confirmed (their routes not counted yet), {"progress": {"found", "work", "of": {"doing", "done", "all"}}} now and then, and last {"done"} with the whole reply, or {"problems"}. Closing the connection ends the search.'
  api.post('/reach/stream', { schema: { description, body: bodySchema, response: refusals } }, async (request, reply) => {
    const { shop } = withCarried(workshop, request.body.carried)
    const search = running.begin()
    const turns = inTurns(reachNetwork(reachInput(shop, asked(request.body), search.shouldStop)), whileConnected(reply))
    const lines = await streamed(search, turns, answer => reachIn(shop, answer))
    reply.header('content-type', 'application/x-ndjson').header('cache-control', 'no-store')
    return reply.send(lines as never)
  })
  const stopping =
    'Has a running search make do with what it has: its stream then ends as usual, with `complete` false, and what was not looked at stands as not proven.'
  const params = z.object({ search: z.string().max(64) })
  api.delete(
    '/reach/stream/:search',
    { schema: { description: stopping, params, response: { 204: z.null(), ...refusals } } },
    async (request, reply) => {
      if (!running.stop(request.params.search)) throw new Refusal('not-found', [noSearch(request.params.search)])
      return reply.status(204).send(null)
    },
  )
}
