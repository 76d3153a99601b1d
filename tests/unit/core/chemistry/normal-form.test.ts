import type { MainModule } from '@rdkit/rdkit'
import * as OCL from 'openchemlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { toolkitFrom } from '../../../../core/chemistry/openchemlib.ts'
import { rdkitModule } from '../../../support/rdkit.ts'
import { library } from '../../../support/reader.ts'

const toolkit = toolkitFrom(OCL)
const read = (smiles: string) => {
  const structure = toolkit.parse(smiles)
  if (!structure.ok) throw new Error(structure.problems[0]!.what)
  return structure.value
}
const normal = (smiles: string) => toolkit.normalised(read(smiles))

// Oracle: the standard InChI, which is the same for all these ways of writing one substance, by RDKit.
let rdkit: MainModule
beforeAll(async () => {
  rdkit = await rdkitModule()
})
const inchi = (smiles: string): string => {
  const molecule = rdkit.get_mol(smiles)!
  const text = molecule.get_inchi()
  molecule.delete()
  return text
}

const same = [
  ['[Na]OC(C)=O', 'CC(=O)[O-].[Na+]'],
  ['CC(=O)O[Na]', '[Na+].CC([O-])=O'],
  ['[K]Oc1ccccc1', '[K+].[O-]c1ccccc1'],
  ['[Na]Cl', '[Na+].[Cl-]'],
  ['CC(=O)O[Ca]OC(C)=O', '[Ca+2].CC([O-])=O.CC([O-])=O'],
  ['[NH3+]CC(=O)[O-]', 'NCC(=O)O'],
  ['C[S+]([O-])C', 'CS(C)=O'],
  ['[O-][P+](c1ccccc1)(c1ccccc1)c1ccccc1', 'O=P(c1ccccc1)(c1ccccc1)c1ccccc1'],
  ['C[S+2]([O-])([O-])C', 'CS(C)(=O)=O'],
  ['[NH3+]c1ccccc1.[Cl-]', 'Nc1ccccc1.Cl'],
  ['[NH4+].CC(=O)[O-]', 'N.CC(=O)O'],
  ['CN(=O)=O', 'C[N+](=O)[O-]'],
] as const

describe('several ways of writing one substance', () => {
  it.each(same)('%s is %s', (one, other) => {
    expect(normal(one).identityKey).toBe(normal(other).identityKey)
    expect(normal(one).formula).toBe(read(one).formula)
    expect(inchi(one)).toBe(inchi(other))
  })

  it.each([
    ['CC(=O)[O-]', 'CC(=O)O'],
    ['C[NH3+]', 'CN'],
    ['C[N+](C)(C)CC(=O)[O-]', 'CN(C)CC(=O)OC'],
    ['[Na]OC(C)=O', '[K+].CC([O-])=O'],
  ])('%s is not %s', (one, other) => {
    expect(normal(one).identityKey).not.toBe(normal(other).identityKey)
    expect(inchi(one)).not.toBe(inchi(other))
  })

  it('keeps the atoms of every material of the library, and makes none of two of them', () => {
    const keys = new Map<string, string>()
    const off: string[] = []
    for (const { id, smiles, kind } of library.materials.values()) {
      if (smiles === undefined) continue
      const structure = read(smiles)
      const form = toolkit.normalised(structure)
      if (form.formula !== structure.formula || form.composition.charge !== structure.composition.charge) off.push(id)
      if (kind !== 'compound') continue
      const other = keys.get(form.identityKey)
      if (other !== undefined && read(library.materials.get(other)!.smiles!).identityKey !== structure.identityKey)
        off.push(`${id} ${other}`)
      keys.set(form.identityKey, id)
      if (toolkit.normalised(form).identityKey !== form.identityKey) off.push(`${id} twice`)
    }
    expect(off).toEqual([])
  })

  it('finds the family of a salt that is drawn with a bond to its metal', () => {
    const keys = (smiles: string) => toolkit.essentialKeys(read(smiles), 'solvates and counter-ions')
    expect(keys('CC(C)C(=O)O[Na]')).toEqual(keys('[Na+].CC(C)C([O-])=O'))
  })
})
