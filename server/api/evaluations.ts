import { z } from 'zod'
import { trustOfPlan } from '../../core/report/trust-words.ts'
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
      const shop = workshopOf(workshop, opened)
      const evaluation = await evaluatePlan(shop, opened.plan)
      return { ...evaluation, trust: trustOfPlan(shop.library, opened.plan, evaluation), changes: opened.changes }
    },
  )
}
