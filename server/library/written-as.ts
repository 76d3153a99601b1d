import type { Library, LibraryFile } from '../../core/library/library.ts'
import { printLibraryFile } from '../../core/library/print.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import { chargeTable } from '../../core/reading/charge-table.ts'
import { materialTable } from '../../core/reading/material-table.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { wordFor } from '../../core/reading/word-for.ts'
import { counted } from '../../core/report/words.ts'
import { sdfOf } from './chemical-files.ts'
import { reactionSmilesOf, rxnOf } from './reaction-files.ts'

/** Forms a library is written in. JSON, CSV, TSV of the materials and SDF read back whole; the others hold what their form can hold. */
export const forms = ['json', 'csv', 'tsv', 'sdf', 'smi', 'rxn'] as const
export type Form = (typeof forms)[number]

export const mediaTypes: Readonly<Record<Form, string>> = {
  json: 'application/json',
  csv: 'text/csv',
  tsv: 'text/tab-separated-values',
  sdf: 'chemical/x-mdl-sdfile',
  smi: 'text/plain',
  rxn: 'chemical/x-mdl-rxnfile',
}

/**
 * @param library  that the records belong to, for names and structures of what they use
 * @returns for `smi` a reaction SMILES and a name a line; for `rxn` one reaction file after the other; an equation with a compound that has no
 *   structure is left out of both
 */
export function writtenAs(form: Form, file: LibraryFile, library: Library): string {
  switch (form) {
    case 'json':
      return printLibraryFile(file)
    case 'csv':
      return materialTable(file.materials)
    case 'tsv':
      return materialTable(file.materials, '\t')
    case 'sdf':
      return sdfOf(file.materials)
    case 'smi':
      return file.transformations.flatMap(step => lineOf(reactionSmilesOf(library, step), step.name)).join('')
    case 'rxn':
      return file.transformations.flatMap(step => rxnOf(library, step) ?? []).join('\n')
  }
}

const lineOf = (smiles: string | null, name: string): readonly string[] => (smiles === null ? [] : [`${smiles} ${name}\n`])

/** The charges of one transformation as a table; a name that could mean another material has its id behind it. */
export function chargesWritten(library: Library, names: NameIndex, id: string, delimiter: ',' | '\t' = ','): string {
  return chargeTable(library.transformations.get(id)?.charge ?? [], material => wordFor(material, names), delimiter)
}

/** What a form cannot hold of these records, as sentences; empty where it holds everything. */
export function notHeld(form: Form, { materials, transformations }: LibraryFile, library: Library): readonly string[] {
  if (form === 'json') return []
  if (form === 'csv' || form === 'tsv' || form === 'sdf')
    return transformations.length === 0 ? [] : [`${counted(transformations.length, 'transformation')}: it holds materials alone.`]
  const written = (step: Transformation): boolean => (form === 'smi' ? reactionSmilesOf(library, step) : rxnOf(library, step)) !== null
  const left = transformations.filter(step => !written(step))
  return [
    'Amounts, roles, yields, conditions, times, dangers and sources: it holds equations and what stands over the arrow alone.',
    'Which of several bottles of a compound is charged; compounds of several neutral parts, such as hydrates, come back in parts.',
    ...left.map(step => `${step.name}: a compound of its equation has no structure that can be drawn.`),
    ...(materials.length === 0 ? [] : [`${counted(materials.length, 'material')}, but for the structures in the equations.`]),
  ]
}
