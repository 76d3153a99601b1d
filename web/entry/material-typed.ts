import type { Material } from '../../core/library/material.ts'
import type { MaterialBlanks } from './api.ts'
import type { Writing } from './draft.ts'
import { emptyMore, type TypedMore } from './material-more.ts'

/** A material chosen from the list, or what stands in its blank before one is (id empty). */
export interface Chosen {
  readonly id: string
  readonly name: string
}

export interface TypedMaterial extends TypedMore, MaterialBlanks {
  readonly source: string
  /** By whose word its figures stand. */
  readonly known: Writing['known']
  /** For a solution: what it is of, its strength as typed, and what it is made up with (null = water). */
  readonly of: Chosen | null
  readonly strength: string
  readonly rest: Chosen | null
  /** Where its hazards come from: not yet said, the tables, or as typed. */
  readonly hazards: 'unknown' | 'tables' | 'typed'
  readonly codes: string
  readonly signalWord: 'Danger' | 'Warning' | 'none'
  readonly codesFrom: string
  /** Ids of materials that it looks like and that a person said it is not. */
  readonly apartFrom: readonly string[]
  /** The record that is put right, as it stood when it was opened; null = a new material. */
  readonly over: Material | null
}

export const emptyMaterial: TypedMaterial = {
  name: '',
  smiles: '',
  formula: '',
  cas: '',
  form: 'solid',
  density: '',
  melting: '',
  boiling: '',
  flash: '',
  source: '',
  known: '',
  of: null,
  strength: '',
  rest: null,
  hazards: 'unknown',
  codes: '',
  signalWord: 'Warning',
  codesFrom: '',
  apartFrom: [],
  over: null,
  ...emptyMore,
}

/** Hazards as they were typed; without a source they count as remembered. */
export function hazardsTyped({ codes: text, signalWord, codesFrom }: TypedMaterial): NonNullable<Material['hazards']> {
  const codes = text.split(/[\s,;]+/).filter(Boolean)
  return { codes, signalWord: codes.length === 0 ? 'none' : signalWord, from: codesFrom.trim() || 'memory' }
}
