import { beforeAll, describe, expect, it } from 'vitest'
import { isGravest } from '../../core/hazards/classes.ts'
import { knownOf } from '../../core/hazards/known.ts'
import { labelOf, pictogramsOf } from '../../core/hazards/labels.ts'
import { stopsAmong } from '../../core/hazards/regulated.ts'
import type { RowOf, TableRow } from '../../core/hazards/table-rows.ts'
import { readTableRows } from '../../core/hazards/tables.ts'
import { type Traits, traitsOf } from '../../core/hazards/traits.ts'
import { bundled } from '../../server/library/bundled.ts'
import { bundledTables, tableTexts, toolkit } from '../support/hazards.ts'
import { textOf } from '../support/tree.ts'

const { library } = bundled()
const materials = [...library.materials.values()]
const tables = bundledTables()
const texts = tableTexts(/^(ghs|hazards|compatibility|incidents|regulated|storage|scale)/)
const read = readTableRows(texts)
const rows = read.ok ? read.value : []
const of = <K extends TableRow['kind']>(kind: K): readonly RowOf<K>[] => rows.filter((row): row is RowOf<K> => row.kind === kind)

describe('the bundled tables', () => {
  it('break no rule', () => {
    expect(read.ok ? [] : read.problems).toEqual([])
  })
  it('hold what was collected', () => {
    expect(of('hazardStatement').length).toBeGreaterThanOrEqual(138)
    expect(of('precautionaryStatement').length).toBeGreaterThanOrEqual(140)
    expect(of('hazardRecord').length).toBeGreaterThanOrEqual(910)
    expect(of('incidentRule').length).toBeGreaterThanOrEqual(65)
    expect(of('regulatedEntry').length).toBeGreaterThanOrEqual(233)
    expect([of('storageGroup').length, of('storagePair').length, of('wasteStream').length, of('peroxideClass').length]).toEqual([
      13, 91, 11, 4,
    ])
    expect(of('ruleOfThumb').length).toBeGreaterThanOrEqual(42)
  })
  it('say of every row where it is from; a row called checked was read somewhere', () => {
    for (const row of rows) {
      expect(row.sources.length).toBeGreaterThan(0)
      if (row.confidence.startsWith('checked'))
        expect(
          row.sources.some(source => source.checked),
          JSON.stringify(row).slice(0, 80),
        ).toBe(true)
    }
  })
  it('have CAS numbers whose check digit holds', () => {
    // The check digit is the sum of the other digits, weighted from the right by 1, 2, 3 ..., modulo 10. Source: CAS, check digit verification.
    const holds = (cas: string): boolean => {
      const digits = cas.replaceAll('-', '')
      const sum = [...digits.slice(0, -1)].reverse().reduce((total, digit, index) => total + Number(digit) * (index + 1), 0)
      return /^\d{2,7}-\d\d-\d$/.test(cas) && sum % 10 === Number(digits.at(-1))
    }
    const found = texts.flatMap(({ text }) => [...text.matchAll(/"cas": "([^"]+)"/g)].map(match => match[1]!))
    expect(found.length).toBeGreaterThan(1000)
    expect(found.filter(cas => !holds(cas))).toEqual([])
  })
})

describe('the reactivity matrix', () => {
  const numbers = tables.reactivityGroups.map(group => group.number)
  it('holds groups 1 to 34 and 101 to 107, every pair, the same both ways', () => {
    expect(numbers).toEqual([
      ...Array.from({ length: 34 }, (_, index) => index + 1),
      ...Array.from({ length: 7 }, (_, index) => index + 101),
    ])
    for (const a of numbers)
      for (const b of numbers)
        if (a !== b) expect(tables.matrix[String(a)]?.[String(b)], `${a} with ${b}`).toEqual(tables.matrix[String(b)]?.[String(a)])
  })
  // EPA-600/2-80-076, the chart's own line for group 107, and 40 CFR 265 Appendix V, groups 1 to 6.
  it('lets water-reactive substances meet nothing', () => {
    for (const number of numbers) if (number !== 107) expect(tables.matrix['107']?.[String(number)]).not.toEqual([])
  })
  it('knows every pair of 40 CFR 265 Appendix V as dangerous in at least one of its groups', () => {
    expect(of('incompatibleWaste')).toHaveLength(6)
    for (const { set, reactivityGroupsA, reactivityGroupsB } of of('incompatibleWaste')) {
      const cells = reactivityGroupsA.flatMap(a => reactivityGroupsB.flatMap(b => (a === b ? [] : [tables.matrix[String(a)]![String(b)]!])))
      expect(
        cells.some(cell => cell.length > 0),
        `set ${set}`,
      ).toBe(true)
      // An acid with a base, an oxidiser with a fuel: most cells are filled, not one by chance.
      expect(cells.filter(cell => cell.length > 0).length / cells.length, `set ${set}`).toBeGreaterThan(0.5)
    }
  })
})

describe('the labels of the bundled materials', () => {
  it('use codes of the tables only, and no label is weaker than its codes', () => {
    for (const { id, hazards } of materials) {
      for (const code of hazards?.codes ?? []) {
        const statement = tables.statements[code]
        expect(statement, `${id}: ${code}`).toBeDefined()
        if (statement!.entries.every(entry => entry.signal === 'Danger')) expect(hazards!.signalWord, `${id}: ${code}`).toBe('Danger')
      }
    }
  })
  it('know 480 by a source or common practice, 109 from memory, and 85 not at all', () => {
    const counts = { seen: 0, remembered: 0, unknown: 0 }
    for (const material of materials) counts[knownOf(material)] += 1
    expect(counts).toEqual({ seen: 480, remembered: 109, unknown: 85 })
  })
  it('never show an exclamation mark beside a skull, nor H318 beside H314', () => {
    let skulls = 0
    for (const material of materials) {
      const { pictograms, codes } = labelOf(tables, material)
      if (pictograms.includes('GHS06')) skulls += 1
      expect(pictograms.includes('GHS06') && pictograms.includes('GHS07'), material.id).toBe(false)
      const shown = codes.map(one => one.code)
      expect(shown.includes('H314') && shown.includes('H318'), material.id).toBe(false)
    }
    expect(skulls).toBeGreaterThan(20)
  })
  it('give each gravest code a pictogram', () => {
    // Division 1.5 (H205) carries its number in place of a symbol. Source: UN GHS, table A1.1, explosives.
    const gravest = Object.keys(tables.statements).filter(code => isGravest(code) && code !== 'H205')
    expect(gravest.length).toBeGreaterThan(20)
    for (const code of gravest) expect(pictogramsOf(tables, [code], 'Danger').length, code).toBeGreaterThan(0)
  })
})

describe('screening of the bundled library', () => {
  let traits: ReadonlyMap<string, Traits>
  beforeAll(() => {
    traits = traitsOf(library, tables, toolkit)
  })
  it('finds no stop row in it', () => {
    expect(stopsAmong(traits, [...traits.keys()])).toEqual([])
  })
  it('finds each listed bench chemical that the library holds, and no other material', () => {
    const listed = [...traits].filter(([, one]) => one.regulated.length > 0).map(([id]) => id)
    // By hand from the lists; bottles of the mineral acids and peroxide by what they contain.
    const expected = [
      ...['2-butanone', 'acetic-anhydride', 'acetone', 'aluminium', 'ammonium-nitrate', 'benzaldehyde', 'diethyl-ether', 'iodine'],
      ...[
        'magnesium',
        'piperidine',
        'potassium-nitrate',
        'potassium-permanganate',
        'sodium-nitrate',
        'sulfur',
        'thionyl-chloride',
        'toluene',
      ],
    ]
    const rest = listed.filter(id => !/^(hydrochloric|sulfuric|nitric|phosphoric)-acid|^hydrogen-(chloride|peroxide)/.test(id))
    expect(rest.filter(id => !expected.includes(id))).toEqual([])
    expect(expected.filter(id => library.materials.has(id) && !listed.includes(id))).toEqual([])
  })
  it('tells what it could not screen: materials with neither CAS number nor structure', () => {
    const unscreened = [...traits].filter(([, one]) => !one.screened).map(([id]) => id)
    expect(unscreened).toEqual(
      materials
        .filter(m => m.cas === undefined && m.smiles === undefined && m.contains === undefined)
        .map(m => m.id)
        .sort(),
    )
  })
})

describe('the README of the data', () => {
  it('tells every table and how many rows it holds', () => {
    const readme = textOf('routes-data/README.md')
    for (const { name, text } of texts) {
      const { rows: inFile, title } = JSON.parse(text)
      expect(readme).toContain(`| \`${name}\` | ${inFile.length} | ${title} |`)
    }
  })
})
