import { z } from 'zod'
import { checkedPlanFile, openPlan } from '../planning/plan-file.ts'
import { Refusal } from '../refusal.ts'
import { problemSchema, refusals } from '../replies.ts'
import type { PlanSummary } from '../store/store.ts'
import type { Resource } from './resource.ts'

const idParams = z.strictObject({ id: z.string().max(64) })
const summarySchema = z.object({ id: z.string(), title: z.string(), version: z.int(), savedAt: z.string() }).meta({ id: 'PlanSummary' })
const storedSchema = summarySchema.extend({ plan: z.unknown(), changes: z.array(problemSchema) }).meta({ id: 'StoredPlan' })

/** Saved plans: each save is a new version, and a save on top of somebody else's is refused. */
export const plans: Resource = (api, { store, workshop, now, newId }) => {
  const gone = (id: string) =>
    new Refusal('not-found', [
      {
        code: 'plan-not-found',
        where: ['plans', id],
        what: 'There is no saved plan under this id.',
        why: 'It may have been deleted, or the address was cut.',
        cure: 'Open the list of saved plans and choose one.',
      },
    ])

  api.get('/plans', { schema: { response: { 200: z.object({ plans: z.array(summarySchema) }), ...refusals } } }, async () => ({
    plans: [...store.list()],
  }))

  api.post(
    '/plans',
    { schema: { body: z.strictObject({ plan: z.unknown() }), response: { 201: summarySchema, ...refusals } } },
    async (request, reply) => {
      const { title, body } = checkedPlanFile(workshop, request.body.plan)
      return reply.status(201).send(store.create(newId(), title, body, now()))
    },
  )

  api.get(
    '/plans/:id',
    {
      schema: {
        params: idParams,
        querystring: z.strictObject({ version: z.coerce.number().int().positive().optional() }),
        response: { 200: storedSchema, ...refusals },
      },
    },
    async request => {
      const stored = store.get(request.params.id, request.query.version)
      if (!stored) throw gone(request.params.id)
      const { body, ...summary } = stored
      const opened: unknown = JSON.parse(body)
      return {
        ...summary,
        plan: opened,
        changes: openPlan(workshop, opened, summary.title).changes.map(change => ({ ...change, where: [...change.where] })),
      }
    },
  )

  api.get(
    '/plans/:id/versions',
    { schema: { params: idParams, response: { 200: z.object({ versions: z.array(summarySchema) }), ...refusals } } },
    async request => {
      const versions = store.versions(request.params.id)
      if (versions.length === 0) throw gone(request.params.id)
      return { versions: [...versions] }
    },
  )

  api.put(
    '/plans/:id',
    {
      schema: {
        params: idParams,
        body: z.strictObject({ onVersion: z.int().positive(), plan: z.unknown() }),
        response: { 200: summarySchema, ...refusals },
      },
    },
    async request => {
      const { title, body } = checkedPlanFile(workshop, request.body.plan)
      const saved: PlanSummary | null | 'conflict' = store.save(request.params.id, request.body.onVersion, title, body, now())
      if (saved === null) throw gone(request.params.id)
      if (saved === 'conflict') {
        throw new Refusal('conflict', [
          {
            code: 'plan-changed',
            where: ['plans', request.params.id],
            what: `The plan was saved by somebody else after version ${request.body.onVersion}.`,
            why: 'Saving over it would lose their changes.',
            cure: 'Open the newest version, or save yours as a new plan.',
          },
        ])
      }
      return saved
    },
  )

  api.delete('/plans/:id', { schema: { params: idParams, response: { 204: z.null(), ...refusals } } }, async (request, reply) => {
    if (!store.remove(request.params.id)) throw gone(request.params.id)
    return reply.status(204).send(null)
  })
}
