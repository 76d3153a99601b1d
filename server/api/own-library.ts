import { z } from 'zod'
import { libraryJsonSchema } from '../../core/library/json-schema.ts'
import { notHeld } from '../library/not-held.ts'
import type { OwnEdit, OwnTrial } from '../library/own-library.ts'
import { recordsIn } from '../library/records-in.ts'
import { fileName, forms, mediaTypes, writtenAs } from '../library/written-as.ts'
import { Refusal } from '../refusal.ts'
import { problemSchema, refusals } from '../replies.ts'
import type { OwnVersion } from '../store/own-records.ts'
import type { Resource } from './resource.ts'

const listSchema = z.enum(['materials', 'transformations'])
const rowSchema = z
  .object({
    list: listSchema,
    id: z.string(),
    name: z.string(),
    change: z.enum(['added', 'overrides', 'changed', 'same', 'removed']).meta({
      description: '`overrides`: stands in place of a record of the library beneath, which stays as it is.',
    }),
    fields: z.array(
      z.object({
        key: z.string(),
        before: z.unknown().optional(),
        now: z.unknown().optional(),
        text: z.string().meta({ description: 'The same in words, with units: what was, an arrow, what is.' }),
      }),
    ),
  })
  .meta({ id: 'OwnChange' })

const trialSchema = z
  .object({
    rows: z.array(rowSchema),
    refused: z.array(problemSchema).meta({ description: 'Why nothing would be saved; empty = all of it would.' }),
    warnings: z.array(problemSchema),
  })
  .meta({ id: 'OwnTrial' })

const versionSchema = z
  .object({ version: z.int(), what: z.string(), undoes: z.int().nullable(), savedAt: z.string(), records: z.int() })
  .meta({ id: 'OwnVersion' })

const records = z.array(z.unknown()).max(20_000).default([])
const ids = z.array(z.string().max(200)).max(20_000).default([])
const editSchema = z
  .strictObject({
    materials: records,
    transformations: records,
    removeMaterials: ids,
    removeTransformations: ids,
    files: z
      .array(z.strictObject({ name: z.string().max(300), text: z.string() }))
      .max(50)
      .default([]),
  })
  .meta({
    id: 'OwnEdit',
    description:
      'Records of the library format, or files in any form that is read: JSON, CSV or TSV of materials or of charges with their steps, SDF, RD files with records.',
  })

/** The bench's own materials and transformations: tried before they are saved, saved whole or not at all, and taken back. */
export const ownLibraryResource: Resource = (api, { own, workshop, now }) => {
  const editOf = (body: z.infer<typeof editSchema>): OwnEdit => {
    const { files, ...edit } = body
    const read = recordsIn(files, workshop)
    if (!read.ok) throw new Refusal('bad-input', read.problems)
    return {
      ...edit,
      materials: [...edit.materials, ...read.value.materials],
      transformations: [...edit.transformations, ...read.value.transformations],
    }
  }
  const reply = (answer: OwnVersion | 'conflict' | OwnTrial): OwnVersion => {
    if (answer === 'conflict') throw new Refusal('conflict', [changedMeanwhile])
    if ('refused' in answer) throw new Refusal('bad-input', answer.refused)
    return answer
  }

  api.get(
    '/own-library',
    {
      schema: {
        response: {
          200: z.object({
            version: z.int(),
            materials: z.array(z.unknown()),
            transformations: z.array(z.unknown()),
            overrides: z.array(rowSchema),
            broken: z.array(problemSchema),
            history: z.array(versionSchema),
          }),
          ...refusals,
        },
      },
    },
    () => {
      const { materials, transformations } = own.file()
      return {
        version: own.version(),
        materials,
        transformations,
        overrides: structuredClone(own.overrides()) as z.infer<typeof rowSchema>[],
        broken: structuredClone(own.broken()) as z.infer<typeof problemSchema>[],
        history: [...own.history()],
      }
    },
  )

  const download = {
    schema: { querystring: z.strictObject({ form: z.enum(forms).default('json') }), response: { 200: z.unknown(), ...refusals } },
  }
  api.get('/own-library/file', download, async (request, answer) => {
    const { form } = request.query
    const text = writtenAs(form, own.file(), workshop.library, workshop.names())
    await answer
      .header('content-type', `${mediaTypes[form]}; charset=utf-8`)
      .header('content-disposition', `attachment; filename="${fileName('own-library', form)}"`)
      .send(Buffer.from(text))
    return answer
  })

  api.get(
    '/own-library/forms',
    {
      schema: {
        description: 'The forms that the own library is given away in, each with what it cannot hold of it.',
        response: { 200: z.object({ forms: z.array(z.object({ form: z.enum(forms), notHeld: z.array(z.string()) })) }), ...refusals },
      },
    },
    () => {
      const file = own.file()
      return { forms: forms.map(form => ({ form, notHeld: [...notHeld(form, file, workshop.library)] })) }
    },
  )

  api.post(
    '/own-library/check',
    { bodyLimit: 20 * 1024 * 1024, schema: { body: editSchema, response: { 200: trialSchema.extend({ version: z.int() }), ...refusals } } },
    request => {
      const { files, ...edit } = request.body
      // A file that cannot be read is a finding of the trial like any other.
      const read = recordsIn(files, workshop)
      const trial = read.ok
        ? own.check({
            ...edit,
            materials: [...edit.materials, ...read.value.materials],
            transformations: [...edit.transformations, ...read.value.transformations],
          })
        : { rows: [], refused: read.problems, warnings: [] }
      return { ...(structuredClone(trial) as z.infer<typeof trialSchema>), version: own.version() }
    },
  )

  api.post(
    '/own-library',
    {
      schema: {
        body: editSchema.extend({ onVersion: z.int().nonnegative(), what: z.string().max(300).default('saved') }),
        response: { 201: versionSchema, ...refusals },
      },
    },
    async (request, answer) => {
      const { onVersion, what, ...edit } = request.body
      return answer.status(201).send(reply(own.save(onVersion, what, editOf(edit), now())))
    },
  )

  api.post(
    '/own-library/undo',
    { schema: { body: z.strictObject({ onVersion: z.int().nonnegative() }), response: { 201: versionSchema, ...refusals } } },
    async (request, answer) => {
      const undone = own.undo(request.body.onVersion, now())
      if (undone === null) throw new Refusal('not-found', [nothingToUndo])
      return answer.status(201).send(reply(undone))
    },
  )

  api.get('/library-schema.json', { schema: { response: { 200: z.unknown(), ...refusals } } }, () => libraryJsonSchema())
}

const changedMeanwhile = {
  code: 'own-library-changed',
  where: ['own library'],
  what: 'The own library was saved by somebody else meanwhile.',
  why: 'Saving over it could lose their changes.',
  cure: 'Load it again and look at what your records would change now.',
}

const nothingToUndo = {
  code: 'nothing-to-undo',
  where: ['own library'],
  what: 'No save is left to take back.',
  why: 'Each save is taken back once, newest first.',
  cure: 'Change or remove the record itself.',
}
