import { z } from 'zod'
import { formWords } from '../../core/reading/stereo-forms.ts'
import { identified } from '../library/identified.ts'
import { problemSchema, refusals } from '../replies.ts'
import type { Resource } from './resource.ts'

const text = (most: number) => z.string().max(most).default('')

/** A material as it is typed. */
export const typedSchema = z.strictObject({
  name: text(300),
  smiles: text(2000),
  formula: text(300),
  cas: text(20),
  form: z.enum(['solid', 'liquid', 'gas', 'solution']).default('solid'),
  density: text(100).meta({ description: 'As written: 0.83, 830 kg/m3; g/mL where no unit stands.' }),
  melting: text(100).meta({
    description: 'As written, one figure: 136, -11.5 °C, 410 K; degrees Celsius where no unit stands. So boiling and flash.',
  }),
  boiling: text(100),
  flash: text(100),
  over: text(200).meta({ description: 'Id of a record that it is to stand in place of; empty = a new one.' }),
  of: text(200).meta({ description: 'Of a solution: id of the compound in it.' }),
  strength: text(100).meta({ description: 'As written: 37 %, 3 M, 0.5 N, 2 % w/v, 40 g/L.' }),
  rest: text(200).meta({ description: 'Of a solution: id of what it is made up with; empty = water.' }),
})

/** What is told of it. */
export const identifiedSchema = z.object({
  material: z.unknown().meta({ description: 'A record of the library format, as far as it can be told.' }),
  withHazards: z.unknown().nullable().meta({ description: 'The same with what the hazard tables say of it, to be confirmed.' }),
  record: z.object({ id: z.string(), name: z.string(), cas: z.string().nullable() }).nullable(),
  molarMass: z.number().nullable(),
  depiction: z.unknown(),
  groups: z.array(z.object({ number: z.int(), name: z.string() })),
  screened: z.boolean(),
  regulated: z.array(z.object({ action: z.string(), list: z.string(), category: z.string(), reason: z.string() })),
  matches: z.array(
    z.object({
      id: z.string(),
      name: z.string(),
      by: z.enum(['structure', 'structure written otherwise', 'CAS number', 'name', 'other form', 'formula']).meta({
        description:
          'What both have; `structure written otherwise` = but for how charges, bonds to metals and protons are drawn; `other form` = the skeleton, in another stereo form than the one typed.',
      }),
      form: z
        .enum(Object.keys(formWords) as (keyof typeof formWords)[])
        .nullable()
        .meta({ description: 'What it is beside the structure typed, where they differ by hands or double bonds alone.' }),
      named: z.boolean().meta({ description: 'It answers to the name typed.' }),
    }),
  ),
  problems: z.array(problemSchema),
})

/** What can be told of a material from what was typed of it: nothing is saved. */
export const newMaterials: Resource = (api, { workshop }) => {
  api.post(
    '/new-material',
    { schema: { body: typedSchema, response: { 200: identifiedSchema, ...refusals } } },
    request => structuredClone(identified(workshop, request.body)) as never,
  )
}
