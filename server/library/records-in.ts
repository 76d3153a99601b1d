import { z } from 'zod'
import { parseFormula } from '../../core/chemistry/formula.ts'
import { parseJson } from '../../core/problem/json.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import { schemaProblems } from '../../core/problem/schema.ts'
import { readChargeTable } from '../../core/reading/charge-table.ts'
import { readMaterialTable } from '../../core/reading/material-table.ts'
import { materialsInSdf } from './chemical-files.ts'
import type { Workshop } from './workshop.ts'

/** A file as it was dropped into the page. */
export interface DroppedFile {
  readonly name: string
  readonly text: string
}

export interface Records {
  readonly materials: readonly unknown[]
  readonly transformations: readonly unknown[]
}

const envelopeSchema = z.strictObject({
  format: z.literal('waybench-library'),
  version: z.literal(1),
  title: z.string(),
  materials: z.array(z.unknown()),
  transformations: z.array(z.unknown()),
})

/**
 * Raw records of library files in any form that is read: JSON of the library format, CSV or TSV of materials, SDF. What the form says is told
 * by its content, not by the ending of its name.
 *
 * @returns every problem of every file; the records themselves are held against the rules afterwards
 */
export function recordsIn(files: readonly DroppedFile[], workshop: Workshop): Checked<Records> {
  const problems: Problem[] = []
  const materials: unknown[] = []
  const transformations: unknown[] = []
  for (const { name, text } of files) {
    const start = text.replace(/^\ufeff/, '').trimStart()
    if (start.startsWith('{') || start.startsWith('[')) {
      const json = parseJson(name, text)
      if (!json.ok) {
        problems.push(...json.problems)
        continue
      }
      const file = envelopeSchema.safeParse(json.value)
      if (!file.success) problems.push(...schemaProblems(file.error, envelopeSchema, json.value, [name]))
      else {
        materials.push(...file.data.materials)
        transformations.push(...file.data.transformations)
      }
      continue
    }
    if (start === '') {
      problems.push(nothingIn(name))
      continue
    }
    const read = /^M {2}END/m.test(text)
      ? materialsInSdf(name, text)
      : readChargeTable(text) !== null
        ? bad([chargesOf(name)])
        : readMaterialTable(name, text)
    if (read.ok) materials.push(...read.value.map(record => withFormula(record, workshop)))
    else problems.push(...read.problems)
    if (read.ok) problems.push(...read.warnings)
  }
  return problems.length > 0 ? bad(problems) : good({ materials, transformations })
}

/** The formula out of the structure, where a table gives only that. */
function withFormula(record: Readonly<Record<string, unknown>>, { toolkit }: Workshop): Readonly<Record<string, unknown>> {
  // A mixture's structure is that of what it contains: only what must state a formula gets one.
  const wants = record.kind === 'compound' || record.kind === 'polymer'
  if (!wants || record.formula !== undefined || typeof record.smiles !== 'string') return record
  const read = toolkit.parse(record.smiles)
  return read.ok && parseFormula(read.value.formula).ok ? { ...record, formula: read.value.formula } : record
}

const nothingIn = (name: string): Problem => ({
  code: 'file-empty',
  where: [name],
  what: 'The file is empty.',
  why: 'There is nothing to take over.',
  cure: 'Choose another file.',
})

const chargesOf = (name: string): Problem => ({
  code: 'file-of-charges',
  where: [name],
  what: 'This is a table of charges, not of materials.',
  why: 'Charges belong to a preparation with its equation.',
  cure: 'Paste it into the charges of a preparation.',
})
