import type { MainModule } from '@rdkit/rdkit'
import { beforeAll, describe, expect, it } from 'vitest'
import { groupedSmiles, mirrored } from '../../core/chemistry/stereo-groups.ts'
import { bundled } from '../../server/library/bundled.ts'
import { rdkitModule } from '../support/rdkit.ts'

// Law: what a name says of hands, of cis and trans, and what the SMILES beside it says are one. The labels are RDKit's (BSD licence), by the
// rules of Cahn, Ingold and Prelog; the table has those of the systematic names (IUPAC 2013 recommendations, P-9), from memory.

/**
 * Labels of the centres and, behind a bar, of the double bonds: with the locants of the systematic name, in the order in which the SMILES
 * writes the atoms.
 */
const labels: Readonly<Record<string, string>> = {
  'alpha-glucose-pentaacetate': '2R 6R 5R 4S 3R',
  'beta-glucose-pentaacetate': '2R 6S 5R 4S 3R',
  'cellobiose-octaacetate': '2R 6R 5R 4S 3R 2S 6R 5R 4S 3R',
  'diacetyl-tartaric-anhydride': '3R 4R',
  'diethyl-tartrate': '2R 3R',
  'dl-tartaric-acid': '2R 3R',
  'tartaric-acid': '2R 3R',
  'meso-dibromosuccinic-acid': '2S 3R',
  'meso-stilbene-dibromide': '1S 2R',
  hydrobenzoin: '1S 2R',
  'mucic-acid': '4S 3R 2S 5R',
  'trans-1-2-dibromocyclohexane': '1R 2R',
  'trans-cyclohexane-1-2-diol': '1R 2R',
  'norbornene-dicarboxylic-anhydride': '7aS 3aR 4S 7R',
  borneol: '4R 1R 2S',
  isoborneol: '4R 1R 2R',
  'isobornyl-acetate': '2R 4R 1R',
  'camphor-10-sulfonic-acid': '4R 1S',
  carvone: '5R',
  's-carvone': '5S',
  limonene: '4R',
  menthol: '5R 2S 1R',
  'menthyl-acetate': '5R 2S 1R',
  menthone: '5R 2S',
  'menthoxyacetic-acid': '2S 5R 1R',
  'menthoxyacetyl-chloride': '2S 5R 1R',
  betulin: '1R 3aS 5aR 13aR 11bR 11aR 9S 7aR 5bR 13bR',
  hesperidin: '2S 2S 6R 2R 6S 5R 4R 3R 5S 4S 3R',
  'shikimic-acid': '5R 3R 4S',
  glucose: '5R 2R 3S 4S',
  galactose: '5R 2R 3S 4R',
  cystine: '2R 2R',
  'glutamic-acid': '2S',
  'glutamic-acid-hydrochloride': '2S',
  'ricinoleic-acid': '12R | 9Z',
  'sodium-ricinoleate': '12R | 9Z',
  'castor-oil': '12R 12R 12R | 9Z 9Z 9Z',
  'olive-oil': '| 9Z 9Z 9Z',
  'oleic-acid': '| 9Z',
  'sodium-oleate': '| 9Z',
  'methyl-oleate': '| 9Z',
  'erucic-acid': '| 13Z',
  geraniol: '| 2E',
  'geranyl-acetate': '| 2E',
  nerol: '| 2Z',
  'alpha-ionone': '| 3E',
  'beta-ionone': '| 3E',
  'aconitic-acid': '| 1E',
  'fumaric-acid': '| 2E',
  'mesaconic-acid': '| 2E',
  'citraconic-acid': '| 2Z',
  'cinnamic-acid': '| 2E',
  '3-nitrocinnamic-acid': '| 2E',
  'ferulic-acid': '| 2E',
  'furylacrylic-acid': '| 2E',
  'methyl-cinnamate': '| 2E',
  'ethyl-cinnamate': '| 2E',
  cinnamaldehyde: '| 2E',
  'cinnamyl-alcohol': '| 2E',
  benzalacetone: '| 3E',
  dehydrozingerone: '| 3E',
  dibenzalacetone: '| 1E 4E',
  chalcone: '| 2E',
  'trans-stilbene': '| 1E',
  '1-4-diphenylbutadiene': '| 1E 3E',
  // Oxime hydroxyl and hydrogen on one side were called syn: phenyl and hydroxyl on opposite ones.
  benzaldoxime: '| 1E',
  // The ring carbonyls are opposite: trans, as in the crystal.
  indigo: '| 2E',
  // Azo compounds at rest are trans.
  'methyl-orange': '| 1E',
  'orange-ii': '| 1E',
  'para-red': '| 1E',
  'sudan-i': '| 1E',
}

/** Of which a simpler compound with a known name has the hands: its SMILES follows from the record's by these words. */
const derived: Readonly<
  Record<string, { readonly words: readonly (readonly [string, string])[]; readonly labels: string; readonly name: string }>
> = {
  cellulose: {
    words: [
      ['*O', 'O'],
      ['(*)', '(OC)'],
    ],
    labels: '3S 4S 5R 6R 2R',
    name: 'methyl beta-D-glucopyranoside',
  },
  chitosan: {
    words: [
      ['*O', 'O'],
      ['(*)', '(OC)'],
    ],
    labels: '3S 4R 5R 6R 2R',
    name: 'methyl 2-amino-2-deoxy-beta-D-glucopyranoside',
  },
  'glucose-phenylosazone': { words: [['NNc1ccccc1', 'O']], labels: '5R 4R 3S', name: 'D-arabino-hexos-2-ulose' },
}

/** Sold and named as both hands, or without a hand, in one relative configuration. */
const bothHands = new Set(
  'dl-tartaric-acid trans-1-2-dibromocyclohexane trans-cyclohexane-1-2-diol borneol isoborneol isobornyl-acetate camphor-10-sulfonic-acid'.split(
    ' ',
  ),
)

/** Names that say more of hands than the SMILES beside them, or words that only look like it. */
const otherwise: Readonly<Record<string, string>> = {
  'maleic-anhydride': 'the ring leaves its double bond no choice',
  dicyclopentadiene: 'the CAS number leaves endo and exo open; endo is what it mostly is',
  'chalcone-epoxide': 'the CAS number leaves cis and trans open; trans is what it mostly is',
  'copper-glycinate-monohydrate': 'cis stands for places at the metal, which its SMILES as ions does not hold',
  tetraphenylporphyrin: 'meso is a place of the porphyrin ring',
  'zinc-tetraphenylporphyrin': 'meso is a place of the porphyrin ring',
}

const word = /\b(?:cis|trans|syn|anti|endo|exo|meso|rac|racemic)\b|(?:^|[\s(,-])(?:[RSEZ]|[DLdl]|DL)-|\((?:\d*[a-z]?[RSEZ],?)+\)|\([+-]\)|±/
const saysBoth = /\brac(?:emic)?\b|±|(?:^|[\s(,-])DL-/

const records = [...bundled().library.materials.values()].filter(
  one => one.smiles !== undefined && one.kind !== 'mixture' && one.kind !== 'feedstock',
)
const namesOf = (id: string): readonly string[] => {
  const one = bundled().library.materials.get(id)!
  return [one.name, ...(one.synonyms ?? [])]
}
const smilesOf = (id: string): string => bundled().library.materials.get(id)!.smiles!

let rdkit: MainModule
beforeAll(async () => {
  rdkit = await rdkitModule()
})

const stereoOf = (smiles: string) => {
  const { CIP_atoms, CIP_bonds } = JSON.parse(rdkit.get_mol(smiles)!.get_stereo_tags()) as {
    CIP_atoms: [number, string][]
    CIP_bonds: [number, number, string][]
  }
  const letter = (label: string) => label.replace(/[()]/g, '')
  const stated = CIP_atoms.filter(([, label]) => letter(label) !== '?')
  return {
    atoms: stated.map(([atom]) => atom),
    open: CIP_atoms.length - stated.length,
    told: [stated.map(one => letter(one[1])), CIP_bonds.map(one => letter(one[2]))].map(list => list.join(' ')).join(' | '),
  }
}
const lettersIn = (written: string): string => {
  const [atoms = '', bonds = ''] = written.split('|').map(part => part.trim().replace(/\d+[a-z]?/g, ''))
  return `${atoms} | ${bonds}`
}

describe('the hand that a record is named by is the hand of its structure', () => {
  it('where a structure states hands or double bonds: those of the systematic name', () => {
    const stating = records.filter(one => stereoOf(one.smiles!).told !== ' | ').map(one => one.id)
    expect(stating.sort()).toEqual([...Object.keys(labels), ...Object.keys(derived)].sort())
    for (const [id, written] of Object.entries(labels)) expect(stereoOf(smilesOf(id)).told, id).toBe(lettersIn(written))
  })

  it.each(Object.entries(derived))('%s: as those of a simpler compound', (id, { words, labels: written, name }) => {
    const smiles = words.reduce((text, [from, to]) => text.replaceAll(from, to), smilesOf(id))
    expect(stereoOf(smiles).told, name).toBe(lettersIn(written))
  })

  it('where a name has a word on hands, the structure has its mark', () => {
    const wordless = records.filter(
      ({ id }) => namesOf(id).some(name => word.test(name)) && !(id in labels) && !(id in derived) && !(id in otherwise),
    )
    // A racemate with one centre, or with an axis alone, is written flat: no hand is stated.
    for (const { id, smiles } of wordless) {
      expect(
        namesOf(id).some(name => saysBoth.test(name)),
        id,
      ).toBe(true)
      expect(stereoOf(smiles!).open, id).toBeLessThanOrEqual(1)
    }
    expect(wordless.map(one => one.id).sort()).toEqual(['1-1-bi-2-naphthol', '2-heptanol', '2-octanol', 'lactic-acid'])
  })

  it('labels in the names themselves, wherever one has them', () => {
    let seen = 0
    for (const { id, smiles } of records)
      for (const name of namesOf(id)) {
        const [, inBrackets] = /\(((?:\d*[a-z]?[RSEZ],?)+)\)/.exec(name) ?? []
        if (inBrackets === undefined) continue
        seen++
        const [centres = '', bonds = ''] = stereoOf(smiles!).told.split(' | ')
        const wanted = inBrackets.split(',').map(one => one.at(-1)!)
        const own = [
          ...(wanted.some(one => /[RS]/.test(one)) ? centres.split(' ') : []),
          ...(wanted.some(one => /[EZ]/.test(one)) ? bonds.split(' ') : []),
        ]
        expect(own.sort(), `${id}: ${name}`).toEqual(wanted.sort())
      }
    expect(seen).toBeGreaterThan(25)
  })

  it('both hands, where the name says both or none of a compound with a relative configuration; else never', () => {
    for (const { id, smiles } of records) {
      const { groups } = groupedSmiles(smiles!)
      const isBoth = bothHands.has(id)
      expect(groups.flatMap(group => group.atoms).sort(), id).toEqual(isBoth ? [...stereoOf(smiles!).atoms].sort() : [])
      if (isBoth) expect(rdkit.get_mol(smiles!)!.get_cxsmiles(), id).toMatch(/\|&1:\d+(?:,\d+)+\|$/)
      if (stereoOf(smiles!).atoms.length > 0 && namesOf(id).some(name => saysBoth.test(name))) expect(isBoth, id).toBe(true)
    }
  })

  it('meso: its own mirror image', () => {
    const meso = records.filter(({ id }) => namesOf(id).some(name => /\bmeso-/.test(name)) && !(id in otherwise))
    expect(meso.map(one => one.id).sort()).toEqual(['hydrobenzoin', 'meso-dibromosuccinic-acid', 'meso-stilbene-dibromide', 'mucic-acid'])
    for (const { id, smiles } of [...meso, { id: 'endo', smiles: smilesOf('norbornene-dicarboxylic-anhydride') }])
      expect(rdkit.get_mol(mirrored(smiles!))!.get_smiles(), id).toBe(rdkit.get_mol(smiles!)!.get_smiles())
  })
})
