import { readFileSync } from 'node:fs'
import type { MainModule } from '@rdkit/rdkit'
import { beforeAll, describe, expect, it } from 'vitest'
import type { Material } from '../../core/library/material.ts'
import { bundled } from '../../server/library/bundled.ts'
import { rdkitModule } from '../support/rdkit.ts'

// Law: a structure is that of its names. The names were read by OPSIN 2.7.0 (University of Cambridge, MIT licence), a converter of chemical
// names that shares no code with the toolkit here; whether two structures are one is RDKit's word (BSD licence). A wrong isomer has the right
// formula, so that no check of formulas finds it.

const namesRead: { readings: Record<string, string> } = JSON.parse(
  readFileSync(new URL('../support/names-read.json', import.meta.url), 'utf8'),
)
const readings = new Map(Object.entries(namesRead.readings))

/** Names that OPSIN takes for something else: several compounds, a part name by name, or another form in which the compound is counted. */
const otherwise = new Map([
  ['paraformaldehyde', 'the polymer, counted here as its monomer'],
  ['anthracene-maleic-anhydride-adduct', 'a bridge and an anhydride in one name'],
  ['diacetyl-tartaric-anhydride', 'acetyl on carbon'],
  ['malachite-green-chloride', 'the bracket is taken for a name of its own'],
  ['oxalic-acid-1m', 'made up from the dihydrate, whose water is in the structure'],
  ['carbon-monoxide', 'carbon with a lone double bond'],
  ['xylene', 'the mixture, counted here as the 1,3 isomer; OPSIN takes the 1,2'],
  ['galactose', 'the open chain, the ring here'],
  ['glucose', 'the open chain, the ring here'],
])
/** Where an older name says more than its record (crotonic is trans), or less (the geometry and not the hand). */
const statedInPart = new Set(['ethyl-3-anilinocrotonate', 'ricinoleic-acid'])

const metals = /\[(?:Na|K|Ca|Mg|Al|Cu|Fe|Zn|Co|Cr|Mn|Ni|Pb|Hg|Pt|Pd|Sn|Ag|Ba|W|Li|Ti|Ce|NH4)[+\-\d]*\]/

const namesOf = ({ name, synonyms = [] }: Material): readonly string[] =>
  [name, ...synonyms].flatMap(one => {
    const bracketed = /^(.*) \((.*)\)$/.exec(one)
    return bracketed === null ? [one] : [one, bracketed[1]!, bracketed[2]!]
  })

let rdkit: MainModule
beforeAll(async () => {
  rdkit = await rdkitModule()
})

/** RDKit's one way to write it; `flat` = without hands and geometry. */
function written(smiles: string, flat: boolean): string {
  const [plain = ''] = smiles.split(' |')
  const molecule = rdkit.get_mol(flat ? plain.replace(/[@/\\]/g, '') : plain)!
  return molecule.get_smiles()
}

const organic = [...bundled().library.materials.values()].filter(
  ({ smiles = '' }) => /c|C(?![aeloru])/.test(smiles) && !metals.test(smiles),
)
const read = organic.flatMap(material => {
  const structures = namesOf(material).flatMap(name => readings.get(name) ?? [])
  return structures.length === 0 ? [] : [{ material, smiles: material.smiles!, structures }]
})

describe('the structures of the bundled library', () => {
  it('are those of their names, as an independent reader of names has them', () => {
    const apart = read.filter(({ smiles, structures }) => !structures.some(one => written(one, true) === written(smiles, true)))
    expect(apart.map(({ material }) => material.id).filter(id => !otherwise.has(id))).toEqual([])
    expect([...otherwise.keys()].filter(id => !apart.some(({ material }) => material.id === id))).toEqual([])
    expect(read.length - apart.length).toBeGreaterThan(350)
  })

  it('have the hands and the geometry that their names state', () => {
    const stated = read.flatMap(({ material, smiles, structures }) =>
      smiles.includes(' |')
        ? []
        : structures
            .filter(one => /[@/\\]/.test(one) && written(one, true) === written(smiles, true))
            .map(one => ({ id: material.id, one, smiles })),
    )
    const against = stated.filter(({ one, smiles }) => written(one, false) !== written(smiles, false))
    expect([...new Set(against.map(({ id }) => id))].filter(id => !statedInPart.has(id))).toEqual([])
    expect(new Set(stated.map(({ id }) => id)).size).toBeGreaterThan(40)
  })
})
