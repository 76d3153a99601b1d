import type { MainModule, Mol } from '@rdkit/rdkit'
import { beforeAll, describe, expect, it } from 'vitest'
import { kindOf } from '../../../../server/depict/depiction-of.ts'
import { drawingOf } from '../../../../server/depict/drawing-of.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { formulaOf, rdkitModule } from '../../../support/rdkit.ts'
import { molfileOf } from '../../../support/scheme/molfile.ts'

// Elements and small inorganics are written as formulas and never drawn.
const materials = [...bundled().library.materials.values()].filter(material => material.smiles && kindOf(material) === 'structure')

let rdkit: MainModule
beforeAll(async () => {
  rdkit = await rdkitModule()
})

function read(text: string): Mol {
  const molecule = rdkit.get_mol(text)
  if (!molecule) throw new Error(`RDKit cannot read ${text}`)
  return molecule
}

describe('a drawing, read back by RDKit', () => {
  it('shows the very compound, stereochemistry included, for every bundled structure', () => {
    const wrong: string[] = []
    let wedged = 0
    for (const { id, smiles } of materials) {
      const drawing = drawingOf(smiles!)
      if (drawing.bonds.some(bond => bond.wedge)) wedged++
      // A drawing cannot leave open which way round a double bond is; where the library does, the comparison does too.
      const known = smiles!.includes('/') || smiles!.includes('\\')
      const plain = (molecule: Mol) => (known ? molecule.get_smiles() : molecule.get_smiles().replaceAll(/[/\\]/g, ''))
      const same = (molecule: Mol) => read(plain(molecule)).get_smiles()
      if (same(read(molfileOf(drawing))) !== same(read(smiles!))) wrong.push(id)
    }
    expect(wrong).toEqual([])
    expect(materials.length).toBeGreaterThan(380)
    expect(wedged).toBeGreaterThan(25)
  })

  it('holds the formula: hydrogens written on labels are the ones RDKit counts', () => {
    for (const { id, smiles } of materials) {
      const drawing = drawingOf(smiles!)
      const hydrogens = drawing.atoms.reduce((sum, atom) => sum + (atom.h ?? 0) + (atom.el === 'H' ? 1 : 0), 0)
      const formula = formulaOf(read(smiles!))
      const counted = Number(/H(?![a-z])(\d*)/.exec(formula)?.[0].slice(1) || (/H(?![a-z])/.test(formula) ? 1 : 0))
      expect(hydrogens, id).toBe(counted)
    }
  })
})

describe('its shape', () => {
  it('keeps one bond length: half of all bonds are 13.5 px, and none of a plain ring or chain strays', () => {
    const { bonds, atoms } = drawingOf('O=C(C(=O)c1ccccc1)c1ccccc1')
    for (const { a, b } of bonds) expect(Math.hypot(atoms[a]!.x - atoms[b]!.x, atoms[a]!.y - atoms[b]!.y)).toBeCloseTo(13.5, 0)
  })

  it('stands about its centre, in the size it states, with its highest atom at the top', () => {
    for (const { id, smiles } of materials) {
      const { atoms, w, h, topX, topY } = drawingOf(smiles!)
      for (const { x, y } of atoms) {
        expect(Math.abs(x), id).toBeLessThanOrEqual(w / 2)
        expect(Math.abs(y), id).toBeLessThanOrEqual(h / 2)
        expect(y, id).toBeGreaterThanOrEqual(topY - 0.5)
      }
      expect(
        atoms.some(({ x, y }) => x === topX && y === topY),
        id,
      ).toBe(true)
    }
  })

  it('lies flat: chains are wider than high', () => {
    // Benzoin and benzil come bent from the toolkit.
    for (const smiles of ['OC(C(=O)c1ccccc1)c1ccccc1', 'O=C(C(=O)c1ccccc1)c1ccccc1', 'OC(=O)CCCCCCCCC(=O)O', 'O=C(Cc1ccccc1)Cc1ccccc1']) {
      const { w, h } = drawingOf(smiles)
      expect(w / h, smiles).toBeGreaterThan(1.8)
    }
  })

  it('is the same each time, and for the same compound written otherwise', () => {
    expect(drawingOf('c1ccccc1C=O')).toBe(drawingOf('O=Cc1ccccc1'))
  })

  it('refuses text without atoms', () => {
    expect(() => drawingOf('')).toThrow(RangeError)
  })
})
