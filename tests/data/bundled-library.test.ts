import * as openchemlib from 'openchemlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { hill, parseFormula, sameComposition } from '../../core/chemistry/formula.ts'
import { toolkitFrom } from '../../core/chemistry/openchemlib.ts'
import { loadLibrary } from '../../core/library/load.ts'
import { printLibraryFile } from '../../core/library/print.ts'
import { coefficientOf, productCoefficientOf, referenceMoles } from '../../core/library/reference-charge.ts'
import { bundled, bundledFiles, bundledTables, keysOf } from '../../server/library/bundled.ts'
import { formulaOf, rdkitModule } from '../support/rdkit.ts'

const { library, warnings } = bundled()
const materials = [...library.materials.values()]
const transformations = [...library.transformations.values()]

describe('the bundled library', () => {
  it('holds 390 transformations, 16 of them isolations, and 674 materials', () => {
    expect([transformations.length, transformations.filter(t => t.kind === 'isolation').length, materials.length]).toEqual([390, 16, 674])
  })
  it('breaks no rule, its structures held against their formulas', () => {
    const loaded = loadLibrary(bundledFiles(), { tables: keysOf(bundledTables()), toolkit: toolkitFrom(openchemlib) })
    expect(loaded.ok ? [] : loaded.problems).toEqual([])
  })
  it('has the tables that its materials point into', () => {
    const keys = keysOf(bundledTables())
    expect(keys.hazardCodes?.size).toBeGreaterThanOrEqual(138)
    expect(keys.reactivityGroups?.size).toBe(41)
    expect(keys.storageGroups?.size).toBe(13)
    expect(keys.wasteStreams?.size).toBe(11)
    expect(keys.peroxideClasses?.size).toBe(4)
  })
  it('warns only where a source itself charged another reactant a little short', () => {
    expect([...new Set(warnings.map(warning => warning.code))]).toEqual(['limiting-short'])
    expect(warnings.length).toBeLessThanOrEqual(11)
  })
  it('stands in the canonical layout, so that a change to one record is a change to its lines alone', () => {
    for (const { name, text } of bundledFiles()) expect(text === printLibraryFile(JSON.parse(text)), name).toBe(true)
  })
  it('names a source that was read for every proven scale', () => {
    const stated = transformations.filter(t => t.largestProvenG !== undefined || t.smallestProvenG !== undefined)
    expect(stated.length).toBeGreaterThanOrEqual(287)
    for (const t of stated) {
      const uses = new Set(t.sources.filter(s => s.checked).map(s => s.for))
      expect(uses.has('largest scale'), t.id).toBe(t.largestProvenG !== undefined)
      expect(uses.has('smallest scale'), t.id).toBe(t.smallestProvenG !== undefined)
    }
  })
  it('stands once each: no id in two files', () => {
    const ids = bundledFiles().flatMap(({ text }) => {
      const file = JSON.parse(text)
      return [...file.materials, ...file.transformations].map((record: { id: string }) => record.id)
    })
    const perKind = new Set(ids)
    // A transformation may be named like its product (lophine makes lophine); within a list an id stands once.
    expect(ids.length).toBe(390 + 674)
    expect(perKind.size).toBeLessThan(ids.length)
  })
  it('says of every record and every reported yield where it is from and whether it was seen there', () => {
    for (const record of [...materials, ...transformations]) expect(record.sources.length, record.id).toBeGreaterThan(0)
    const reports = transformations.flatMap(t => t.reports ?? [])
    expect(reports.length).toBe(252)
    for (const report of reports) expect(report.source.citation).not.toBe('')
    expect(transformations.filter(t => t.confidence === 'checked').length).toBe(313)
    for (const t of transformations.filter(one => one.confidence === 'checked'))
      expect(
        t.sources.some(s => s.checked),
        t.id,
      ).toBe(true)
  })
})

/** RDKit (BSD licence, release 2026.09.1) reads the structures independently of the product's own toolkit and formula parser. */
describe('by RDKit', () => {
  const formulas = new Map<string, string>()
  const masses = new Map<string, number>()
  beforeAll(async () => {
    const rdkit = await rdkitModule()
    for (const { id, smiles } of materials) {
      if (smiles === undefined) continue
      const molecule = rdkit.get_mol(smiles)
      if (molecule === null || !molecule.is_valid()) throw new Error(`RDKit cannot read ${id}: ${smiles}`)
      formulas.set(id, formulaOf(molecule))
      if (!smiles.includes('*')) masses.set(id, JSON.parse(molecule.get_descriptors()).amw)
      molecule.delete()
    }
  })

  it('every formula agrees with its structure', () => {
    const compared = materials.filter(({ id, formula }) => formula !== undefined && formulas.has(id))
    expect(compared.length).toBeGreaterThanOrEqual(560)
    const off = compared.flatMap(({ id, formula }) => {
      const stated = parseFormula(formula!)
      const drawn = parseFormula(formulas.get(id)!)
      if (!stated.ok || !drawn.ok) return [`${id}: unreadable`]
      return sameComposition(stated.value, drawn.value) ? [] : [`${id}: ${hill(stated.value)} stated, ${hill(drawn.value)} drawn`]
    })
    expect(off).toEqual([])
  })
  // RDKit's weights are older than the CIAAW 2021 table: sulfur 32.067 against 32.06 and zinc 65.39 against 65.38 are furthest apart,
  // 2.2 and 1.5 parts in 10,000.
  it('every molar mass agrees', () => {
    const off = [...masses].flatMap(([id, drawn]) => {
      const ours = library.molarMass.get(id)
      return ours === undefined || Math.abs(ours / drawn - 1) < 2.5e-4 ? [] : [`${id}: ${ours} and ${drawn}`]
    })
    expect(off).toEqual([])
    expect(masses.size).toBeGreaterThanOrEqual(550)
  })
  it('every equation balances', () => {
    const reactions = transformations.filter(t => t.kind === 'reaction')
    expect(reactions.length).toBe(374)
    const off = reactions.flatMap(({ id, reactants, products }) => {
      const sums = new Map<string, number>()
      // A compound without a structure (an alloy, a framework) is counted by its stated formula.
      for (const [side, entries] of [
        [1, reactants],
        [-1, products],
      ] as const)
        for (const { compound, coefficient } of entries)
          for (const [symbol, count] of countsOf(formulas.get(compound) ?? library.materials.get(compound)!.formula!))
            sums.set(symbol, (sums.get(symbol) ?? 0) + side * coefficient * count)
      return [...sums].some(([, count]) => Math.abs(count) > 1e-6) ? [`${id}: ${JSON.stringify([...sums])}`] : []
    })
    expect(off).toEqual([])
  })
})

/** Atoms of a Hill formula by symbol. */
const countsOf = (formula: string): [string, number][] =>
  [...formula.matchAll(/([A-Z][a-z]?)(\d*)/g)].map(([, symbol, count]) => [symbol!, count === '' ? 1 : Number(count)])

it('states typical yields within 3.5 points of the 259 isolated masses in grams', () => {
  const gaps = transformations.flatMap(t => {
    if (t.kind === 'isolation' || t.isolated?.unit !== 'g') return []
    const moles = referenceMoles(library, t, t.limiting)
    if (moles === null) return []
    const molesOfProduct = (moles * productCoefficientOf(t, t.mainProduct)) / coefficientOf(t, t.limiting)
    const theoryG = molesOfProduct * library.molarMass.get(t.mainProduct)!
    return [{ id: t.id, points: Math.abs((t.isolated.amount / theoryG) * 100 - t.yieldPercent.typical) }]
  })
  expect(gaps.length).toBe(259)
  expect(gaps.filter(({ points }) => points > 3.5)).toEqual([])
})
