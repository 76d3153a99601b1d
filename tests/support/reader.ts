import { readFileSync } from 'node:fs'
import * as OCL from 'openchemlib'
import { toolkitFrom } from '../../core/chemistry/openchemlib.ts'
import type { Library } from '../../core/library/library.ts'
import { type AmbiguousName, NameIndex } from '../../core/reading/names.ts'
import { type PreparationRead, readPreparation } from '../../core/reading/preparation.ts'
import { bundled } from '../../server/library/bundled.ts'

const table: readonly AmbiguousName[] = JSON.parse(
  readFileSync(new URL('../../routes-data/tables/ambiguous-names.json', import.meta.url), 'utf8'),
)

/** The bundled library's names, with its table of ambiguous ones and a toolkit for SMILES. */
export const library: Library = bundled().library
export const toolkit = toolkitFrom(OCL)
export const index = new NameIndex(library.materials, table, toolkit)
export const ambiguousNames = table

/** A preparation typed in, one line an argument. */
export const prepared = (...lines: readonly string[]): PreparationRead => readPreparation(lines.join('\n'), library, index, toolkit)
