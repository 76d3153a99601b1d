import fc from 'fast-check'
import * as OCL from 'openchemlib'
import { describe, expect, it } from 'vitest'
import { toolkitFrom } from '../../../../core/chemistry/openchemlib.ts'

const toolkit = toolkitFrom(OCL)
const read = (smiles: string) => {
  const structure = toolkit.parse(smiles)
  if (!structure.ok) throw new Error(structure.problems[0]!.what)
  return structure.value
}
const codeOf = (smiles: string) => {
  const structure = toolkit.parse(smiles, ['materials.json', 'x', 'smiles'])
  return structure.ok ? 'ok' : structure.problems.map(one => one.code).join()
}

describe('what the toolkit would let pass', () => {
  it.each([
    ['', 'smiles-empty'],
    ['C(C', 'smiles-bracket'],
    ['CC(', 'smiles-bracket'],
    ['C)(C', 'smiles-bracket'],
    ['[Na', 'smiles-bracket'],
    ['CC()', 'smiles-unreadable'],
    ['CC.', 'smiles-unreadable'],
    ['CC\nO', 'smiles-unreadable'],
    ['CC O', 'smiles-unreadable'],
    ['C(C)(C)(C)(C)C', 'smiles-valence'],
    ['C1CC', 'smiles-unreadable'],
    ['foo', 'smiles-unreadable'],
    // OpenSMILES, "Hydrogens": a hydrogen atom has no hydrogen count (from memory). The library would read one atom where people mean two.
    ['[HH]', 'smiles-unreadable'],
    ['[2HH1]', 'smiles-unreadable'],
    ['CC=O.[HH]', 'smiles-unreadable'],
    ['[H][H]', 'ok'],
    ['[Hg].[H+]', 'ok'],
    ['CC>>CC', 'smiles-unreadable'],
    ['<script>', 'smiles-unreadable'],
    ['C\u200bC', 'smiles-unreadable'],
  ])('%j is refused', (smiles, code) => {
    expect(codeOf(smiles)).toBe(code)
  })

  it('never throws', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary', maxLength: 60 }), fc.stringMatching(/^[CNOPSFc1-3()=#[\]+\-HBrl.@/*]{0,30}$/)),
        smiles => {
          const structure = toolkit.parse(smiles)
          if (!structure.ok) expect(structure.problems).toHaveLength(1)
          else expect(structure.value.formula).toBeTypeOf('string')
        },
      ),
      { numRuns: 1500 },
    )
  })
})

describe('formula', () => {
  it.each([
    ['O=C(c1ccccc1)C(O)c1ccccc1', 'C14H12O2', 0],
    ['[Al]', 'Al', 0],
    ['[AlH3]', 'AlH3', 0],
    ['[2H]C(Cl)(Cl)Cl', 'CCl3D', 0],
    ['*NCCCCCCNC(=O)CCCCCCCCC(*)=O', 'C16H30N2O2', 0],
    ['[O-]S(=O)(=O)[O-]', 'O4S', -2],
    ['C[Si](C)(C)C', 'C4H12Si', 0],
  ])('%s', (smiles, formula, charge) => {
    expect(read(smiles).formula).toBe(formula)
    expect(read(smiles).composition.charge).toBe(charge)
  })
})

describe('identity', () => {
  it('does not depend on how a structure is written', () => {
    expect(read('OCC').identityKey).toBe(read('CCO').identityKey)
    expect(read('c1ccccc1O').identityKey).toBe(read('OC1=CC=CC=C1').identityKey)
  })
  it('tells apart what differs in stereochemistry, isotope, charge or bare metal', () => {
    expect(read('OC(=O)/C=C/C(O)=O').identityKey).not.toBe(read('OC(=O)/C=C\\C(O)=O').identityKey)
    expect(read('C[C@H](O)F').identityKey).not.toBe(read('C[C@@H](O)F').identityKey)
    expect(read('[2H]C(Cl)(Cl)Cl').identityKey).not.toBe(read('ClC(Cl)Cl').identityKey)
    expect(read('CC(=O)[O-]').identityKey).not.toBe(read('CC(O)=O').identityKey)
    expect(read('[Al]').identityKey).not.toBe(read('[AlH3]').identityKey)
  })
})

describe('what remains after stripping', () => {
  const amine = read('CCN').identityKey
  it.each(['CCN.Cl', 'CC[NH3+].[Cl-]', 'CC[NH3+].CC[NH3+].[O-]S([O-])(=O)=O', 'CCN.Cl.O', 'CCN.OC(=O)C(O)=O'])(
    '%s is the amine',
    smiles => {
      expect(toolkit.essentialKeys(read(smiles), 'solvates and counter-ions')).toEqual([amine])
    },
  )
  it('keeps the salt where only solvates come off', () => {
    expect(toolkit.essentialKeys(read('CCN.Cl.O'), 'solvates')).toEqual([amine, read('Cl').identityKey].sort())
  })
  it('leaves an acid and its sodium salt with one key', () => {
    expect(toolkit.essentialKeys(read('[Na+].[O-]C(=O)c1ccccc1'), 'solvates and counter-ions')).toEqual([
      read('OC(=O)c1ccccc1').identityKey,
    ])
  })
  it('keeps a nitro group and a quaternary ammonium as they are', () => {
    expect(toolkit.essentialKeys(read('C[N+](C)(C)C.[Cl-]'), 'solvates and counter-ions')).toEqual([read('C[N+](C)(C)C').identityKey])
    expect(toolkit.essentialKeys(read('C[N+](=O)[O-]'), 'solvates and counter-ions')).toEqual([read('C[N+](=O)[O-]').identityKey])
  })
  it('keeps what consists of solvent or counter-ions alone', () => {
    expect(toolkit.essentialKeys(read('O'), 'solvates')).toEqual([read('O').identityKey])
    expect(toolkit.essentialKeys(read('[Na+].[Cl-]'), 'solvates and counter-ions')).toHaveLength(2)
  })
})

describe('substructures', () => {
  it('finds them, and writes out alternatives that the library refuses', () => {
    const amide = '[NX3][CX3](=[OX1])[#6,#1,NX3]'
    expect(['CC(N)=O', 'NC(N)=O', 'NC=O'].map(one => toolkit.matches(read(one), amide))).toEqual([true, true, true])
    expect(['CCN', 'CC(O)=O'].map(one => toolkit.matches(read(one), amide))).toEqual([false, false])
    const cumulated = '[NX2]=[CX2]=[OX1,SX1]'
    expect(['CN=C=O', 'CN=C=S', 'CC#N'].map(one => toolkit.matches(read(one), cumulated))).toEqual([true, true, false])
  })
  it('writes out recursive alternatives', () => {
    const onePhosphorusCarbon = '[#15;!$([#15]([#6])[#6])]-[$([CH3]),$([CH2][CH3])]'
    expect(['CP(=O)(O)O', 'CCP(=O)(O)O', 'CP(C)(=O)O', 'OP(=O)(O)O'].map(one => toolkit.matches(read(one), onePhosphorusCarbon))).toEqual([
      true,
      true,
      false,
      false,
    ])
  })
  it('throws for a pattern that nobody can read', () => {
    expect(() => toolkit.matches(read('CC'), '[C')).toThrow()
  })
})
