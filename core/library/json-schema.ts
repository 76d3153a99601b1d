import { z } from 'zod'
import { libraryFileSchema } from './library.ts'

/** The library format as a JSON Schema (draft 2020-12), for editors and other programs. The rules beyond shape stand in `checks/`. */
export const libraryJsonSchema = (): Readonly<Record<string, unknown>> => ({
  ...z.toJSONSchema(libraryFileSchema),
  title: 'Waybench library file, version 1',
})
