import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { MainModule, Mol } from '@rdkit/rdkit'
import { beforeAll, describe, expect, it } from 'vitest'
import { bundled } from '../../server/library/bundled.ts'
import { bundledTables, materialWith, toolkit, traitsWith } from '../support/hazards.ts'
import { rdkitModule } from '../support/rdkit.ts'
import { root } from '../support/tree.ts'

const tables = bundledTables()
const materials = [...bundled().library.materials.values()].filter(material => material.smiles !== undefined)
/** 65 structures with the groups they belong to, written by hand from the titles of EPA-600/2-80-076. */
const panel: readonly { name: string; smiles: string; groups: number[] }[] = JSON.parse(
  readFileSync(join(root, 'tests/support/reactivity-panel.json'), 'utf8'),
)

let rdkit: MainModule
beforeAll(async () => {
  rdkit = await rdkitModule()
})

const patterns = new Map<string, Mol>()
function shownTo(molecule: Mol, smarts: string): boolean {
  let pattern = patterns.get(smarts)
  if (!pattern) {
    pattern = rdkit.get_qmol(smarts)!
    patterns.set(smarts, pattern)
  }
  return molecule.get_substruct_match(pattern) !== '{}'
}
const groupsBy = (shows: (smarts: string) => boolean) =>
  tables.reactivityGroups.filter(group => group.smartsAny.some(shows) && !group.smartsNone.some(shows)).map(group => group.number)
function byBoth(smiles: string): { ours: readonly number[]; rdkits: readonly number[] } {
  const read = toolkit.parse(smiles, [], 'flat')
  const molecule = rdkit.get_mol(smiles)
  if (!read.ok || !molecule) throw new Error(smiles)
  const rdkits = groupsBy(smarts => shownTo(molecule, smarts))
  molecule.delete()
  return { ours: groupsBy(smarts => toolkit.matches(read.value, smarts)), rdkits }
}

describe('reactivity groups by substructure, against RDKit', () => {
  it('RDKit reads our patterns as they are meant: the panel comes out as written by hand', () => {
    expect(panel.length).toBeGreaterThanOrEqual(65)
    for (const { name, smiles, groups } of panel) expect(byBoth(smiles).rdkits, name).toEqual(groups)
  })
  it('our toolkit misses no group on the panel', () => {
    for (const { name, smiles, groups } of panel) expect(byBoth(smiles).ours, name).toEqual(expect.arrayContaining(groups))
  })
  it('our toolkit misses no group on any material of the library, and adds one on few', () => {
    const added: string[] = []
    for (const { id, smiles } of materials) {
      const { ours, rdkits } = byBoth(smiles!)
      expect(
        rdkits.filter(group => !ours.includes(group)),
        id,
      ).toEqual([])
      for (const group of ours) if (!rdkits.includes(group)) added.push(`${id} ${group}`)
    }
    // Where it differs it is the stricter: valence marks of pyrrole nitrogen, of boron and iodine, and rings of lactones and uric acid
    // that it does not take for aromatic. A missed group would be a danger untold; one too many is a warning too many.
    expect(materials.length).toBeGreaterThanOrEqual(650)
    expect(added.length).toBeLessThanOrEqual(18)
    expect(new Set(added.map(one => one.split(' ')[1]))).toEqual(new Set(['6', '7', '8', '13', '14', '29', '104', '105']))
  })
})

describe('screening by structure, against RDKit', () => {
  // Canonical SMILES without stereochemistry: the identity that the rule of the lists names.
  const flatKey = (smiles: string): string => {
    const molecule = rdkit.get_mol(smiles.replace(/[@/\\]/g, ''))
    if (!molecule) throw new Error(smiles)
    const key = molecule.get_smiles()
    molecule.delete()
    return key
  }
  it('finds exactly the rows whose structure RDKit calls the same, for every material by its structure alone', () => {
    const bare = materials.map(({ id, smiles }) => materialWith({ id: `only-${id}`, name: 'no name', smiles: smiles! }))
    const traits = traitsWith(bare)
    const rows = tables.regulated.entries.filter(entry => entry.smiles !== undefined)
    const keyed = rows.map(row => ({ row, key: flatKey(row.smiles!) }))
    let hits = 0
    for (const { id, smiles } of bare) {
      const key = flatKey(smiles!)
      const expected = keyed.filter(one => one.key === key).map(({ row }) => `${row.category}: ${row.name}`)
      const found = traits
        .get(id)!
        .regulated.filter(match => match.matchedBy === 'structure' && / is listed/.test(match.reason) && !/salt of/.test(match.reason))
      expect(found.map(match => `${match.category}: ${match.reason.replace(/ is listed.*$/, '')}`).sort(), id).toEqual(expected.sort())
      hits += found.length
    }
    expect(hits).toBeGreaterThan(30)
  })
})
