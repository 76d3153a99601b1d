import { signal } from '@preact/signals'
import type { Material } from '../../core/library/material.ts'
import { ownBench } from '../../core/library/trust.ts'
import type { Identified } from './api.ts'
import { numberTyped } from './number-typed.ts'
import { openEntry } from './place.ts'

export interface TypedMaterial {
  readonly name: string
  readonly smiles: string
  readonly formula: string
  readonly cas: string
  readonly form: Material['form']
  readonly density: string
  readonly source: string
  /** For a solution: what it is of, and its strength as typed. */
  readonly of: { readonly id: string; readonly name: string } | null
  readonly strength: string
  /** Where its hazards come from: not yet said, the tables, or as typed. */
  readonly hazards: 'unknown' | 'tables' | 'typed'
  readonly codes: string
  readonly signalWord: 'Danger' | 'Warning' | 'none'
  readonly codesFrom: string
}

export const emptyMaterial: TypedMaterial = {
  name: '',
  smiles: '',
  formula: '',
  cas: '',
  form: 'solid',
  density: '',
  source: '',
  of: null,
  strength: '',
  hazards: 'unknown',
  codes: '',
  signalWord: 'Warning',
  codesFrom: '',
}
export const typedMaterial = signal<TypedMaterial>(emptyMaterial)
export const setMaterial = (patch: Partial<TypedMaterial>): void => {
  typedMaterial.value = { ...typedMaterial.value, ...patch }
}
/** What the writing called a material that the library does not hold; null where the page was opened by itself. */
export const calledInWriting = signal<string | null>(null)

/** Opens the page for a material that a text names and the library does not hold. */
export function beginMaterial(text: string): void {
  const looksDrawn = /^[A-Za-z0-9@+\-[\]()=#$%/\\.*]+$/.test(text) && /[=#()[\]]|[a-z]\d/.test(text)
  typedMaterial.value = { ...emptyMaterial, ...(looksDrawn ? { smiles: text } : { name: text }) }
  calledInWriting.value = text
  openEntry('material')
}

/** "37 %" or "3 M" as the library holds a strength; null where it is neither. */
export function strengthTyped(text: string): { readonly massFraction: number } | { readonly molPerL: number } | null {
  const match = /^\s*(\d+(?:[.,]\d+)?)\s*(%|M|mol\/L)\s*$/i.exec(text)
  if (match === null) return null
  const value = Number(match[1]!.replace(',', '.'))
  if (!(value > 0)) return null
  if (match[2] === '%') return value <= 100 ? { massFraction: Number((value / 100).toPrecision(12)) } : null
  return { molPerL: value }
}

/** The record to be tried, out of what was typed and what was told of it. */
export function materialRecord(typed: TypedMaterial, told: Identified): Readonly<Record<string, unknown>> {
  const base = typed.hazards === 'tables' && told.withHazards !== null ? told.withHazards : told.material
  const strength = strengthTyped(typed.strength)
  const mixture = typed.form === 'solution' && typed.of !== null && strength !== null
  const { formula, smiles, displayFormula, ...rest } = base
  const identity = mixture ? {} : { ...(formula && { formula }), ...(displayFormula && { displayFormula }), ...(smiles && { smiles }) }
  const density = numberTyped(typed.density)
  const codes = typed.codes.split(/[\s,;]+/).filter(Boolean)
  return {
    ...rest,
    ...identity,
    ...(mixture ? { kind: 'mixture', contains: { compound: typed.of!.id, ...strength } } : {}),
    ...(density === null ? {} : { densityGPerMl: density }),
    ...(typed.hazards === 'typed'
      ? { hazards: { codes, signalWord: codes.length === 0 ? 'none' : typed.signalWord, from: typed.codesFrom.trim() || 'memory' } }
      : {}),
    sources: [{ citation: typed.source.trim() || `${ownBench}: entered by hand`, checked: typed.source.trim() !== '' }, ...base.sources],
  }
}
