import { beforeAll, describe, expect, it } from 'vitest'
import { identified } from '../../../../server/library/identified.ts'
import type { Workshop } from '../../../../server/library/workshop.ts'
import { bundledWorkshop } from '../../../support/app.ts'
import { waybench } from '../../../support/terminal.ts'

// Tartaric acids by their CAS numbers (from memory): 87-69-4 (2R,3R), 147-71-7 (2S,3S), 133-37-9 racemate, 147-73-9 meso.

let workshop: Workshop
beforeAll(async () => {
  workshop = await bundledWorkshop()
})
const rr = 'OC(=O)[C@H](O)[C@@H](O)C(O)=O'
const matches = (smiles: string, cas = '', name = 'a stranger') =>
  identified(workshop, { name, smiles, formula: '', cas, form: 'solid' }).matches.map(({ id, by, form }) => [id, by, form])

describe('a new material is called the same structure only as what it is', () => {
  it.each([
    [
      '(2R,3R)',
      rr,
      [
        ['tartaric-acid', 'structure', null],
        ['dl-tartaric-acid', 'other form', 'racemate'],
      ],
    ],
    [
      '(2S,3S)',
      'OC(=O)[C@@H](O)[C@H](O)C(O)=O',
      [
        ['dl-tartaric-acid', 'other form', 'racemate'],
        ['tartaric-acid', 'other form', 'other hand'],
      ],
    ],
    [
      'the racemate',
      `${rr} |&1:3,5|`,
      [
        ['dl-tartaric-acid', 'structure', null],
        ['tartaric-acid', 'other form', 'one hand'],
      ],
    ],
    [
      'meso',
      'OC(=O)[C@H](O)[C@H](O)C(O)=O',
      [
        ['dl-tartaric-acid', 'other form', 'other stereoisomer'],
        ['tartaric-acid', 'other form', 'other stereoisomer'],
      ],
    ],
    [
      'without a hand',
      'OC(=O)C(O)C(O)C(O)=O',
      [
        ['dl-tartaric-acid', 'other form', 'states more'],
        ['tartaric-acid', 'other form', 'states more'],
      ],
    ],
    ['maleic acid', 'OC(=O)/C=C\\C(O)=O', [['fumaric-acid', 'other form', 'other geometry']]],
    ['one hand of a compound held without', 'CCCCCC[C@H](C)O', [['2-octanol', 'other form', 'states less']]],
  ])('tartaric acid and others: %s', (_, smiles, expected) => {
    expect(matches(smiles)).toEqual(expected)
  })

  // Each pair is one substance by its standard InChI: see the test of the normal form.
  it.each([
    ['[Na]OC(C)=O', 'sodium-acetate'],
    ['CC(=O)O[Na]', 'sodium-acetate'],
    ['[NH3+]CC(=O)[O-]', 'glycine'],
    ['C[S+]([O-])C', 'dimethyl-sulfoxide'],
    ['[O-][P+](c1ccccc1)(c1ccccc1)c1ccccc1', 'triphenylphosphine-oxide'],
    ['Nc1ccccc1.Cl', 'aniline-hydrochloride'],
    ['[NH3+]c1ccccc1.[Cl-]', 'aniline-hydrochloride'],
  ])('%s is perhaps %s, written otherwise', (smiles, id) => {
    expect(matches(smiles)).toEqual([[id, 'structure written otherwise', null]])
  })

  it('a salt, a zwitterion drawn with charges has the groups of what it is', () => {
    const groups = (smiles: string) =>
      identified(workshop, { name: 'x', smiles, formula: '', cas: '', form: 'solid' }).groups.map(one => one.number)
    // Acids and amines are groups 3 and 7 of the chart EPA-600/2-80-076.
    expect(groups('[NH3+]CC(=O)[O-]')).toEqual(expect.arrayContaining([3, 7]))
    expect(groups('[NH3+]CC(=O)[O-]')).toEqual(groups('NCC(=O)O'))
    expect(groups('[Na]OC(C)=O')).toEqual(groups('CC(=O)[O-].[Na+]'))
  })

  it('a formula is found however its parts are set off', () => {
    const byFormula = (formula: string) =>
      identified(workshop, { name: 'a stranger', smiles: '', formula, cas: '', form: 'solid' }).matches.map(({ id, by }) => [id, by])
    for (const formula of ['CuSO4.5H2O', 'CuSO4·5H2O', 'H10CuO9S'])
      expect(byFormula(formula), formula).toContainEqual(['copper-sulfate-pentahydrate', 'formula'])
    expect(byFormula('Na2SO3.7H2O')).toContainEqual(['sodium-sulfite-heptahydrate', 'formula'])
  })

  it('a CAS number or a name that is the same beside a structure that is not says both', () => {
    expect(matches('OC(=O)[C@@H](O)[C@H](O)C(O)=O', '87-69-4')).toEqual([
      ['tartaric-acid', 'CAS number', 'other hand'],
      ['dl-tartaric-acid', 'other form', 'racemate'],
    ])
    expect(matches('OC(=O)C(O)C(O)C(O)=O', '', 'L-tartaric acid')[0]).toEqual(['tartaric-acid', 'name', 'states more'])
  })

  it('a racemate is drawn with the words that say so', () => {
    const { depiction, material } = identified(workshop, { name: 'x', smiles: `${rr} |&1:3,5|`, formula: '', cas: '', form: 'solid' })
    expect(depiction.kind === 'structure' && depiction.drawing.caption).toBe('both hands')
    expect(material.smiles).toBe(`${rr} |&1:3,5|`)
    const one = identified(workshop, { name: 'x', smiles: rr, formula: '', cas: '', form: 'solid' }).depiction
    expect(one.kind === 'structure' && one.drawing.caption).toBeUndefined()
  })
})

it('on the command line a structure of a file that the library holds in another form is listed with what that is', async () => {
  // Several lines: one alone would be read as the equation of a preparation.
  const text = 'OC(=O)/C=C\\C(O)=O.BrBr>>OC(=O)C(Br)C(Br)C(O)=O\nCCO>>C=C.O\nO.[Na]OC(C)=O>>CC(O)=O.[Na+].[OH-]\n'
  const { out } = await waybench(['read', 'one.smi'], new Map([['one.smi', text]]))
  expect(out).toContain('the library holds fumaric-acid, which has the other geometry at a double bond')
  expect(out).toContain('the library holds meso-dibromosuccinic-acid, which states hands or double bonds that are left open here')
  expect(out).toContain('the library holds sodium-acetate, the same structure written otherwise')
})

describe('hazards of the table, found by number or name', () => {
  // Fumaric acid is 110-17-8 (from memory), the trans acid; its cis isomer, maleic acid, is graver by far (Annex VI of 1272/2008).
  const cis = 'OC(=O)/C=C\\C(O)=O'
  it.each([
    ['by its number', '110-17-8', 'a stranger'],
    ['by its name', '', 'fumaric acid'],
  ])('are not those of another geometry, %s', (_, cas, name) => {
    const told = (smiles: string) => identified(workshop, { name, smiles, formula: '', cas, form: 'solid' })
    expect(told('OC(=O)/C=C/C(O)=O').withHazards?.hazards?.codes.length).toBeGreaterThan(0)
    expect(told(cis).withHazards).toBeNull()
    expect(told(cis).record).toBeNull()
    expect(told(cis).matches.find(({ id }) => id === 'fumaric-acid')?.form).toBe('other geometry')
  })
})
