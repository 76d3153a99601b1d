import { z } from 'zod'
import { type LibraryFile, libraryFileSchema } from '../../core/library/library.ts'
import type { TermRead } from '../../core/reading/equation-term.ts'
import { readPreparation } from '../../core/reading/preparation.ts'
import { depictionOf } from '../depict/depiction-of.ts'
import { reactionsIn, reactionsShown } from '../library/reaction-list.ts'
import { withCarried } from '../library/with-carried.ts'
import { screenedReaction } from '../planning/reactions-screen.ts'
import { refuseListed } from '../planning/reading-screen.ts'
import { Refusal } from '../refusal.ts'
import { problemSchema, refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

/** Longest text of one preparation, characters: beyond it the reader says so itself. */
const longestText = 100_000

const reactionSchema = z.object({
  equation: z.string(),
  agents: z.array(z.string()).meta({ description: 'What stands over the arrow: charges whose amounts are still to be given.' }),
  unknown: z.array(z.string()),
  byFlag: z.array(z.string()).meta({
    description: 'What is drawn in one hand and is read as both, since the chiral flag of the file is 0, by its words in the equation.',
  }),
})

const shownSchema = z
  .object({
    file: z.string(),
    number: z.int().meta({ description: 'In its file, from 1.' }),
    title: z.string(),
    text: z.string().meta({ description: 'Its piece of the file, to be mended and read again.' }),
    read: reactionSchema.nullable().meta({ description: 'Null where it cannot be read: `problems` says why.' }),
    balanced: z.boolean(),
    problems: z.array(problemSchema),
  })
  .meta({ id: 'ReactionOfFile' })

const readSchema = z.strictObject({
  text: z.string().max(longestText),
  materials: libraryFileSchema.shape.materials
    .max(500)
    .optional()
    .meta({ description: 'New materials that are to be saved with the step: read as though the library held them.' }),
})

const newOnes = (materials: LibraryFile['materials']): LibraryFile => ({
  ...{ format: 'waybench-library', version: 1, title: 'new materials' },
  materials,
  transformations: [],
})

/** A preparation as text, read while it is typed: what `waybench read` prints, with what a page needs to show it. */
export const readings: Resource = (api, { workshop }) => {
  api.post('/read', { schema: { body: readSchema, response: { 200: z.unknown(), ...refusals } } }, request => {
    const { text, materials: fresh = [] } = request.body
    const { shop, refused } = fresh.length === 0 ? { shop: workshop, refused: [] } : withCarried(workshop, newOnes(fresh))
    if (refused.length > 0) {
      const told = refused.map(problem => ({ ...problem, where: ['materials', ...problem.where.slice(1)] }))
      throw new Refusal('bad-input', told)
    }
    const { library } = shop
    const reading = readPreparation(text, library, shop.names(), shop.toolkit)
    refuseListed(shop, reading)
    const ids = new Set<string>()
    const add = (id: string | null | undefined) => id != null && ids.add(id)
    for (const term of [...reading.reactants, ...reading.products]) for (const id of [term.compound, ...(term.candidates ?? [])]) add(id)
    for (const line of reading.lines) for (const id of [line.material, ...(line.candidates ?? [])]) add(id)
    const materials = [...ids].flatMap(id => library.materials.get(id) ?? [])
    return {
      ...reading,
      reactants: reading.reactants.map(termShown),
      products: reading.products.map(termShown),
      materials: Object.fromEntries(
        materials.map(material => [
          material.id,
          {
            name: material.name,
            form: material.form,
            ...(material.contains && { contains: material.contains }),
            molarMass: library.molarMass.get(material.contains?.compound ?? material.id) ?? null,
            depiction: depictionOf(material),
          },
        ]),
      ),
    }
  })

  api.post(
    '/read-reaction',
    {
      schema: {
        body: z.strictObject({ name: z.string().max(300), text: z.string().max(longestText) }),
        response: {
          200: reactionSchema.extend({
            reactions: z
              .array(reactionSchema.extend({ title: z.string() }))
              .meta({ description: 'Every reaction of the file; the first stands beside it too.' }),
          }),
          ...refusals,
        },
      },
    },
    request => {
      const read = reactionsIn(request.body.name, request.body.text, workshop.names(), workshop.toolkit)
      if (!read.ok) throw new Refusal('bad-input', read.problems)
      const stopped = read.value.flatMap(
        (one, at) =>
          screenedReaction(workshop, {
            ...{ file: request.body.name, number: at + 1, title: one.title, text: '' },
            ...{ read: one, balanced: false, problems: [] },
          }).problems,
      )
      if (stopped.length > 0) throw new Refusal('no-answer', stopped)
      const reactions = read.value.map(({ title, equation, agents, unknown, byFlag }) => ({
        title,
        equation,
        agents: [...agents],
        unknown: [...unknown],
        byFlag: [...byFlag],
      }))
      const { title: _title, ...first } = reactions[0]!
      return { ...first, reactions }
    },
  )

  api.post(
    '/read-reactions',
    {
      bodyLimit: 20 * 1024 * 1024,
      schema: {
        description: 'Every reaction of some files, each by itself: one that cannot be read hides none of the others.',
        body: z.strictObject({
          files: z
            .array(z.strictObject({ name: z.string().max(300), text: z.string() }))
            .min(1)
            .max(50),
        }),
        response: { 200: z.object({ reactions: z.array(shownSchema) }), ...refusals },
      },
    },
    request => {
      const shown = reactionsShown(request.body.files, workshop.names(), workshop.toolkit)
      if (!shown.ok) throw new Refusal('bad-input', shown.problems)
      const reactions = shown.value.map(one => screenedReaction(workshop, one))
      return { reactions: structuredClone(reactions) as z.infer<typeof shownSchema>[] }
    },
  )
}

const termShown = ({ text, coefficient, compound, candidates, crystalWater }: TermRead) => ({
  text,
  coefficient,
  compound,
  ...(candidates && { candidates }),
  ...(crystalWater && { crystalWater }),
})
