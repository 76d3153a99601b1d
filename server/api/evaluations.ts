import { z } from 'zod'
import { evaluatePlan, openPlan, workshopOf } from '../planning/plan-file.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

/** A plan file, reckoned here: for programs that do not reckon by themselves. */
export const evaluations: Resource = (api, { workshop }) => {
  api.post(
    '/evaluations',
    { schema: { body: z.strictObject({ plan: z.unknown() }), response: { 200: z.unknown(), ...refusals } } },
    async request => {
      const opened = openPlan(workshop, request.body.plan, 'plan')
      return { ...(await evaluatePlan(workshopOf(workshop, opened), opened.plan)), changes: opened.changes }
    },
  )
}
