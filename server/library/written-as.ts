import type { Library, LibraryFile } from '../../core/library/library.ts'
import { printLibraryFile } from '../../core/library/print.ts'
import { chargeTable } from '../../core/reading/charge-table.ts'
import { materialTable } from '../../core/reading/material-table.ts'
import type { NameIndex } from '../../core/reading/names.ts'
import { wordFor } from '../../core/reading/word-for.ts'
import { sdfOf } from './chemical-files.ts'
import { rdfOf } from './rd-file.ts'
import { reactionSmilesOf, rxnOf } from './reaction-files.ts'
import { titleOf } from './reaction-title.ts'

/**
 * Forms a library is written in. JSON reads back whole; CSV, TSV and SDF hold every key of the materials, the tables of charges every key of
 * each charge, RDF every key of the transformations; reaction SMILES and RXN hold the equations.
 */
export const forms = ['json', 'csv', 'tsv', 'charges-csv', 'charges-tsv', 'sdf', 'rdf', 'smi', 'rxn'] as const
export type Form = (typeof forms)[number]

export const mediaTypes: Readonly<Record<Form, string>> = {
  json: 'application/json',
  csv: 'text/csv',
  tsv: 'text/tab-separated-values',
  'charges-csv': 'text/csv',
  'charges-tsv': 'text/tab-separated-values',
  sdf: 'chemical/x-mdl-sdfile',
  rdf: 'chemical/x-mdl-rdfile',
  smi: 'text/plain',
  rxn: 'chemical/x-mdl-rxnfile',
}

/** What a file of a form is called, given the name of what it holds. */
export const fileName = (what: string, form: Form): string => {
  const [first, last] = form.split('-')
  return last === undefined ? `${what}.${first}` : `${what}-${first}.${last}`
}

/**
 * @param library  that the records belong to, for names and structures of what they use
 * @param names    of the library, for the tables of charges
 * @returns for `smi` a reaction SMILES and a name a line; for `rxn` one reaction file after the other; an equation that cannot be written with
 *   structures is left out of both
 */
export function writtenAs(form: Form, file: LibraryFile, library: Library, names: NameIndex): string {
  switch (form) {
    case 'json':
      return printLibraryFile(file)
    case 'csv':
      return materialTable(file.materials)
    case 'tsv':
      return materialTable(file.materials, '\t')
    case 'charges-csv':
    case 'charges-tsv':
      return chargeTable(file.transformations, id => wordFor(id, names), form === 'charges-tsv' ? '\t' : ',')
    case 'sdf':
      return sdfOf(file.materials)
    case 'rdf':
      return rdfOf(library, file.transformations)
    case 'smi':
      return file.transformations.flatMap(step => lineOf(reactionSmilesOf(library, step), titleOf(step, form))).join('')
    case 'rxn':
      return file.transformations.flatMap(step => rxnOf(library, step) ?? []).join('')
  }
}

const lineOf = (smiles: string | null, title: string): readonly string[] => (smiles === null ? [] : [`${smiles} ${title}\n`])
