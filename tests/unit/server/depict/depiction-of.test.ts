import { describe, expect, it } from 'vitest'
import { condensedUnit } from '../../../../server/depict/condensed.ts'
import { depictionOf, fitsARow, kindOf } from '../../../../server/depict/depiction-of.ts'
import { bundled } from '../../../../server/library/bundled.ts'

const { materials } = bundled().library

describe('how a material stands on the map', () => {
  it.each([
    ['benzil', 'structure'],
    ['methyl-orange', 'structure'],
    ['sodium-acetate', 'formula'],
    ['copper-sulfate-pentahydrate', 'formula'],
    ['water', 'formula'],
    ['nylon-6-10', 'repeat unit'],
    ['cinnamon-bark', 'words'],
    ['hydrochloric-acid-conc', 'words'],
  ])('%s: %s', (id, kind) => {
    const material = materials.get(id)
    expect(material, id).toBeDefined()
    expect(kindOf(material!)).toBe(kind)
  })

  it('draws nothing that would not fit a row, and shows every material somehow', () => {
    const kinds = new Map<string, number>()
    for (const material of materials.values()) {
      const depiction = depictionOf(material)
      kinds.set(depiction.kind, (kinds.get(depiction.kind) ?? 0) + 1)
      if (depiction.kind === 'structure') expect(fitsARow(depiction.drawing), material.id).toBe(true)
      if (depiction.kind === 'formula') expect(depiction.formula.length, material.id).toBeGreaterThan(0)
    }
    expect(kinds.get('structure')).toBeGreaterThan(350)
    expect(kinds.get('formula')).toBeGreaterThan(100)
  })

  it('too wide for a row becomes a formula: castor oil, modelled as one triglyceride', () => {
    expect(depictionOf(materials.get('castor-oil')!)).toEqual({ kind: 'formula', formula: 'C57H104O9' })
  })

  it('writes an inorganic as the trade does', () => {
    expect(depictionOf(materials.get('copper-sulfate-pentahydrate')!)).toEqual({ kind: 'formula', formula: 'CuSO4·5H2O' })
  })
})

describe('condensed repeat units', () => {
  // Repeat units as the IUPAC Gold Book and textbooks condense them; common practice.
  it.each([
    ['*NCCCCCCNC(=O)CCCCCCCCC(*)=O', 'C16H30N2O2', '[NH(CH2)6NHCO(CH2)8CO]n'],
    ['*OC(C)C(*)=O', 'C3H4O2', '[OCH(CH3)CO]n'],
    ['*CC(*)c1ccccc1', 'C8H8', '[CH2CH(C6H5)]n'],
    ['*CC(*)(C)C(=O)OC', 'C5H8O2', '[CH2C(CH3)(CO2CH3)]n'],
  ])('%s', (smiles, formula, condensed) => {
    expect(condensedUnit(smiles, formula)).toBe(condensed)
  })

  it('a ring in the chain is told by its formula', () => {
    expect(condensedUnit('*O[C@H]1[C@H](O)[C@@H](O)[C@H](*)O[C@@H]1CO', 'C6H10O5')).toBe('[C6H10O5]n')
  })
})
