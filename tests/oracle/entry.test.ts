import type { MainModule } from '@rdkit/rdkit'
import { beforeAll, describe, expect, it } from 'vitest'
import { parseFormula } from '../../core/chemistry/formula.ts'
import { identified } from '../../server/library/identified.ts'
import { agentsOf, reactionSmilesOf, rxnOf } from '../../server/library/reaction-files.ts'
import type { Workshop } from '../../server/library/workshop.ts'
import { bundledWorkshop } from '../support/app.ts'
import { formulaOf, rdkitModule } from '../support/rdkit.ts'
import { library } from '../support/reader.ts'

// Second opinion: RDKit (BSD licence) on what the entry pages tell of a structure, and on the balance of what is written as reaction SMILES.

let rdkit: MainModule
let workshop: Workshop
beforeAll(async () => {
  rdkit = await rdkitModule()
  workshop = await bundledWorkshop()
})

const sorted = (formula: string): string => {
  const read = parseFormula(formula)
  if (!read.ok) throw new Error(formula)
  return [...read.value.counts]
    .sort()
    .map(([symbol, count]) => (count === 1 ? symbol : `${symbol}${count}`))
    .join('')
}

/** Structures that the bundled library does not hold, as a newcomer might enter them. */
const strangers = [
  'Cc1ccc(cc1)C(=O)C(O)c1ccc(C)cc1',
  'Cc1ccc(cc1)C(=O)C(=O)c1ccc(C)cc1',
  'Cc1ccc(cc1)-c1nc2ccccc2nc1-c1ccc(C)cc1',
  'O=C(c1ccccc1)C(=O)c1ccc(Br)cc1',
  'COc1cc(C=NNC(N)=O)ccc1O',
  'CC1(C)OCC(O1)CO',
  'O=C1NC(=O)C(N1)(c1ccccc1)c1ccccc1',
  'CCCCCCCCCC(=O)OCC',
  'OC(=O)CCCCCCCCC(=O)O',
  '[K+].[O-]C(=O)c1ccccc1O',
]

describe('a structure as it is entered', () => {
  it.each(strangers)('%s', smiles => {
    const told = identified(workshop, { name: 'a stranger', smiles, formula: '', cas: '', form: 'solid' })
    const molecule = rdkit.get_mol(smiles)!
    expect(told.problems).toEqual([])
    expect(sorted(told.material.formula!)).toBe(formulaOf(molecule))
    // Atomic weights: CIAAW 2021 here, an earlier table there; they differ in the third decimal.
    expect(Math.abs(told.molarMass! - JSON.parse(molecule.get_descriptors()).amw)).toBeLessThan(0.02)
    molecule.delete()
  })

  it('is found under whatever way it is written', () => {
    for (const id of ['benzoin', 'benzil', 'lophine', 'isopentyl-acetate', 'adipic-acid']) {
      const molecule = rdkit.get_mol(library.materials.get(id)!.smiles!)!
      // RDKit writes it its own way, aromatic and without; both must lead back.
      for (const smiles of [molecule.get_smiles(), rdkit.get_mol(molecule.get_molblock())!.get_smiles()]) {
        const told = identified(workshop, { name: '', smiles, formula: '', cas: '', form: 'solid' })
        expect(
          told.matches.map(one => [one.id, one.by]),
          smiles,
        ).toContainEqual([id, 'structure'])
      }
      molecule.delete()
    }
  })
})

describe('equations written as reaction SMILES', () => {
  it('balance by the other toolkit’s count of atoms', () => {
    let compared = 0
    const odd: string[] = []
    for (const step of library.transformations.values()) {
      // Metals written bare get hydrogens from one toolkit and none from the other; open ends have no count.
      const smiles = [...step.reactants, ...step.products].map(one => library.materials.get(one.compound)!.smiles ?? '*')
      if (step.kind !== 'reaction' || smiles.some(one => one.includes('*') || /\[[A-Z][a-z]?\]/.test(one))) continue
      const written = reactionSmilesOf(library, step)
      if (written === null) continue
      const [left, right] = written.split(/>[^>]*>/).map(side => {
        const molecule = rdkit.get_mol(side)
        const formula = molecule === null ? null : formulaOf(molecule)
        molecule?.delete()
        return formula
      })
      if (left === null || right === null) continue
      if (left !== right) odd.push(`${step.id}: ${left} ${right}`)
      compared++
    }
    expect(odd).toEqual([])
    expect(compared).toBeGreaterThanOrEqual(200)
  })
})

describe('equations written as MDL reaction files', () => {
  it('are read by the other toolkit, with and without a count of what stands over the arrow', () => {
    let withAgents = 0
    let without = 0
    for (const step of library.transformations.values()) {
      const written = step.kind === 'reaction' ? rxnOf(library, step) : null
      if (written === null) continue
      // Metals written bare and salts of odd valence are refused by one toolkit and taken by the other.
      const used = [
        ...agentsOf(library, step),
        ...[...step.reactants, ...step.products].map(one => library.materials.get(one.compound)!.smiles!),
      ]
      if (used.some(smiles => /\[[A-Z][a-z]?\d*[+-]?\d*\]/.test(smiles))) continue
      const reaction = rdkit.get_rxn(written)
      expect(reaction, step.id).not.toBeNull()
      reaction?.delete()
      if (written.split('\n')[4]!.length === 9) withAgents++
      else without++
    }
    expect(withAgents).toBeGreaterThanOrEqual(30)
    expect(without).toBeGreaterThanOrEqual(5)
    expect(rdkit.get_rxn('$RXN\n\n\n\n  1  1\n$MOL\nnonsense')).toBeNull()
  })
})
