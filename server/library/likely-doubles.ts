import type { Structure } from '../../core/chemistry/structure.ts'
import type { Material } from '../../core/library/material.ts'
import type { StereoForm } from '../../core/reading/stereo-forms.ts'
import type { Workshop } from './workshop.ts'

/** A material that is perhaps the one that was typed. */
export interface LikelyDouble {
  readonly id: string
  readonly name: string
  /** What both have: this very structure, the same with charges written otherwise, CAS number, name, skeleton in another stereo form, formula. */
  readonly by: 'structure' | 'structure written otherwise' | 'CAS number' | 'name' | 'other form' | 'formula'
  /** What it is beside the structure typed, where they differ by hands or double bonds alone; null where they do not, or nothing tells. */
  readonly form: StereoForm['relation'] | null
  /** It answers to the name typed, whatever else is the same. */
  readonly named: boolean
}

/** What was typed of a material, as far as it was read; empty or null where nothing is said. */
export interface ToCompare {
  readonly name: string
  readonly smiles: string
  readonly cas: string
  readonly structure: Structure | null
  readonly formula: string | null
  /** The record that it is to stand in place of: what is as that one has it is not asked about again. */
  readonly known: Material | undefined
}

/** Most that are offered. */
const most = 12

/** Materials of the library that are probably the same, surest first. */
export function likelyDoubles(workshop: Workshop, { name, smiles, cas, structure, formula, known }: ToCompare): readonly LikelyDouble[] {
  const { library } = workshop
  const names = workshop.names()
  const found = new Map<string, LikelyDouble>()
  const looked = name === '' ? null : names.lookUp(name)
  const named = new Set(
    looked?.kind === 'material' ? [looked.material] : looked?.kind === 'ambiguous' && !looked.none ? looked.candidates : [],
  )
  const forms = new Map(structure === null ? [] : names.stereoForms(structure).map(one => [one.id, one.relation]))
  const add = (id: string, by: LikelyDouble['by']) => {
    const other = library.materials.get(id)
    if (other !== undefined && id !== known?.id && !found.has(id))
      found.set(id, { id, name: other.name, by, form: forms.get(id) ?? null, named: named.has(id) })
  }
  const isNew = (said: string, before: string | undefined): boolean => said !== (before ?? '')
  const isNewStructure = structure !== null && isNew(smiles, known?.smiles)
  if (isNewStructure) for (const id of names.ofStructure(structure)) add(id, 'structure')
  if (isNewStructure) for (const id of names.writtenOtherwise(structure)) add(id, 'structure written otherwise')
  if (cas !== '' && isNew(cas, known?.cas))
    for (const one of library.materials.values()) if (one.cas === cas && one.kind !== 'mixture') add(one.id, 'CAS number')
  if (isNew(name, known?.name)) for (const id of named) add(id, 'name')
  if (isNewStructure) for (const id of forms.keys()) add(id, 'other form')
  // A formula alone is shared by isomers: offered only where no structure says more.
  if (structure === null && formula !== null && isNew(formula, known?.formula))
    for (const id of names.ofFormula(formula)) add(id, 'formula')
  return [...found.values()].slice(0, most)
}
