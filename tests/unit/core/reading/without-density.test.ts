import { describe, expect, it } from 'vitest'
import type { Material } from '../../../../core/library/material.ts'
import { NameIndex } from '../../../../core/reading/names.ts'
import { readPreparation } from '../../../../core/reading/preparation.ts'
import { ambiguousNames, library, toolkit } from '../../../support/reader.ts'

// Molar masses by hand from the CIAAW weights (abridged): C8H8O2 136.15, C8H9NO2 8*12.011 + 9*1.008 + 14.007 + 2*15.999 = 151.165.

const aldehyde: Material = {
  id: 'workshop-aldehyde',
  name: 'workshop aldehyde',
  kind: 'compound',
  formula: 'C8H8O2',
  smiles: 'COc1ccc(C=O)cc1',
  form: 'liquid',
  sources: [{ citation: 'entered by hand', checked: false }],
}
const oxime: Material = {
  ...aldehyde,
  id: 'workshop-oxime',
  name: 'workshop oxime',
  formula: 'C8H9NO2',
  smiles: 'COc1ccc(C=NO)cc1',
  form: 'solid',
}
const with2 = {
  ...library,
  materials: new Map([...library.materials, [aldehyde.id, aldehyde], [oxime.id, oxime]]),
  molarMass: new Map([...library.molarMass, [aldehyde.id, 136.15], [oxime.id, 151.165]]),
}
const index = new NameIndex(with2.materials, ambiguousNames, toolkit)
const read = (...lines: readonly string[]) =>
  readPreparation(
    ['workshop aldehyde + hydroxylamine-hydrochloride -> workshop oxime + water + hydrogen chloride', ...lines].join('\n'),
    with2,
    index,
    toolkit,
  )

describe('a reactant by a volume that no density turns into moles', () => {
  it('is counted by the moles stated beside it', () => {
    const told = read('workshop aldehyde, 6.1 mL (50 mmol)', 'hydroxylamine hydrochloride 6.95 g (100 mmol)', 'isolated 7.0 g (93 %)')
    expect(told.problems).toEqual([])
    expect(told.limiting).toBe(aldehyde.id)
    // 50 mmol of 151.165 g/mol.
    expect(told.theoreticalG).toBeCloseTo(7.558, 3)
    expect(told.percentYield).toBeCloseTo(92.6, 1)
    expect(told.transformation.charge?.[0]).toEqual({ material: aldehyde.id, role: 'substrate', amount: 50, unit: 'mmol' })
  })
  it('is counted by the mass stated beside it', () => {
    const told = read('workshop aldehyde 6.1 mL (6.81 g)', 'hydroxylamine hydrochloride 6.95 g')
    expect(told.limiting).toBe(aldehyde.id)
    expect(told.lines[0]!.amountMol).toBeCloseTo(6.81 / 136.15, 5)
  })
  it('lets no other reactant be called limiting where nothing stands beside it, and says what is missing in words', () => {
    const told = read('workshop aldehyde, 6.1 mL', 'hydroxylamine hydrochloride 6.95 g (100 mmol)', 'isolated 7.0 g')
    expect(told.limiting).toBeNull()
    expect(told.theoreticalG).toBeNull()
    const missing = told.problems.find(one => one.code === 'density-missing')!
    expect(missing.where).toEqual(['charges', 'workshop aldehyde, 6.1 mL'])
    expect(missing.what).toContain('workshop aldehyde, whose density is not known')
    expect(told.problems.find(one => one.code === 'limiting-unknown')!.what).toContain('"workshop aldehyde, 6.1 mL"')
  })
  it('is told of a solvent too, which nobody can weigh out otherwise', () => {
    const told = read('6.81 g workshop aldehyde', 'hydroxylamine hydrochloride 6.95 g', 'extracted with 20 mL workshop aldehyde')
    expect(told.limiting).toBe(aldehyde.id)
    expect(told.problems.map(one => one.code)).toEqual(['density-missing'])
  })
})
