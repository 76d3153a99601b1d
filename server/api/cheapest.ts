import { z } from 'zod'
import type { JointAnswer } from '../../core/choose/joint.ts'
import { choosingSchema } from '../../core/plan/choosing.ts'
import { planSchema } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Checked } from '../../core/problem/problem.ts'
import { withCarried } from '../library/with-carried.ts'
import type { Workshop } from '../library/workshop.ts'
import { type CheapestAsked, cheapestSearch, chosenIn } from '../planning/cheapest.ts'
import { Running } from '../planning/running.ts'
import { inTurns, searched } from '../planning/searching.ts'
import { Refusal } from '../refusal.ts'
import { refusals } from '../replies.ts'
import { carriedSchema } from './carried.ts'
import type { Resource } from './resource.ts'
import { noSearch, streamed } from './search-lines.ts'
import { whileConnected } from './while-connected.ts'

const bodySchema = z
  .strictObject({
    plan: planSchema.meta({ description: 'Start, goals, shelf, packs and settings count; the routes of the goals are chosen anew.' }),
    choosing: choosingSchema.prefault({}),
    limits: z
      .strictObject({
        budgetMinor: z.int().nonnegative().nullish(),
        maxHandsOnH: z.number().nonnegative().nullish(),
        finishBy: z.iso.date().nullish(),
      })
      .prefault({}),
    carried: carriedSchema,
  })
  .meta({ id: 'CheapestQuery' })

const figuresSchema = z.object({
  steps: z.array(z.string()),
  totalMinor: z.number().nullable(),
  complete: z.boolean(),
  priceUnknown: z.number(),
  perGramMinor: z.number().nullable(),
  unreached: z.int(),
  handsOnH: z.number().nullable(),
  finishDate: z.string().nullable(),
  over: z.array(z.string()),
})

const replySchema = z
  .object({
    routes: z.array(
      z.object({
        start: z.string(),
        target: z.string(),
        steps: z.array(z.object({ transformation: z.string(), makes: z.string() })),
      }),
    ),
    figures: figuresSchema,
    reasons: z.array(z.string()),
    changedByLimits: z.string().nullable(),
    others: z.array(figuresSchema),
    ways: z.int(),
    reckoned: z.int(),
    proven: z.boolean(),
    boundMinor: z.number().nullable().meta({ description: 'No way costs less; the total where that is proven by cost.' }),
  })
  .meta({ id: 'CheapestReply' })

type Body = z.output<typeof bodySchema>

function askedIn({ plan, choosing, limits }: Body): CheapestAsked {
  const { maxSteps, ...options } = choosing
  const given = Object.fromEntries(Object.entries(limits).filter(([, value]) => value != null))
  const { title, start, shelf, packs, settings, seed } = plan
  // What was logged belongs to the routes that were run; a way chosen anew begins with what is in hand.
  const bare = { title, start, shelf, packs, settings, seed, log: [] } as unknown as CheapestAsked['plan']
  const goals = plan.goals as unknown as Plan['goals']
  return { plan: bare, goals, options: { ...options, ...(maxSteps === null ? {} : { maxSteps }) }, limits: given }
}

/** The cheapest way to all goals of a plan: routes, make-or-buy and packs chosen together; whole, or with its progress told. */
export const cheapest: Resource = (api, { workshop }) => {
  const running = new Running()
  const replyOf = (shop: Workshop, answer: Checked<JointAnswer>) => {
    const { plan, chosen } = chosenIn(shop, answer)
    return structuredClone({ routes: plan.goals.map(goal => goal.route), ...chosen }) as unknown as z.infer<typeof replySchema>
  }
  api.post('/cheapest', { schema: { body: bodySchema, response: { 200: replySchema, ...refusals } } }, async (request, reply) => {
    const { shop } = withCarried(workshop, request.body.carried)
    return replyOf(shop, await searched(await cheapestSearch(shop, askedIn(request.body)), whileConnected(reply)))
  })
  const description =
    'The same as lines of JSON: first {"search"} with an id to stop it by, then {"progress": {"found", "work"}} now and then (ways there are, ways reckoned in full), and last {"done"} with the whole reply, or {"problems"}. Closing the connection ends the search.'
  api.post('/cheapest/stream', { schema: { description, body: bodySchema, response: refusals } }, async (request, reply) => {
    const { shop } = withCarried(workshop, request.body.carried)
    const search = running.begin()
    const turns = inTurns(await cheapestSearch(shop, askedIn(request.body), search.shouldStop), whileConnected(reply))
    const lines = await streamed(search, turns, answer => replyOf(shop, answer))
    reply.header('content-type', 'application/x-ndjson').header('cache-control', 'no-store')
    return reply.send(lines as never)
  })
  api.delete(
    '/cheapest/stream/:search',
    {
      schema: {
        description: 'Has a running search take the best way that it has: its stream then ends with it, not proven, and with its bound.',
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
