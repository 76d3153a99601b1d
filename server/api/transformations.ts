import { z } from 'zod'
import { stepStops } from '../../core/choose/forbidden.ts'
import { folded } from '../../core/library/find.ts'
import type { Library } from '../../core/library/library.ts'
import { isWanted, type WantedMark, wantedMarks } from '../../core/library/mark.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import { trustInYield, trusts } from '../../core/library/trust.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { chargesOfStep, figuresOfStep } from '../../core/report/record-figures.ts'
import { fileName, mediaTypes, writtenAs } from '../library/written-as.ts'
import { runsLogged } from '../planning/runs-logged.ts'
import { stopsInStep } from '../planning/slice-screen.ts'
import { Refusal } from '../refusal.ts'
import { refusals } from '../replies.ts'
import { figureSchema } from './materials.ts'
import type { Resource } from './resource.ts'

const rowSchema = z
  .object({
    id: z.string(),
    name: z.string(),
    kind: z.string(),
    from: z.array(z.string()),
    to: z.string(),
    yieldPercent: z.object({ low: z.number(), typical: z.number(), high: z.number(), from: z.string().optional() }),
    trust: z.enum(trusts).meta({ description: 'How sure the yield is.' }),
    figures: z.array(figureSchema).meta({ description: 'Yield, its range, times, temperature, scales, each with how sure it is.' }),
    charges: z
      .array(figureSchema.extend({ material: z.string() }))
      .meta({ description: 'The lines of its charge as the source has them.' }),
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

/** Transformations by words of their name or compounds, each with how sure it is; without those of which no plan is made. */
export const transformations: Resource = (api, { workshop, own, store }) => {
  api.get(
    '/transformations',
    {
      schema: {
        querystring: z.strictObject({
          q: z.string().max(200).default(''),
          trust: z
            .enum(wantedMarks)
            .optional()
            .meta({ description: 'Only steps with a figure that is so sure; "not seen": that was not seen in a source.' }),
          figure: z.string().max(40).default('yield').meta({ description: 'With trust: of this figure; "any" of all of them.' }),
          most: z.coerce.number().int().min(1).max(1000).default(50),
        }),
        response: { 200: z.object({ transformations: z.array(rowSchema), found: z.int() }), ...refusals },
      },
    },
    request => {
      const { library } = workshop
      const { q, trust, figure, most } = request.query
      const words = folded(q).split(' ').filter(Boolean)
      const runs = runsLogged(store)
      const mine = new Set(own.file().transformations.map(one => one.id))
      const name = (id: string) => library.materials.get(id)?.name ?? id
      const stops = stepStops(workshop.traits())
      const found = [...library.transformations.values()].filter(step => {
        if (stops(step)) return false
        if (trust !== undefined && !hasFigure(library, step, figure, trust)) return false
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
            figures: [...figuresOfStep(step)],
            charges: [...chargesOfStep(library, step)],
            sources: [...new Set(step.sources.map(one => one.citation))],
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
    const stops = stopsInStep(workshop, step)
    if (stops.length > 0) throw new Refusal('no-answer', stops)
    return step
  }
  const params = z.strictObject({ id: z.string().max(200) })
  api.get('/transformations/:id', { schema: { params, response: { 200: z.unknown(), ...refusals } } }, request => stepOf(request.params.id))

  api.get(
    '/transformations/:id/charges',
    {
      schema: {
        description: 'Its charges as a table, every key of each line; read back by own-library, where all else of the step stays.',
        params,
        querystring: z.strictObject({ form: z.enum(['csv', 'tsv']).default('csv') }),
        response: { 200: z.unknown(), ...refusals },
      },
    },
    async (request, answer) => {
      const step = stepOf(request.params.id)
      const form = `charges-${request.query.form}` as const
      const { library } = workshop
      await answer
        .header('content-type', `${mediaTypes[form]}; charset=utf-8`)
        .header('content-disposition', `attachment; filename="${fileName(step.id, form)}"`)
        .send(Buffer.from(writtenAs(form, { ...emptyFile, transformations: [step] }, library, workshop.names())))
      return answer
    },
  )
}

const emptyFile = { format: 'waybench-library' as const, version: 1 as const, title: '', materials: [], transformations: [] }

/** A line of the charge counts as a figure of the charges. */
const hasFigure = (library: Library, step: Transformation, figure: string, wanted: WantedMark): boolean =>
  [...figuresOfStep(step).filter(one => one.figure !== 'charges'), ...chargesOfStep(library, step)].some(
    one => (figure === 'any' || one.figure === figure) && isWanted(wanted, one.mark),
  )

const unknownStep = (id: string): Problem => ({
  code: 'id-unknown',
  where: ['transformation', id],
  what: `The library has no transformation "${id}".`,
  why: 'A record is read by its id.',
  cure: 'Look it up at /api/v1/transformations.',
})
