import { z } from 'zod'
import { withSlice } from '../library/with-slice.ts'
import { evaluatePlan, openPlan } from '../planning/plan-file.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

/** A plan file, reckoned here: for programs that do not reckon by themselves. */
export const evaluations: Resource = (api, { workshop }) => {
  api.post(
    '/evaluations',
    { schema: { body: z.strictObject({ plan: z.unknown() }), response: { 200: z.unknown(), ...refusals } } },
    async request => {
      const { plan, changes, slice } = openPlan(workshop, request.body.plan, 'plan')
      return { ...(await evaluatePlan(withSlice(workshop, slice), plan)), changes }
    },
  )
}
