import { z } from 'zod'
import { parseFormula } from '../../core/chemistry/formula.ts'
import type { Material } from '../../core/library/material.ts'
import { askedAs } from '../../core/problem/asked-as.ts'
import { parseJson } from '../../core/problem/json.ts'
import { didYouMean } from '../../core/problem/nearest.ts'
import { bad, type Checked, good, type Problem } from '../../core/problem/problem.ts'
import { schemaProblems } from '../../core/problem/schema.ts'
import { type ChargeHeading, chargeCells } from '../../core/reading/charge-columns.ts'
import { materialCell } from '../../core/reading/material-cell.ts'
import { readMaterialTable } from '../../core/reading/material-table.ts'
import { nameKey } from '../../core/reading/name-key.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import type { Beneath } from '../../core/reading/over-known.ts'
import { type StepCharges, stepChargesIn } from '../../core/reading/step-charges.ts'
import { chargesOver } from './charges-over.ts'
import { materialsInSdf } from './chemical-files.ts'
import { isPlanFile, planRecords } from './plan-records.ts'
import { hasRecords, recordsInRdf } from './rd-file.ts'
import { isReactionFile } from './reaction-list.ts'
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
 * Raw records of library files in any form that is read: JSON of the library format, a plan file for the own
 * records it brings, CSV or TSV of materials or of the charges of steps, SDF,
 * RD files that carry records. What the form says is told by its content, not by the ending of its name.
 *
 * What a table or an SD file does not speak of is kept of the record that its line stands over.
 *
 * @returns every problem of every file; the records themselves are held against the rules afterwards
 */
export function recordsIn(files: readonly DroppedFile[], workshop: Workshop): Checked<Records> {
  const problems: Problem[] = []
  const materials: unknown[] = []
  const transformations: unknown[] = []
  const charges: ChargesRead[] = []
  const beneath = beneathOf(workshop)
  const take = <T>(read: Checked<T>, into: (value: T) => void): void => {
    if (read.ok) into(read.value)
    problems.push(...(read.ok ? read.warnings : read.problems))
  }
  for (const { name, text } of files) {
    const start = text.replace(/^\ufeff/, '').trimStart()
    if (start === '') problems.push(nothingIn(name))
    else if (start.startsWith('{') || (start.startsWith('[') && !isReactionFile(text)))
      take(libraryIn(name, text, workshop), file => {
        materials.push(...file.materials)
        transformations.push(...file.transformations)
      })
    else if (hasRecords(start)) take(recordsInRdf(name, text), found => transformations.push(...found))
    else if (isReactionFile(text)) problems.push(equationsAlone(name))
    else {
      const steps = stepChargesIn(name, text, materialCell(workshop.names()), (id, called) => isCalled(id, called, workshop.names()))
      if (steps !== null) take(steps, found => charges.push({ name, steps: found, headings: chargeCells(text)?.headings ?? [] }))
      else if (!/^M {2}END/m.test(text) && chargeCells(text) !== null) problems.push(chargesOf(name))
      else
        take(/^M {2}END/m.test(text) ? materialsInSdf(name, text, beneath) : readMaterialTable(name, text, beneath), found =>
          materials.push(...found.map(record => withFormula(record, workshop))),
        )
    }
  }
  // Last, so that a table finds its steps also where they come in another file of the same import.
  for (const read of charges) problems.push(...withCharges(read, transformations, workshop))
  return problems.length > 0 ? bad(problems) : good({ materials, transformations })
}

/** Whether a material is called so, as text or as its table of names has it; null where it is not held. */
function isCalled(id: string, called: string, names: NameIndex): boolean | null {
  const material = names.materials.get(id)
  if (material === undefined) return null
  if ([id, material.name, ...(material.synonyms ?? [])].some(one => nameKey(one).toLowerCase() === nameKey(called).toLowerCase()))
    return true
  const found = names.lookUp(called)
  return found.kind === 'material' ? found.material === id : found.kind === 'ambiguous' && found.candidates.includes(id)
}

/** A library file, or a plan file with the own records that it brings. */
function libraryIn(name: string, text: string, { library }: Workshop): Checked<Records> {
  const json = parseJson(name, text)
  if (!json.ok) return json
  if (isPlanFile(json.value)) return planRecords(name, json.value, library)
  const file = envelopeSchema.safeParse(json.value)
  return file.success ? good(file.data) : bad(schemaProblems(file.error, envelopeSchema, json.value, [name]))
}

/** A table of charges as it was read. */
interface ChargesRead {
  readonly name: string
  readonly steps: StepCharges
  readonly headings: readonly (ChargeHeading | null)[]
}

/** Puts the charges of a table into the records that they belong to, all else of which stays. */
function withCharges({ name, steps, headings }: ChargesRead, transformations: unknown[], { library }: Workshop): readonly Problem[] {
  return [...steps].flatMap(([id, charge]) => {
    const at = transformations.findIndex(one => (one as { id?: unknown } | null)?.id === id)
    const record = at >= 0 ? (transformations[at] as object) : library.transformations.get(id)
    if (record === undefined) return [stepUnknown(name, id, library.transformations.keys())]
    const changed = chargesOver(record, charge, name, headings)
    if (at >= 0) transformations[at] = changed
    else transformations.push(changed)
    return []
  })
}

function beneathOf(workshop: Workshop): Beneath {
  const { materials } = workshop.library
  let byName: ReadonlyMap<string, Material> | null = null
  return {
    byId: materials,
    named: (name, where) => {
      byName ??= new Map([...materials.values()].map(one => [nameKey(one.name).toLowerCase(), one]))
      const found = byName.get(nameKey(name).toLowerCase())
      const row = workshop.names().ambiguous(name)
      return found !== undefined && row !== null && row.default === null
        ? bad([severalOf(name, [...new Set([found.id, ...row.candidates])], row.why, where)])
        : good(found)
    },
  }
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
  what: 'This is a table of charges that does not say of which steps.',
  why: 'Charges belong to a preparation with its equation.',
  cure: 'Paste it into the charges of a preparation; or add a column "step" with the id of the transformation whose charges they are.',
})

const equationsAlone = (name: string): Problem => ({
  code: 'file-of-equations',
  where: [name],
  what: 'This file holds equations alone, without the records of transformations.',
  why: 'A transformation needs its charges, yields, times and sources too.',
  cure: `Read it by itself as reactions (${askedAs('read-reactions')}), and complete each as a preparation.`,
})

const stepUnknown = (name: string, id: string, known: Iterable<string>): Problem => ({
  code: 'csv-step-unknown',
  where: [name, id.slice(0, 80)],
  what: `The library holds no transformation "${id.slice(0, 80)}".`,
  why: 'A table of charges holds neither equation nor yield: it changes the charges of a record that is there.',
  cure: `${didYouMean(id, known)}Correct the id, take the record over first, or paste the charges into a new preparation.`,
})

const severalOf = (name: string, candidates: readonly string[], reason: string, where: readonly string[]): Problem => ({
  code: 'csv-material-ambiguous',
  where,
  what: `"${name}" can mean ${candidates.join(', ')}: ${reason}.`,
  why: 'A line stands over one material, and over no other by a guess.',
  cure: 'Add a column "id" and write which one; a new id makes a new material.',
})
