import { readdirSync, readFileSync } from 'node:fs'
import type { MainModule } from '@rdkit/rdkit'
import * as OCL from 'openchemlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { molarMass, molarMassOf, parseFormula } from '../../core/chemistry/formula.ts'
import { toolkitFrom } from '../../core/chemistry/openchemlib.ts'
import { formulaOf, rdkitModule } from '../support/rdkit.ts'

// Oracle: RDKit, an independent chemistry toolkit with its own SMILES reader and its own table of atomic weights.

interface WithStructure {
  readonly id: string
  readonly kind: string
  readonly formula?: string
  readonly smiles: string
}

const folder = new URL('../../routes-data/materials/', import.meta.url)
const materials: readonly WithStructure[] = readdirSync(folder)
  .filter(name => name.endsWith('.json'))
  .flatMap(name => JSON.parse(readFileSync(new URL(name, folder), 'utf8')).materials)
  .filter((material: { smiles?: string }) => material.smiles !== undefined)
const toolkit = toolkitFrom(OCL)

let rdkit: MainModule
beforeAll(async () => {
  rdkit = await rdkitModule()
})

const read = (smiles: string) => {
  const structure = toolkit.parse(smiles)
  if (!structure.ok) throw new Error(structure.problems[0]!.what)
  return structure.value
}

/** Weights that the other toolkit still takes from an older table (S 32.067, Zn 65.39), less those of 2021: g/mol too much an atom. */
const olderWeights: ReadonlyMap<string, number> = new Map([
  ['S', 0.007],
  ['Zn', 0.01],
])

/** Their ring of rings is aromatic as a whole for one toolkit, a choice of double bonds for the other: no common key can be expected. */
const macrocycles: ReadonlySet<string> = new Set(['tetraphenylporphyrin', 'zinc-tetraphenylporphyrin'])

/** Symbols in alphabetical order, the way the helper of the other toolkit writes them. */
const alphabetical = (counts: ReadonlyMap<string, number>): string =>
  [...counts]
    .sort()
    .map(([symbol, count]) => (count === 1 ? symbol : `${symbol}${count}`))
    .join('')

describe('every bundled material with a structure, against RDKit', () => {
  it('collects enough of them to mean something', () => {
    expect(materials.length).toBeGreaterThanOrEqual(600)
  })

  it('holds the same atoms', () => {
    const off = materials.flatMap(({ id, smiles }) => {
      const molecule = rdkit.get_mol(smiles)
      if (molecule === null) return [`${id}: not read`]
      const theirs = formulaOf(molecule)
      molecule.delete()
      const ours = alphabetical(read(smiles).composition.counts)
      return ours === theirs ? [] : [`${id}: ${ours} against ${theirs}`]
    })
    expect(off).toEqual([])
  })

  it('weighs the same', () => {
    let compared = 0
    const off = materials.flatMap(({ id, smiles, formula, kind }) => {
      if (formula === undefined || smiles.includes('*')) return []
      const molecule = rdkit.get_mol(smiles)!
      const printed: number = JSON.parse(molecule.get_descriptors()).amw
      molecule.delete()
      compared++
      const counts = read(smiles).composition.counts
      const theirs = printed - [...olderWeights].reduce((sum, [symbol, more]) => sum + (counts.get(symbol) ?? 0) * more, 0)
      const composition = parseFormula(formula)
      const ours = kind === 'mixture' ? molarMass(read(smiles).composition) : composition.ok ? molarMass(composition.value) : Number.NaN
      // The other table is rounded to three decimals; 0.01 % is a tenth of what any balance here could show.
      return Math.abs(ours / theirs - 1) <= 1e-4 ? [] : [`${id}: ${ours} against ${theirs}`]
    })
    expect(compared).toBeGreaterThanOrEqual(500)
    expect(off).toEqual([])
  })

  it('keeps its identity on a way through the other toolkit', () => {
    const off = materials.flatMap(({ id, smiles }) => {
      // Open ends and bare metals are written differently by the two.
      if (macrocycles.has(id) || smiles.includes('*') || /^\[[A-Z][a-z]?\](\.\[[A-Z][a-z]?\])*$/.test(smiles)) return []
      const molecule = rdkit.get_mol(smiles)!
      // A racemate is one by its stereo group alone, which the other toolkit writes behind the SMILES.
      const theirs = smiles.includes('|') ? molecule.get_cxsmiles() : molecule.get_smiles()
      molecule.delete()
      return read(theirs).identityKey === read(smiles).identityKey ? [] : [`${id}: ${smiles} is not ${theirs}`]
    })
    expect(off).toEqual([])
  })

  it('has a formula of its own that agrees', () => {
    const compounds = materials.filter(one => one.formula !== undefined && one.kind !== 'mixture')
    expect(compounds.length).toBeGreaterThanOrEqual(500)
    for (const { formula, smiles, id } of compounds) expect(molarMassOf(formula!), id).toBeCloseTo(molarMass(read(smiles).composition), 6)
  })
})
