import { readdirSync, readFileSync } from 'node:fs'
import type { MainModule } from '@rdkit/rdkit'
import * as OCL from 'openchemlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { toolkitFrom } from '../../../../core/chemistry/openchemlib.ts'
import { rdkitModule } from '../../../support/rdkit.ts'

// Oracle: RDKit, an independent chemistry toolkit, which refuses what it cannot kekulise.

const toolkit = toolkitFrom(OCL)
let rdkit: MainModule
beforeAll(async () => {
  rdkit = await rdkitModule()
})

const theyRead = (smiles: string): boolean => {
  const molecule = rdkit.get_mol(smiles)
  molecule?.delete()
  return molecule !== null
}
const problemOf = (smiles: string) => {
  const read = toolkit.parse(smiles)
  return read.ok ? null : read.problems[0]!
}

const broken = [
  ...['c1cncn1', 'c1ccc2nccc2c1', 'c1ccnc1', 'c1ccccc1c', 'c1cccc1', 'cc', 'c', 'n', 'o', 'Cc', 'CCc', 'Ccc', 'Cc=cC', 'c1ccccc1-c'],
  ...['c1ccc[cH]1', 'n1cccc1', '[n]1cccc1', 'c1cc[nH]cc1', '[nH]1ccccc1', 'O=c1ccncc1', 'c1cpcc1', 'c12cccc1cccc2', 'c1nnnn1', 'c1cc1'],
  ...['c1ccc2c(c1)c1ccccc1n2', 'n1cnc2c1ncnc2N', 'c1ccccc1[nH]', 'c1[nH]c[nH]c1', 'c1ccccc1:c', 'c1ccc2c(c1)Cc1ccccc1c2', '[2H]c1cccc1'],
  ...['c1ccc2ncnc2c1', 'c1ccc2cc3cc4cc5cc6cc7cc8cc9cccc9cc8cc7cc6cc5cc4cc3cc2c1'],
]
const sound = [
  ...['c1c[nH]cn1', 'c1ccc2[nH]ccc2c1', 'c1cc[nH]c1', 'c1ccccc1C', 'c1ccncc1', 'c1ccc2c(c1)cccn2', 'O=c1cc[nH]cc1', 'O=n1ccccc1'],
  ...['Cn1cccc1', 'c1ccsc1', 'b1ccccc1', '[se]1cccc1', 'c1ccc2cccc2cc1', 'c1nn[nH]n1', 'o1cccc1', '[cH-]1cccc1', 'c1ccccccc1', 'c1ccc1'],
  ...['[CH2]', 'C[N]C', 'C1=CC=C[CH]1', 'c1cc2ccc3cccc4ccc(c1)c2c34', 'O=c1cccc1', 'c1cc2cccc3c2c(c1)CC3', '[2H]c1ccccc1', '[H]c1ccccc1'],
  ...[
    'C[n+]1ccccc1',
    '[O-][n+]1ccccc1',
    'c1ccc(cc1)-c1ccccc1',
    'CC1=CC(=O)c2ccccc2C1=O',
    'Cn1cnc2c1c(=O)n(C)c(=O)n2C',
    'N[C@@H](Cc1c[nH]cn1)C(=O)O',
  ],
]

const folder = new URL('../../../../routes-data/materials/', import.meta.url)
const library: readonly string[] = readdirSync(folder)
  .filter(name => name.endsWith('.json'))
  .flatMap(name => JSON.parse(readFileSync(new URL(name, folder), 'utf8')).materials)
  .flatMap((material: { smiles?: string }) => (material.smiles === undefined ? [] : [material.smiles]))

describe('aromatic SMILES that cannot be given double bonds', () => {
  it('are refused, as the other toolkit refuses them', () => {
    for (const smiles of broken) {
      expect(theyRead(smiles), `RDKit on ${smiles}`).toBe(false)
      expect(problemOf(smiles)?.code, smiles).toBe('smiles-aromatic')
      expect(toolkit.parse(smiles, [], 'flat').ok, `${smiles}, flat`).toBe(false)
    }
  })

  it('are told from those that can', () => {
    for (const smiles of sound) {
      expect(theyRead(smiles), `RDKit on ${smiles}`).toBe(true)
      expect(problemOf(smiles), smiles).toBeNull()
    }
  })

  it('are none of the library, written here or by the other toolkit; without a hydrogen on nitrogen all are', () => {
    const aromatic = library.filter(smiles => /[a-z]/.test(smiles.replace(/\[[^\]]*\]|Cl|Br/g, '')))
    expect(aromatic.length).toBeGreaterThan(200)
    const off = aromatic.flatMap(smiles => {
      const molecule = rdkit.get_mol(smiles)!
      const theirs = smiles.includes('|') ? molecule.get_cxsmiles() : molecule.get_smiles()
      molecule.delete()
      const read = toolkit.parse(smiles)
      const ours = read.ok ? read.value.canonicalSmiles : smiles
      return [smiles, theirs, ours].filter(one => problemOf(one) !== null)
    })
    expect(off).toEqual([])
    const bare = library.filter(smiles => smiles.includes('[nH]')).map(smiles => smiles.replace('[nH]', 'n'))
    expect(bare.length).toBeGreaterThan(10)
    expect(bare.filter(smiles => theyRead(smiles) !== (problemOf(smiles) === null))).toEqual([])
  })

  it('are cured by what the problem says to write, where it says so', () => {
    const cures = broken.flatMap(smiles =>
      [...problemOf(smiles)!.cure.matchAll(/(?:: | or )(\S+?)(?=\.? or|\.$)/g)].map(([, cure]) => cure!),
    )
    expect(cures).toEqual(expect.arrayContaining(['c1c[nH]cn1', 'c1ccc2[nH]ccc2c1', 'c1cc[nH]c1', 'c1ccccc1C', 'O=c1cc[nH]cc1']))
    for (const cure of cures) {
      expect(theyRead(cure), cure).toBe(true)
      expect(problemOf(cure), cure).toBeNull()
    }
    expect(problemOf('c1cccc1')!.cure).toContain('C1=CC=CC1')
  })
})
