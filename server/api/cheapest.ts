import { z } from 'zod'
import { choosingSchema } from '../../core/plan/choosing.ts'
import { planSchema } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { cheapestPlan } from '../planning/cheapest.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

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
  })
  .meta({ id: 'CheapestReply' })

/** The cheapest way to all goals of a plan: routes, make-or-buy and packs chosen together. */
export const cheapest: Resource = (api, { workshop }) => {
  api.post('/cheapest', { schema: { body: bodySchema, response: { 200: replySchema, ...refusals } } }, async request => {
    const { plan, choosing, limits } = request.body
    const { maxSteps, ...options } = choosing
    const given = Object.fromEntries(Object.entries(limits).filter(([, value]) => value != null))
    const { title, start, shelf, packs, settings, seed } = plan
    // What was logged belongs to the routes that were run; a way chosen anew begins with what is in hand.
    const bare = { title, start, shelf, packs, settings, seed, log: [] } as unknown as Omit<Plan, 'goals'>
    const goals = plan.goals as unknown as Plan['goals']
    const answer = await cheapestPlan(workshop, bare, goals, { ...options, ...(maxSteps === null ? {} : { maxSteps }) }, given)
    return structuredClone({ routes: answer.plan.goals.map(goal => goal.route), ...answer.chosen }) as unknown as z.infer<
      typeof replySchema
    >
  })
}
