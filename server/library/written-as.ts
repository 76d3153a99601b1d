import type { Library, LibraryFile } from '../../core/library/library.ts'
import { printLibraryFile } from '../../core/library/print.ts'
import { chargeTable } from '../../core/reading/charge-table.ts'
import { materialTable } from '../../core/reading/material-table.ts'
import { reactionSmilesOf, rxnOf, sdfOf } from './chemical-files.ts'

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

/** The charges of one transformation as a table. */
export const chargesWritten = (library: Library, id: string, delimiter: ',' | '\t' = ','): string =>
  chargeTable(library.transformations.get(id)?.charge ?? [], material => library.materials.get(material)?.name ?? material, delimiter)
