import { describe, expect, it } from 'vitest'
import { readEquation } from '../../../../core/reading/equation-line.ts'
import { materialCell } from '../../../../core/reading/material-cell.ts'
import { partsOfReactionSmiles, reactionSmiles } from '../../../../core/reading/reaction-smiles.ts'
import { index, library, prepared, toolkit } from '../../../support/reader.ts'

// Hands by the rules of Cahn, Ingold and Prelog; the bundled library holds L-(+)-tartaric acid (2R,3R) and the racemate, fumaric acid alone.
const rr = 'OC(=O)[C@H](O)[C@@H](O)C(O)=O'
const ss = 'OC(=O)[C@@H](O)[C@H](O)C(O)=O'
const flat = 'OC(=O)C(O)C(O)C(O)=O'
const lye = '[Na+].[OH-]'

const termOf = (line: string) => {
  const { reactants, problems } = readEquation(line, index, toolkit)
  return { ...reactants[0]!, codes: problems.filter(one => one.where.includes(reactants[0]!.text)).map(one => one.code), problems }
}

describe('a structure that is typed is taken for a material only where hands and double bonds are the same', () => {
  it('one hand and the racemate are those', () => {
    expect(termOf(`${rr} -> water`).compound).toBe('tartaric-acid')
    expect(termOf(`${rr}>>O`).compound).toBe('tartaric-acid')
    expect(termOf(`${ss} |&1:3,5| -> water`).compound).toBe('dl-tartaric-acid')
    expect(termOf(`${ss}>>O |&1:3,5|`).compound).toBe('dl-tartaric-acid')
  })

  it.each([
    ['the other hand', ss, ['dl-tartaric-acid', 'tartaric-acid'], 'tartaric-acid is its mirror image'],
    ['no hand', flat, ['dl-tartaric-acid', 'tartaric-acid'], 'states hands or double bonds that are left open here'],
    ['meso', 'OC(=O)[C@H](O)[C@H](O)C(O)=O', ['dl-tartaric-acid', 'tartaric-acid'], 'is another stereoisomer'],
    ['maleic acid', 'OC(=O)/C=C\\C(O)=O', ['fumaric-acid'], 'has the other geometry'],
    ['butenedioic acid, neither stated', 'OC(=O)C=CC(O)=O', ['fumaric-acid'], 'left open here'],
    ['the other hand of limonene', 'CC(=C)[C@H]1CCC(C)=CC1', ['limonene'], 'its mirror image'],
  ])('%s is asked about, in a reaction SMILES and among words', (_, smiles, candidates, why) => {
    for (const line of [`${smiles}>>O`, `${smiles} -> water`]) {
      const term = termOf(line)
      expect([term.compound, term.candidates, term.codes]).toEqual([null, candidates, ['structure-other-form']])
      const problem = term.problems.find(one => one.code === 'structure-other-form')!
      expect(problem.why).toContain(why)
      expect(term.composition).not.toBeNull()
    }
  })

  it('on a charge line and over the arrow too', () => {
    const read = prepared('benzaldehyde -> benzoin', `9.2 g ${ss}`)
    expect(read.lines[0]!.material).toBeNull()
    expect(read.problems.map(one => one.code)).toContain('structure-other-form')
    const over = prepared(`O=Cc1ccccc1.O=Cc1ccccc1>${flat}>OC(C(=O)c1ccccc1)c1ccccc1`)
    expect(over.lines).toEqual([])
    expect(over.unread).toEqual([flat])
    expect(over.notes.join(' ')).toContain('tartaric-acid states hands')
  })

  it('in a cell of a table too, where it may be none of them', () => {
    const read = materialCell(index)(flat, ['line 2'])
    expect(read.ok ? '' : read.problems[0]!.what).toMatch(/may be "[^"]+" or "tartaric acid" or something the library does not hold: hands/)
    expect(materialCell(index)(rr, [])).toMatchObject({ ok: true, value: { id: 'tartaric-acid' } })
  })

  it('every bundled structure is found as itself alone, and without its marks never as one that has them', () => {
    let asked = 0
    for (const { id, smiles, kind } of library.materials.values()) {
      if (smiles === undefined || kind === 'mixture' || kind === 'feedstock') continue
      const own = toolkit.parse(smiles)
      if (!own.ok) throw new Error(id)
      expect(index.ofStructure(own.value), id).toContain(id)
      const bare = toolkit.parse(smiles.replace(/ \|.*/, '').replace(/[@/\\]/g, ''))
      if (!bare.ok || bare.value.identityKey === own.value.identityKey) continue
      asked++
      expect(index.ofStructure(bare.value), id).not.toContain(id)
      expect(index.stereoForms(bare.value), id).toContainEqual({ id, relation: 'states more' })
    }
    expect(asked).toBeGreaterThan(60)
  })
})

describe('racemates in a reaction SMILES', () => {
  it('stay racemates, each by itself, and salts stay whole', () => {
    const compounds = {
      reactants: ['C1CCCCC1', lye, 'O[C@@H]1CCCC[C@H]1O |&1:1,6|'],
      agents: ['O'],
      products: [`${rr} |&1:3,5|`, 'O[C@@H]1CCCC[C@H]1O |&1:1,6|', rr],
    }
    const written = reactionSmiles(compounds)
    expect(written).toMatch(/ \|f:1\.2,&1:9,14,&2:20,22,&3:28,33\|$/)
    expect(partsOfReactionSmiles(written, toolkit)).toEqual(compounds)
  })

  it('come without the numbers that tell which atom becomes which: a structure is one, whatever they are', () => {
    const mapped = '[CH3:1][C@H:2]([OH:3])[C@@H:4]([Cl:5])[CH3:6]>[Na+:7].[OH-:8]>[CH3:1][C:2](=[O:3])[CH2:4][CH3:6] |f:1.2,&1:1,3|'
    expect(partsOfReactionSmiles(mapped, toolkit)).toEqual({
      reactants: ['[CH3][C@H]([OH])[C@@H]([Cl])[CH3] |&1:1,3|'],
      agents: ['[Na+].[OH-]'],
      products: ['[CH3][C](=[O])[CH2][CH3]'],
    })
  })
})
