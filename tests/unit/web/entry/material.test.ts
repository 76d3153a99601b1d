import { beforeAll, describe, expect, it, vi } from 'vitest'
import { materialSchema } from '../../../../core/library/material.ts'
import { trustInPhysical } from '../../../../core/library/physical.ts'
import { trustInHazards } from '../../../../core/library/trust.ts'
import { identified } from '../../../../server/library/identified.ts'
import { openWorkshop, type Workshop } from '../../../../server/library/workshop.ts'
import type { Identified } from '../../../../web/entry/api.ts'
import { emptyMaterial, type TypedMaterial } from '../../../../web/entry/material-typed.ts'
import { sameRecord } from '../../../../web/entry/same-record.ts'

// The page keeps which part of it stands in the address.
vi.stubGlobal('location', { search: '', href: 'http://localhost/' })
vi.stubGlobal('addEventListener', () => {})
vi.stubGlobal('history', { pushState: () => {} })
vi.stubGlobal('scrollTo', () => {})
const { asked, beginMaterial, materialLacks, materialRecord, typedMaterial } = await import('../../../../web/entry/material-draft.ts')

let workshop: Workshop
beforeAll(async () => {
  workshop = await openWorkshop([])
})
const day = '2026-12-03'
const told = (typed: TypedMaterial): Identified => identified(workshop, asked(typed))
const tried = (patch: Partial<TypedMaterial>) => {
  const typed = { ...emptyMaterial, ...patch }
  const answer = told(typed)
  return {
    record: materialSchema.parse(materialRecord(typed, answer, day)),
    lacking: materialLacks(typed, answer).map(one => one.field),
    problems: answer.problems.map(one => one.code),
  }
}
const lye = { form: 'solution' as const, name: 'lye of the bench', of: { id: 'sodium-hydroxide', name: 'sodium hydroxide' } }

describe('a new material begun from a text', () => {
  it.each([
    ['rac-(4-ethoxy-3-methoxyphenyl)(phenyl)methanol', 'name'],
    ['Pd(PPh3)4', 'name'],
    ['anis aldehyde', 'name'],
    ['COc1ccc(C=NO)cc1', 'smiles'],
    ['C[C@H](O)CC=C |&1:1|', 'smiles'],
  ] as const)('%s is its %s', (text, field) => {
    beginMaterial(text)
    expect({ ...typedMaterial.value }).toMatchObject({ name: '', smiles: '', [field]: text })
  })
})

describe('a solution typed on the page', () => {
  it('keeps its strength, whatever it is written in', () => {
    // 20 g/L / 39.997 g/mol (CIAAW 2021) = 0.50004 mol/L.
    const { record, problems } = tried({ ...lye, strength: '2 % w/v', density: '1.02 g/mL', known: 'own' })
    expect(problems).toEqual([])
    expect(record).toMatchObject({ kind: 'mixture', form: 'solution', densityGPerMl: 1.02, contains: { compound: 'sodium-hydroxide' } })
    expect(record.contains?.molPerL).toBeCloseTo(0.50004, 5)
    expect(tried({ ...lye, strength: '50 % w/w' }).record.contains).toEqual({ compound: 'sodium-hydroxide', massFraction: 0.5 })
    const inEthanol = tried({ ...lye, strength: '0.5 N', rest: { id: 'ethanol', name: 'ethanol' } }).record.contains
    expect(inEthanol).toEqual({ compound: 'sodium-hydroxide', molPerL: 0.5, rest: 'ethanol' })
  })
  it('is not ready while a part of it is unreadable, missing or not chosen', () => {
    expect(tried({ ...lye, strength: 'strong' })).toMatchObject({ problems: ['strength-unreadable'], lacking: ['strength', 'known'] })
    expect(tried({ ...lye, strength: '' }).problems).toEqual(['strength-missing'])
    expect(tried({ ...lye, of: { id: '', name: 'sodium hydro' }, strength: '3 M' }).problems).toEqual(['solution-of-nothing'])
    expect(tried({ ...lye, strength: '3 M', rest: { id: '', name: 'brine of old' } }).problems).toEqual(['solution-made-up-with-nothing'])
    expect(tried({ ...lye, strength: '3 M', density: '83' }).problems).toEqual(['density-out-of-range'])
  })
})

describe('by whose word a material stands', () => {
  const plain = {
    name: 'squalane of the bench',
    smiles: 'CC(C)CCCC(C)CCCC(C)CCCCC(C)CCCC(C)CCCC(C)C',
    form: 'liquid' as const,
    density: '0.81',
  }
  it('waits for a figure that is read', () => {
    expect(tried({ ...plain, density: '0.80-0.84', known: 'own' }).lacking).toEqual(['density'])
  })
  it('is asked once a figure is given', () => {
    expect(tried(plain).lacking).toEqual(['known'])
    expect(tried({ ...plain, density: '' }).lacking).toEqual([])
    expect(tried({ ...plain, known: 'checked' }).lacking).toEqual(['source'])
  })
  it.each([
    ['checked', 'a data sheet', 'seen'],
    ['memory', '', 'remembered'],
    ['memory', 'a lecture', 'remembered'],
    ['own', 'book 3', 'own bench'],
  ] as const)('%s, %j: its density is %s', (known, source, trust) => {
    const { record, lacking } = tried({ ...plain, known, source })
    expect(lacking).toEqual([])
    expect(trustInPhysical(record, 'density')).toBe(trust)
  })
  it('says nothing of its hazards, which have a source of their own', () => {
    const typed = { hazards: 'typed', codes: 'H304', codesFrom: 'data sheet of the maker, 2026' } as const
    expect(trustInHazards(tried({ ...plain, known: 'own', ...typed }).record)).toBe('seen')
    // Where nothing but a name and a structure was typed, who typed them did not assign the hazards either.
    expect(trustInHazards(tried({ ...plain, density: '', known: '', ...typed }).record)).toBe('seen')
    expect(trustInHazards(tried({ ...plain, density: '', known: '', ...typed, codesFrom: '' }).record)).toBe('remembered')
  })
})

describe('a material that is there already', () => {
  it('is not entered again under the same name, and under another only where it is said to be another', () => {
    expect(tried({ name: 'acetone', smiles: 'CC(C)=O' }).lacking).toEqual(['name'])
    expect(tried({ name: 'Propanone', smiles: 'CC(C)=O' }).lacking).toContain('name')
    expect(tried({ name: 'nail varnish remover, pure', smiles: 'CC(C)=O' }).lacking).toEqual(['matches'])
    expect(tried({ name: 'nail varnish remover, pure', smiles: 'CC(C)=O', apartFrom: ['acetone'] }).lacking).toEqual([])
    // Isomers share a formula: that is only told.
    expect(tried({ name: 'an isomer', formula: 'C3H6O' }).lacking).toEqual([])
  })
  it('is found among the saved ones whatever its id, on another day too', () => {
    const typed: TypedMaterial = {
      ...emptyMaterial,
      name: 'lamp oil',
      smiles: 'CCCCCCCCCCCC',
      density: '0.75',
      form: 'liquid',
      known: 'own',
    }
    const kept = materialSchema.parse(materialRecord(typed, told(typed), day))
    const again = { ...materialRecord(typed, told(typed), '2026-12-09'), id: 'lamp-oil-2' }
    expect(sameRecord(again, [kept])).toBe(kept)
    expect(sameRecord({ ...again, densityGPerMl: 0.76 }, [kept])).toBeNull()
  })
})
