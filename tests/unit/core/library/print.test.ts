import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { libraryJsonSchema } from '../../../../core/library/json-schema.ts'
import type { LibraryFile } from '../../../../core/library/library.ts'
import { loadLibrary } from '../../../../core/library/load.ts'
import { libraryFileOf, printLibraryFile } from '../../../../core/library/print.ts'
import { fileText, soundLibrary } from './sound-library.ts'

describe('a printed library file', () => {
  it('says what it was made from, whatever that is', () => {
    const records = fc.array(fc.dictionary(fc.string(), fc.jsonValue()))
    fc.assert(
      fc.property(fc.string(), records, records, (title, materials, transformations) => {
        // What is printed need not fit the schema: the layout may not lose anything of any record.
        const file = { format: 'waybench-library', version: 1, title, materials, transformations } as unknown as LibraryFile
        expect(JSON.parse(printLibraryFile(file))).toEqual(JSON.parse(JSON.stringify(file)))
      }),
      { seed: 20262, numRuns: 300 },
    )
  })
  it('of a loaded library loads as the same library', () => {
    const first = loadLibrary([{ name: 'a.json', text: fileText(soundLibrary()) }])
    if (!first.ok) throw new Error('refused')
    const again = loadLibrary([{ name: 'b.json', text: printLibraryFile(libraryFileOf(first.value)) }])
    expect(again.ok ? again.value : again.problems).toEqual(first.value)
  })
  it('has one line for a short list and one a record key for the rest, none wider than 120 where it can be parted', () => {
    const text = printLibraryFile(JSON.parse(fileText(soundLibrary())))
    expect(text).toContain('        { "material": "ethanol", "role": "substrate", "amount": 46, "unit": "g" },\n')
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(120)
    expect(text.endsWith('}\n')).toBe(true)
  })
})

describe('the JSON Schema of the format', () => {
  const schema = libraryJsonSchema() as {
    $schema: string
    required: string[]
    additionalProperties: boolean
    properties: Record<string, { items: { properties: object; additionalProperties: boolean } }>
  }
  it('is of draft 2020-12, needs all five parts and takes no other', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(schema.required).toEqual(['format', 'version', 'title', 'materials', 'transformations'])
    expect(schema.additionalProperties).toBe(false)
  })
  it('knows every key of a record', () => {
    const keys = (list: string): string[] => Object.keys(schema.properties[list]!.items.properties)
    const { materials, transformations } = soundLibrary()
    for (const record of Object.values(materials)) for (const key of Object.keys(record)) expect(keys('materials')).toContain(key)
    for (const record of Object.values(transformations))
      for (const key of Object.keys(record)) expect(keys('transformations')).toContain(key)
    expect(schema.properties.materials!.items.additionalProperties).toBe(false)
  })
})
