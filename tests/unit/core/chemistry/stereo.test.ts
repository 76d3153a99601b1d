import type { MainModule } from '@rdkit/rdkit'
import * as OCL from 'openchemlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { toolkitFrom } from '../../../../core/chemistry/openchemlib.ts'
import { rdkitModule } from '../../../support/rdkit.ts'

const toolkit = toolkitFrom(OCL)
const read = (smiles: string) => {
  const structure = toolkit.parse(smiles)
  if (!structure.ok) throw new Error(structure.problems[0]!.what)
  return structure.value
}
const between = (one: string, other: string) => toolkit.stereoBetween(read(one), read(other))

// Tartaric acid (IUPAC 2013, P-93.5.1.1): (2R,3R), (2S,3S), the racemate of both, meso (2R,3S); and without any hand.
const rr = 'OC(=O)[C@H](O)[C@@H](O)C(O)=O'
const ss = 'OC(=O)[C@@H](O)[C@H](O)C(O)=O'
const racemate = `${rr} |&1:3,5|`
const meso = 'OC(=O)[C@H](O)[C@H](O)C(O)=O'
const flat = 'OC(=O)C(O)C(O)C(O)=O'

let rdkit: MainModule
beforeAll(async () => {
  rdkit = await rdkitModule()
})

describe('stereo forms of one skeleton', () => {
  it('are by RDKit what they are called here', () => {
    const labels = [rr, ss, meso].map(smiles =>
      (JSON.parse(rdkit.get_mol(smiles)!.get_stereo_tags()).CIP_atoms as [number, string][]).map(one => one[1]),
    )
    expect(labels).toEqual([
      ['(R)', '(R)'],
      ['(S)', '(S)'],
      ['(R)', '(S)'],
    ])
    expect(rdkit.get_mol(racemate)!.get_cxsmiles()).toBe(rdkit.get_mol(`${ss} |&4:3,5|`)!.get_cxsmiles())
  })

  it('each beside each', () => {
    const all = [rr, ss, racemate, meso, flat]
    expect(all.map(one => all.map(other => between(one, other)))).toEqual([
      ['same', 'other hand', 'racemate', 'other stereoisomer', 'states less'],
      ['other hand', 'same', 'racemate', 'other stereoisomer', 'states less'],
      ['one hand', 'one hand', 'same', 'other stereoisomer', 'states less'],
      ['other stereoisomer', 'other stereoisomer', 'other stereoisomer', 'same', 'states less'],
      ['states more', 'states more', 'states more', 'states more', 'same'],
    ])
  })

  it('double bonds: fumaric and maleic acid', () => {
    const [fumaric, maleic, open] = ['OC(=O)/C=C/C(O)=O', 'OC(=O)/C=C\\C(O)=O', 'OC(=O)C=CC(O)=O']
    expect([between(fumaric!, maleic!), between(fumaric!, open!), between(open!, maleic!)]).toEqual([
      'other geometry',
      'states less',
      'states more',
    ])
  })

  it('another compound is none', () => {
    expect(between('CCO', 'COC')).toBeNull()
    expect(between('C[C@H](O)CC', 'CC(O)CCC')).toBeNull()
  })
})

describe('stereo groups behind a SMILES', () => {
  it('make a racemate the same however it is written', () => {
    expect(read(racemate).identityKey).toBe(read(`${ss} |&7:5,3|`).identityKey)
    expect(read('[H][C@](C)(O)[C@H](Cl)CC |&1:1,4|').identityKey).toBe(read('CC[C@@H](Cl)[C@@H](C)O |&1:2,4|').identityKey)
    expect(read(read(racemate).canonicalSmiles).identityKey).toBe(read(racemate).identityKey)
    expect(read(`${meso} |&1:3,5|`).identityKey).toBe(read(meso).identityKey)
    expect(read(racemate).formula).toBe('C4H6O6')
  })

  it('count atoms by their place, whatever numbers a reaction writes beside them', () => {
    // Atom 4 of the SMILES, counted from 0, is no part of the group, and its own number is that of one which is.
    const [plain, mapped] = ['O[C@@H]1CC[C@H](C)C[C@H]1O |&1:1,7|', 'O[C@@H]1CC[C@H:2](C)C[C@H:8]1O |&1:1,7|']
    expect(read(mapped!).identityKey).toBe(read(plain!).identityKey)
    expect(read(mapped!).canonicalSmiles).toBe(read(plain!).canonicalSmiles)
  })

  it('of one centre alone say what a SMILES without a hand says', () => {
    expect(between('C[C@H](O)CC |&1:1|', 'CC(O)CC')).toBe('same')
    expect(between('C[C@H](O)CC |a:1|', 'C[C@H](O)CC')).toBe('same')
    expect(between(`${rr} |o1:3,5|`, racemate)).toBe('other stereoisomer')
    expect(between('C[C@H](O)CC |a:1|', 'C[C@@H](O)CC')).toBe('other hand')
    expect(between(`${rr} |a:3,5|`, racemate)).toBe('racemate')
  })

  it('go with the part that they belong to, and count for nothing where structures are read flat', () => {
    expect(read('C[C@H](O)[C@H](Cl)CC.[Na+].[Cl-] |&1:1,3|').fragments.map(part => / \|&1:\d,\d\|$/.test(part.smiles))).toEqual([
      true,
      false,
      false,
    ])
    const [one, other] = [racemate, flat].map(smiles => toolkit.parse(smiles, [], 'flat'))
    expect(one?.ok && other?.ok && one.value.identityKey === other.value.identityKey).toBe(true)
  })

  it.each([
    ['CCO |&1:1|', 'states no hand'],
    ['C[C@H](O)CC |&1:9|', 'is not there'],
    ['CCO |$R$|', 'only stereo groups'],
    ['C[C@H](O)CC |a:1,w:1.0|', 'and "w:1.0" is none'],
  ])('%s is refused, with the reason', (smiles, why) => {
    const answer = toolkit.parse(smiles)
    expect(answer.ok ? '' : `${answer.problems[0]!.code}: ${answer.problems[0]!.what}`).toMatch(new RegExp(`^smiles-stereo-groups.*${why}`))
  })
})
