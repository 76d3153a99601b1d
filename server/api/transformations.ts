import { z } from 'zod'
import { folded } from '../../core/library/find.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import { trustInYield, trusts } from '../../core/library/trust.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { chargesWritten, mediaTypes } from '../library/written-as.ts'
import { runsLogged } from '../planning/runs-logged.ts'
import { Refusal } from '../refusal.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

const rowSchema = z
  .object({
    id: z.string(),
    name: z.string(),
    kind: z.string(),
    from: z.array(z.string()),
    to: z.string(),
    yieldPercent: z.object({ low: z.number(), typical: z.number(), high: z.number(), from: z.string().optional() }),
    trust: z.enum(trusts).meta({ description: 'How sure charge and yield are.' }),
    sources: z.array(z.string()),
    runs: z.int().meta({ description: 'Runs logged in the plans kept here.' }),
    own: z.boolean(),
    overrides: z.boolean().meta({ description: 'An own record that stands in place of one of the library beneath.' }),
    beneath: z
      .object({ low: z.number(), typical: z.number(), high: z.number() })
      .nullable()
      .meta({ description: 'The yield that it overrides.' }),
  })
  .meta({ id: 'FoundTransformation' })

/** Transformations by words of their name or compounds, each with how sure it is. */
export const transformations: Resource = (api, { workshop, own, store }) => {
  api.get(
    '/transformations',
    {
      schema: {
        querystring: z.strictObject({
          q: z.string().max(200).default(''),
          trust: z.enum(trusts).optional(),
          most: z.coerce.number().int().min(1).max(1000).default(50),
        }),
        response: { 200: z.object({ transformations: z.array(rowSchema), found: z.int() }), ...refusals },
      },
    },
    request => {
      const { library } = workshop
      const { q, trust, most } = request.query
      const words = folded(q).split(' ').filter(Boolean)
      const runs = runsLogged(store)
      const mine = new Set(own.file().transformations.map(one => one.id))
      const name = (id: string) => library.materials.get(id)?.name ?? id
      const found = [...library.transformations.values()].filter(step => {
        if (trust !== undefined && trustInYield(step) !== trust) return false
        const text = folded([step.id, step.name, ...[...step.reactants, ...step.products].map(one => name(one.compound))].join(' '))
        return words.every(word => text.includes(word))
      })
      return {
        found: found.length,
        transformations: found.slice(0, most).map(step => {
          const under = mine.has(step.id) ? own.beneath.library.transformations.get(step.id) : undefined
          return {
            id: step.id,
            name: step.name,
            kind: step.kind,
            from: step.reactants.map(one => name(one.compound)),
            to: name(step.mainProduct),
            yieldPercent: step.yieldPercent,
            trust: trustInYield(step),
            sources: step.sources.map(one => one.citation),
            runs: runs.get(step.id) ?? 0,
            own: mine.has(step.id),
            overrides: under !== undefined,
            beneath: under?.yieldPercent ?? null,
          }
        }),
      }
    },
  )

  const stepOf = (id: string): Transformation => {
    const step = workshop.library.transformations.get(id)
    if (step === undefined) throw new Refusal('not-found', [unknownStep(id)])
    return step
  }
  const params = z.strictObject({ id: z.string().max(200) })
  api.get('/transformations/:id', { schema: { params, response: { 200: z.unknown(), ...refusals } } }, request => stepOf(request.params.id))

  api.get(
    '/transformations/:id/charges',
    {
      schema: {
        description: 'Its charges as a table: material, amount, unit, role.',
        params,
        querystring: z.strictObject({ form: z.enum(['csv', 'tsv']).default('csv') }),
        response: { 200: z.unknown(), ...refusals },
      },
    },
    async (request, answer) => {
      const { id } = stepOf(request.params.id)
      const { form } = request.query
      await answer
        .header('content-type', `${mediaTypes[form]}; charset=utf-8`)
        .header('content-disposition', `attachment; filename="${id}-charges.${form}"`)
        .send(Buffer.from(chargesWritten(workshop.library, workshop.names(), id, form === 'tsv' ? '\t' : ',')))
      return answer
    },
  )
}

const unknownStep = (id: string): Problem => ({
  code: 'id-unknown',
  where: ['transformation', id],
  what: `The library has no transformation "${id}".`,
  why: 'A record is read by its id.',
  cure: 'Look it up at /api/v1/transformations.',
})
