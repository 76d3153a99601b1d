import { z } from 'zod'
import { canStart, type Found, findMaterials } from '../../core/library/find.ts'
import type { Library } from '../../core/library/library.ts'
import { isWanted, marks, type WantedMark, wantedMarks } from '../../core/library/mark.ts'
import { trusts } from '../../core/library/trust.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { figuresOfMaterial } from '../../core/report/record-figures.ts'
import { Refusal } from '../refusal.ts'
import { refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

export const figureSchema = z
  .object({
    figure: z.string(),
    value: z.string().optional().meta({ description: 'As it is printed.' }),
    trust: z.enum(trusts),
    mark: z.enum(marks).meta({ description: 'The same more closely: reckoned by the library, estimated, as typed ...' }),
    source: z.string().nullable(),
    inPart: z.literal(true).optional().meta({ description: 'Of charges in one: only some of the lines are no surer than that.' }),
  })
  .meta({ id: 'RecordFigure' })

const foundSchema = z
  .object({
    id: z.string(),
    name: z.string(),
    kind: z.string(),
    form: z.string(),
    formula: z.string().optional(),
    cas: z.string().optional(),
    matched: z.string().meta({ description: 'What the words matched: the name, a synonym, the formula or the CAS number.' }),
    canStart: z.boolean().meta({ description: 'Some transformation takes it as a reactant.' }),
    densityGPerMl: z.number().optional(),
    figures: z.array(figureSchema).meta({
      description:
        'All that its record states, each figure with how sure it is: hazards, density, melting, boiling and flash point, strength, exposure limit.',
    }),
    own: z.boolean().meta({ description: 'A record of the bench itself.' }),
  })
  .meta({ id: 'FoundMaterial' })

/** Search by name, synonym, formula or CAS number; with a trust alone, everything that has a figure so sure. */
export const materials: Resource = (api, { workshop, own }) => {
  api.get(
    '/materials',
    {
      schema: {
        querystring: z.strictObject({
          q: z.string().max(200).default(''),
          trust: z
            .enum(wantedMarks)
            .optional()
            .meta({ description: 'Only materials with a figure that is so sure; "not seen": with one that was not seen in a source.' }),
          figure: z.string().max(40).optional().meta({ description: 'With trust: of this figure alone.' }),
          most: z.coerce.number().int().min(1).max(100).default(20),
        }),
        response: { 200: z.object({ materials: z.array(foundSchema), found: z.int() }), ...refusals },
      },
    },
    request => {
      const { q, trust, figure, most } = request.query
      const mine = new Set(own.file().materials.map(one => one.id))
      const rows = found(workshop.library, q, trust, figure)
      const shown = rows.slice(0, most).map(({ material, matched, canStart }) => ({
        id: material.id,
        name: material.name,
        kind: material.kind,
        form: material.form,
        formula: material.displayFormula ?? material.formula,
        cas: material.cas,
        matched,
        canStart,
        densityGPerMl: material.densityGPerMl,
        figures: [...figuresOfMaterial(material)],
        own: mine.has(material.id),
      }))
      return { found: rows.length, materials: shown }
    },
  )

  api.get(
    '/materials/:id',
    {
      schema: {
        description: 'Its record in the library format, the bench own one where it stands in place of one beneath.',
        params: z.strictObject({ id: z.string().max(200) }),
        response: { 200: z.unknown(), ...refusals },
      },
    },
    request => {
      const material = workshop.library.materials.get(request.params.id)
      if (material === undefined) throw new Refusal('not-found', [unknownMaterial(request.params.id)])
      return material
    },
  )
}

const unknownMaterial = (id: string): Problem => ({
  code: 'id-unknown',
  where: ['material', id],
  what: `The library has no material "${id}".`,
  why: 'A record is read by its id.',
  cure: 'Look it up at /api/v1/materials.',
})

/** More than any library has of one name; the page is told how many there are. */
const all = 100_000

function found(library: Library, words: string, trust: WantedMark | undefined, figure: string | undefined): readonly Found[] {
  if (trust === undefined) return findMaterials(library, words, all)
  const wanted =
    words.trim() === ''
      ? [...library.materials.values()]
          .sort((a, b) => (a.name.toLowerCase() < b.name.toLowerCase() ? -1 : 1))
          .map(material => ({ material, matched: material.name, canStart: canStart(library, material) }))
      : findMaterials(library, words, all)
  return wanted.filter(({ material }) =>
    figuresOfMaterial(material).some(one => (figure === undefined || one.figure === figure) && isWanted(trust, one.mark)),
  )
}
