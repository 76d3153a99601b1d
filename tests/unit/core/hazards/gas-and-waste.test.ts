import { describe, expect, it } from 'vitest'
import { gasesOf, gasOf } from '../../../../core/hazards/gas.ts'
import { stepNotes } from '../../../../core/hazards/step-notes.ts'
import { traitsOf } from '../../../../core/hazards/traits.ts'
import { wasteOf } from '../../../../core/hazards/waste.ts'
import { wasteMeetings } from '../../../../core/hazards/waste-meetings.ts'
import type { Library } from '../../../../core/library/library.ts'
import type { ChargedStep } from '../../../../core/route/charged.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { bundledTables, toolkit } from '../../../support/hazards.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const tables = bundledTables()
const materials = [
  material({ id: 'gallium', formula: 'Ga', wasteStream: 'solid' }),
  material({ id: 'hydrogen', formula: 'H2', smiles: '[H][H]', form: 'gas' }),
  material({ id: 'salt', formula: 'GaCl3', wasteStream: 'heavy-metal' }),
  material({ id: 'acid', formula: 'HCl', form: 'solution', wasteStream: 'aqueous-acid', reactivityGroups: [1, 106] }),
  material({
    id: 'ether',
    formula: 'C4H10O',
    form: 'liquid',
    wasteStream: 'non-halogenated-organic',
    reactivityGroups: [14],
    peroxideClass: 'B',
    flashC: -40,
  }),
  material({ id: 'chlorinated', formula: 'CH2Cl2', form: 'liquid', wasteStream: 'halogenated-organic', reactivityGroups: [17] }),
  material({ id: 'oxidant', formula: 'KMnO4', wasteStream: 'oxidiser', reactivityGroups: [24, 104] }),
  material({ id: 'hydride', formula: 'NaH', wasteStream: 'reactive-quench-first', reactivityGroups: [105, 107] }),
  material({ id: 'brine', form: 'solution', wasteStream: 'drain-if-local-rules-allow' }),
  material({ id: 'nowhere', formula: 'C6H6', form: 'liquid' }),
  material({ id: 'powder', formula: 'C14H10', wasteStream: 'solid' }),
]
// 2 Ga + 6 HCl -> 2 GaCl3 + 3 H2, OpenStax Chemistry 2e, Stoichiometry of gaseous substances: 8.88 g of gallium give 0.1910 mol of hydrogen.
const dissolving = transformation({
  id: 'dissolving',
  reactants: [
    { compound: 'gallium', coefficient: 2 },
    { compound: 'acid', coefficient: 6 },
  ],
  products: [
    { compound: 'salt', coefficient: 2 },
    { compound: 'hydrogen', coefficient: 3 },
  ],
  mainProduct: 'salt',
  limiting: 'gallium',
})
const plain = transformation({
  id: 'plain',
  reactants: [{ compound: 'powder', coefficient: 1 }],
  products: [{ compound: 'nowhere', coefficient: 1 }],
  mainProduct: 'nowhere',
  limiting: 'powder',
})
const library: Library = smallLibrary(materials, [dissolving, plain])
const traits = traitsOf(library, tables, toolkit)
const gallium = { compound: 'gallium', amountMol: 8.88 / 69.723, massG: 8.88 }

describe('gas', () => {
  const step = chargedStep({ transformation: 'dissolving', limiting: gallium, batches: 2, volumeMl: { perBatch: 150, assumed: false } })
  it('comes from the equation where the source states none', () => {
    expect(gasesOf(library, dissolving)).toEqual([{ compound: 'hydrogen', perMolLimiting: 1.5, from: 'equation' }])
    expect(gasesOf(library, { ...dissolving, gasEvolved: [{ compound: 'hydrogen', perMolLimiting: 1 }] })).toEqual([
      { compound: 'hydrogen', perMolLimiting: 1, from: 'source' },
    ])
  })
  it('is reckoned at full conversion, 24.47 L/mol, in all and per batch', () => {
    const [line] = gasOf(library, [step], [])
    expect(line?.litres).toBeCloseTo(0.19104 * 24.47, 3)
    expect(line?.litresPerBatch).toBeCloseTo((0.19104 * 24.47) / 2, 3)
    expect(line?.freeVesselMl).toBeNull()
  })
  it('tells the free volume of the smallest vessel that holds the batch, gas filling it to one half at most', () => {
    const flasks = (...volumes: number[]) => volumes.map(volumeMl => ({ kind: 'flask' as const, volumeMl, count: 1 }))
    expect(gasOf(library, [step], flasks(1000, 500, 250))[0]?.freeVesselMl).toBe(350)
    expect(gasOf(library, [step], flasks(1000, 250))[0]?.freeVesselMl).toBe(850)
    expect(gasOf(library, [step], [{ kind: 'beaker', volumeMl: 1000, count: 1 }])[0]?.freeVesselMl).toBeNull()
  })
  it('forbids a closed vessel in words', () => {
    const notes = stepNotes(library, tables, step, gasOf(library, [step], []), { hood: null, inertGas: null })
    expect(notes.join(' ')).toMatch(/2\.3 L of hydrogen a batch.*never in a closed vessel/)
  })
})

describe('dangers of a step in words', () => {
  const notes = (
    own: Partial<ChargedStep>,
    of: Parameters<typeof transformation>[0],
    bench = { hood: null as boolean | null, inertGas: null as boolean | null },
  ) => {
    const one = transformation({ ...plain, ...of })
    return stepNotes(smallLibrary(materials, [one]), tables, chargedStep({ transformation: of.id, ...own }), [], bench).join(' ')
  }
  it('let the dosing time of a strong exotherm grow with the cube root of the scale: 8 times the scale, twice the time', () => {
    expect(notes({ scale: 16, batches: 2 }, { id: 'hot', exotherm: 'strong' })).toMatch(
      /At 8 times the source's scale dosing takes at least 2 times as long/,
    )
    expect(notes({ scale: 0.5 }, { id: 'hot', exotherm: 'strong' })).not.toMatch(/times as long/)
  })
  it('say when the bench lacks what a step needs', () => {
    expect(notes({}, { id: 'fume', needsHood: true }, { hood: false, inertGas: null })).toMatch(/do not run it here/)
    expect(notes({}, { id: 'dry', atmosphere: 'inert' }, { hood: null, inertGas: false })).toMatch(/there is none/)
  })
  it('name what runs alone while hot', () => {
    const tasks = [{ do: 'boil overnight', kind: 'stand' as const, hours: 14, waitUpToH: 0, reaction: true }]
    expect(notes({}, { id: 'boil', temperatureC: [80, 80], tasks })).toMatch(/Runs alone while hot, 14 h \(boil overnight\)/)
    expect(notes({}, { id: 'boil', temperatureC: [20, 25], tasks })).not.toMatch(/alone/)
  })
  it('tell peroxide formers, with a test before much is evaporated', () => {
    const charges = [chargedLine({ material: 'ether', role: 'extraction', volumeMl: 120, massG: 85 })]
    expect(notes({ charges }, { id: 'shake' })).toMatch(
      /Ether forms peroxides: test or discard.*120 mL is evaporated here at most: test first/,
    )
  })
  it('count flammable solvent against one litre open at the bench', () => {
    const charges = (volumeMl: number) => [chargedLine({ material: 'ether', role: 'extraction', volumeMl, massG: volumeMl * 0.7 })]
    expect(notes({ charges: charges(1500) }, { id: 'shake' })).toMatch(/1\.5 L of flammable solvent/)
    expect(notes({ charges: charges(900) }, { id: 'shake' })).not.toMatch(/flammable solvent/)
  })
})

describe('waste', () => {
  const base = { transformation: 'dissolving', limiting: gallium, expectedG: 18, yieldFraction: { low: 0.7, typical: 0.8, high: 0.9 } }
  it('is one liquor by mass balance: all that goes in less product and gas', () => {
    const step = chargedStep({
      ...base,
      charges: [
        chargedLine({ material: 'gallium', role: 'substrate', massG: 8.88, amountMol: 8.88 / 69.723 }),
        chargedLine({ material: 'acid', role: 'acid', massG: 118, volumeMl: 100, amountMol: 1.2 }),
      ],
    })
    const [liquor] = wasteOf(library, tables, traits, [step])
    const hydrogenG = (8.88 / 69.723) * 0.8 * 1.5 * 2.016
    expect(liquor?.massG).toBeCloseTo(8.88 + 118 - 18 - hydrogenG, 3)
    expect(liquor).toMatchObject({ stream: 'aqueous-acid', volumeMl: 100, open: false, name: 'Aqueous acid' })
    expect(liquor?.from[0]?.materials).toEqual(['gallium', 'acid'])
  })
  it('puts each extract, mother liquor and drying agent by itself', () => {
    const step = chargedStep({
      ...base,
      charges: [
        chargedLine({ material: 'acid', role: 'acid', massG: 118, volumeMl: 100, amountMol: 1.2 }),
        chargedLine({ material: 'ether', role: 'extraction', massG: 71, volumeMl: 100 }),
        chargedLine({ material: 'chlorinated', role: 'recrystallisation', massG: 133, volumeMl: 100 }),
      ],
    })
    const waste = wasteOf(library, tables, traits, [step])
    expect(waste.map(line => [line.stream, line.from.map(part => part.what)])).toEqual([
      ['halogenated-organic', ['mother liquor of the recrystallisation']],
      ['non-halogenated-organic', ['extract']],
      ['aqueous-acid', ['liquor']],
    ])
  })
  const streamOf = (...ids: string[]) => {
    const charges = ids.map(id => chargedLine({ material: id, massG: 10, volumeMl: 10 }))
    return wasteOf(library, tables, traits, [chargedStep({ ...base, transformation: 'plain', expectedG: 0, charges })])[0]?.stream
  }
  it.each([
    [['acid', 'ether'], 'non-halogenated-organic'],
    [['acid', 'ether', 'chlorinated'], 'halogenated-organic'],
    [['ether', 'salt'], 'heavy-metal'],
    [['ether', 'oxidant'], 'non-halogenated-organic'], // the bottle for oxidizers takes nothing organic: destroyed first
    [['oxidant'], 'oxidiser'],
    [['ether', 'hydride'], 'reactive-quench-first'],
    [['acid', 'hydride'], 'aqueous-acid'], // water has quenched it
    [['ether', 'nowhere'], 'unknown'],
    [['acid', 'powder'], 'aqueous-acid'],
    [['brine', 'powder'], 'non-halogenated-organic'], // dissolved, not in the box for solids
    [['powder'], 'solid'],
  ])('goes where its strictest constituent goes: %j to %s', (ids, stream) => {
    expect(streamOf(...ids)).toBe(stream)
  })
  // Wastes whose compatibility is not known are not put together: common practice, no source.
  it('never pools the unknown residues of two steps in one bottle', () => {
    const charges = ['ether', 'nowhere'].map(id => chargedLine({ material: id, massG: 10, volumeMl: 10 }))
    const [first, second] = ['2', '3'].map(number => chargedStep({ ...base, number, transformation: 'plain', expectedG: 0, charges }))
    const waste = wasteOf(library, tables, traits, [first!, second!])
    expect(waste.map(({ stream, massG, from }) => [stream, massG, from.map(part => part.step)])).toEqual([
      ['unknown', 20, ['2']],
      ['unknown', 20, ['3']],
    ])
    expect(waste.map(({ name }) => name)).toEqual([
      'No stream known for step 2: keep apart and ask',
      'No stream known for step 3: keep apart and ask',
    ])
    // A stream that is known takes the parts of all steps.
    const known = ['2', '3'].map(number => chargedStep({ ...base, number, transformation: 'plain', expectedG: 0, charges: [charges[0]!] }))
    expect(wasteOf(library, tables, traits, known).map(({ stream, from }) => [stream, from.length])).toEqual([
      ['non-halogenated-organic', 2],
    ])
  })
  it('says that a sum is a lower bound where a line has no figure', () => {
    const charges = [
      chargedLine({ material: 'ether', massG: 10, volumeMl: 14 }),
      chargedLine({ material: 'acid', role: 'wash', basis: 'open' }),
    ]
    expect(wasteOf(library, tables, traits, [chargedStep({ ...base, transformation: 'plain', expectedG: 0, charges })])[0]?.open).toBe(true)
  })
  it('leaves out a reactant that the equation uses up', () => {
    const step = (moles: number) =>
      chargedStep({
        ...base,
        yieldFraction: { low: 0.98, typical: 0.99, high: 1 },
        charges: [
          chargedLine({ material: 'acid', massG: 118, volumeMl: 100, amountMol: moles }),
          chargedLine({ material: 'gallium', role: 'substrate', massG: 8.88, amountMol: 8.88 / 69.723 }),
        ],
      })
    const left = (moles: number) => wasteOf(library, tables, traits, [step(moles)])[0]?.from[0]?.materials
    expect(left((3 * 8.88) / 69.723)).toEqual([])
    expect(left(1)).toEqual(['acid'])
  })

  it('comes by day of work-up, each batch its share, and adds up to all of it', () => {
    const charges = [chargedLine({ material: 'ether', massG: 30, volumeMl: 42 }), chargedLine({ material: 'powder', massG: 10 })]
    const step = (number: string) => chargedStep({ ...base, transformation: 'plain', number, expectedG: 8, charges })
    const timing = { kept: new Map(), workedUp: new Map([['1', ['2026-12-01', '2026-12-02']]]) }
    const line = wasteOf(library, tables, traits, [step('1'), step('2')], timing)[0]!
    expect(line.byDay).toEqual([
      { date: '2026-12-01', steps: ['1'], massG: 16, volumeMl: 21 },
      { date: '2026-12-02', steps: ['1'], massG: 16, volumeMl: 21 },
      { date: null, steps: ['2'], massG: 32, volumeMl: 42 },
    ])
    expect(line).toMatchObject({ massG: 64, volumeMl: 84 })
  })

  describe('in one container', () => {
    const residues = (...each: string[][]) => ({
      stream: 'oxidiser',
      name: 'x',
      container: 'x',
      massG: 1,
      volumeMl: 1,
      open: false,
      neverWith: [],
      byDay: [],
      from: each.map((ids, index) => ({ step: String(index + 1), what: 'liquor', massG: 1, volumeMl: 1, materials: ids })),
    })
    it('the incident rules for waste see everything', () => {
      const found = wasteMeetings(library, tables, traits, [residues(['oxidant', 'ether'])])
      expect(found.map(meeting => meeting.title)).toContain('Oxidizer left in an organic waste bottle')
    })
    it('the matrix sees different residues, and is silent within one', () => {
      const matrix = (found: ReturnType<typeof wasteMeetings>) => found.filter(meeting => meeting.sources === tables.matrixSources)
      expect(matrix(wasteMeetings(library, tables, traits, [residues(['acid', 'ether'])]))).toEqual([])
      const found = matrix(wasteMeetings(library, tables, traits, [residues(['hydride'], ['acid'])]))
      // EPA-600/2-80-076: group 107 with everything, X: do not mix with any chemical or waste.
      const extreme = found.find(meeting => /^Acids, mineral, non-oxidizing with water reactive/.test(meeting.title))
      expect(extreme).toMatchObject({ where: 'waste', place: 'oxidiser', severity: 'never', materials: ['acid', 'hydride'] })
    })
    it('a residue does not meet itself in another step', () => {
      expect(
        wasteMeetings(library, tables, traits, [residues(['hydride'], ['hydride'])]).filter(one => one.sources === tables.matrixSources),
      ).toEqual([])
    })
  })
})
