import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { trustInHazards } from '../../../core/library/trust.ts'
import { waybench, waybenchJson } from '../../support/terminal.ts'

describe('the command line on structures that a file brings', () => {
  it('read: writes what a file of reactions holds and the library does not as new materials, which its preparations are read with', async () => {
    const text = 'CCCCCO.CC(=O)O>>CC(=O)OCCCCC.O ester\nOCCCCC.CCCC(=O)O>>CCCC(=O)OCCCCC.O another\n'
    const files = new Map([['some.smi', text]])
    const listed = await waybenchJson(['read', 'some.smi'], files)
    // One alcohol written in two ways; the library knows 3-methyl-1-butanol and 3-methylbutyl acetate, isomers of the first two.
    expect(
      listed.json.newMaterials.map((one: { structures: string[]; material: { name: string } }) => [one.material.name, one.structures]),
    ).toEqual([
      ['C5H12O isomer 2', ['CCCCCO', 'OCCCCC']],
      ['C7H14O2 isomer 2', ['CC(=O)OCCCCC']],
      ['C9H18O2', ['CCCC(=O)OCCCCC']],
    ])
    // CAS 71-41-0, 628-63-7, 540-18-1 in the PubChem database: 88.15, 130.18, 158.24 g/mol.
    for (const [at, mass] of [88.15, 130.18, 158.24].entries()) expect(listed.json.newMaterials[at].molarMass).toBeCloseTo(mass, 1)
    const written = await waybench(
      ['read', 'some.smi', '--new-materials', '--called', '1=pentan-1-ol', '--called', '2=pentyl acetate'],
      files,
    )
    expect(written.code).toBe(0)
    const [alcohol, ester] = JSON.parse(written.out).materials
    // Annex VI of Regulation (EC) 1272/2008, index 603-200-00-1.
    expect(alcohol).toMatchObject({ id: 'pentan-1-ol', formula: 'C5H12O', hazards: { codes: expect.arrayContaining(['H226', 'H332']) } })
    expect(ester.hazards).toBeUndefined()
    // They were read in the Regulation, whoever entered the structure.
    expect(trustInHazards(alcohol)).toBe('seen')
    expect(written.err).toMatch(/^pentan-1-ol .*confirm them.*\npentyl acetate .*hazards unknown/)
    const folder = mkdtempSync(join(tmpdir(), 'waybench-new-'))
    try {
      const file = join(folder, 'new.json')
      writeFileSync(file, written.out)
      const preparation = new Map([
        ['p.txt', `${text.split(' ')[0]}\npentan-1-ol 8.82 g\nacetic acid {acetic-acid} 20 mL\nisolated 10.4 g`],
      ])
      const { json, code } = await waybenchJson(['read', 'p.txt', '--own', file], preparation)
      expect(code).toBe(0)
      // 0.1 mol of the alcohol to 13.02 g of ester at most.
      expect(json.transformation).toMatchObject({ limiting: 'pentan-1-ol', mainProduct: 'pentyl-acetate' })
      expect(json.theoreticalG).toBeCloseTo(13.02, 1)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
    // A chemical of Schedule 1 of the Chemical Weapons Convention (sarin) ends it, and nothing is written.
    const stopped = await waybench(
      ['read', 'bad.smi', '--new-materials'],
      new Map([['bad.smi', 'CC(C)O.CP(=O)(F)F>>CC(C)OP(C)(=O)F.F x\nCCO>>CC=O.[HH] y\n']]),
    )
    expect(stopped.code).toBe(1)
    expect(stopped.out).toBe('')
    expect((await waybench(['read', 'some.smi', '--called', '9=x'], files)).err).toMatch(
      /new material 9\. The file brings three new materials/,
    )
    expect((await waybench(['read', 'some.smi', '--called', '1=x', '--called', '1=y'], files)).err).toMatch(/new material 1 twice/)
    const unbalanced = await waybench(
      ['read', 'u.smi', '--new-materials'],
      new Map([['u.smi', 'CCCCCO>>CCCCC=O one\nCCO.CC(=O)O>>CCOC(C)=O.O two\n']]),
    )
    expect([unbalanced.code, JSON.parse(unbalanced.out).materials.length]).toEqual([0, 2])
    expect(unbalanced.err).toMatch(/reaction 1\b.*does not balance/)
    // Of a preparation there is nothing to name: it is the option that was given which is told.
    for (const words of [['--new-materials'], ['--called', '1=x']]) {
      const refused = await waybenchJson(['read', 'p.txt', ...words], new Map([['p.txt', 'benzoin -> benzil\n2 g benzoin']]))
      expect([refused.code, refused.problems[0].where[1]]).toEqual([2, words[0]])
    }
  })
})
