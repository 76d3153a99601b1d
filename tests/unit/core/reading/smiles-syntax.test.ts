import { describe, expect, it } from 'vitest'
import { isSmilesSyntax } from '../../../../core/reading/smiles-syntax.ts'
import { library } from '../../../support/reader.ts'

describe('the grammar of SMILES', () => {
  it('holds of every structure of the library, each of which a toolkit reads', () => {
    const written = [...library.materials.values()].flatMap(one => one.smiles ?? [])
    expect(written.length).toBeGreaterThan(500)
    expect(written.filter(smiles => !isSmilesSyntax(smiles))).toEqual([])
  })
  // Examples of the OpenSMILES specification.
  it.each([
    'C[N+](C)(C)C',
    'F/C=C\\F',
    'N[C@@H](C)C(=O)O',
    'C%12CCCCC%12',
    '[13CH4]',
    '[Na+].[Cl-]',
    'OCC(CCC)C(C(C)C)CCC',
    'c1ccc2ccccc2c1',
    'C[C@H](O)CC |&1:1|',
  ])('%s', smiles => expect(isSmilesSyntax(smiles)).toBe(true))
  it.each([
    'rac-(4-ethoxy-3-methoxyphenyl)(phenyl)methanol',
    '(2-bromophenyl)acetone',
    'tert-butyl(chloro)dimethylsilane',
    'Fe(acac)3',
    'CoCl2',
    'Pd(PPh3)4',
    'Cu(OAc)2',
    'C1CC',
    'C(C',
    'CC)',
    '=CC',
    '',
  ])('no SMILES: %s', text => expect(isSmilesSyntax(text)).toBe(false))
})
