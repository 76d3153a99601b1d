import { describe, expect, it } from 'vitest'
import type { ChargeLine } from '../../../../core/library/transformation.ts'
import { libraryOfParts } from '../../../../core/plan/library-of-parts.ts'
import { chargesOf } from '../../../../core/route/charge.ts'
import { boughtBy, madeBy } from '../../../../core/route/made-bought.ts'
import { materialsOfRoute } from '../../../../core/route/materials.ts'
import { workingOrder } from '../../../../core/route/working-order.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { material, transformation } from '../../../support/small-library.ts'

const substances = [
  material({ id: 'a', formula: 'C6H6O' }),
  material({ id: 'b', formula: 'C7H8O' }),
  material({ id: 'p', formula: 'C13H12O2' }),
  material({ id: 'q', formula: 'C13H12O2', form: 'liquid', densityGPerMl: 1 }),
  material({ id: 'b-20pct', kind: 'mixture', form: 'solution', densityGPerMl: 1.1, contains: { compound: 'b', massFraction: 0.2 } }),
  material({ id: 'b-1m-hexane', kind: 'mixture', form: 'solution', contains: { compound: 'b', molPerL: 1, rest: 'hexane' } }),
  material({ id: 'b-hydrate', kind: 'mixture', contains: { compound: 'b', massFraction: 0.8 } }),
  material({ id: 'hexane', formula: 'C6H14', form: 'liquid', densityGPerMl: 0.66 }),
  material({ id: 'water', formula: 'H2O', form: 'liquid', densityGPerMl: 1 }),
  material({ id: 'oxygen', formula: 'O2', form: 'gas' }),
  material({ id: 'sodium-hydroxide', formula: 'NaOH' }),
  material({ id: 'hydrogen-chloride', formula: 'HCl', form: 'gas' }),
  material({
    id: 'hydrochloric-acid-37',
    kind: 'mixture',
    form: 'solution',
    densityGPerMl: 1.18,
    contains: { compound: 'hydrogen-chloride', massFraction: 0.37 },
  }),
  material({ id: 'ether', formula: 'C4H10O', form: 'liquid', densityGPerMl: 0.71 }),
  material({ id: 'sodium-sulfate', formula: 'Na2SO4' }),
]
const line = (own: Partial<ChargeLine> & Pick<ChargeLine, 'material'>): ChargeLine => ({ role: 'reagent', amount: null, unit: 'g', ...own })
const libraryWith = (charge: readonly ChargeLine[], own: Partial<Parameters<typeof transformation>[0]> = {}) =>
  libraryOfParts({ title: 'a test' }, substances, [
    transformation({
      id: 'step',
      reactants: [
        { compound: 'a', coefficient: 1 },
        { compound: 'b', coefficient: 1 },
      ],
      products: [{ compound: 'p', coefficient: 1 }],
      mainProduct: 'p',
      limiting: 'a',
      charge: [line({ material: 'a', role: 'substrate', amount: 9.411 }), ...charge],
      ...own,
    }),
  ])
const charged = (
  library: ReturnType<typeof libraryWith>,
  made: readonly string[] = [],
  start = { compound: 'a', material: 'a' },
  productG = 20,
) => chargesOf(library, { transformation: 'step', limitingG: 18.822, productG, start, made: new Set(['p', ...made]) })

describe('charge lines at scale', () => {
  it('multiply by the limiting moles, and per gram of product by the product', () => {
    const library = libraryWith([
      line({ material: 'b', amount: 12 }),
      line({ material: 'hexane', role: 'recrystallisation', unit: 'mL', perGramProduct: 7 }),
    ])
    const [a, b, hexane] = charged(library)
    expect(a).toMatchObject({ massG: 18.822, supply: 'start', basis: 'source' })
    // 94.11 g/mol: 0.1 mol in the source, 0.2 mol here.
    expect(a!.amountMol).toBeCloseTo(0.2, 4)
    expect(a!.equivalents).toBe(1)
    expect(b!.massG).toBeCloseTo(24, 9)
    expect(b!.supply).toBe('bought')
    expect(hexane).toMatchObject({ volumeMl: 140, at: 'workup' })
  })

  it('of a reactant without an amount come at least at what the equation takes, as the material of the first open line', () => {
    const [, b] = charged(libraryWith([line({ material: 'b-20pct', unit: 'mL' }), line({ material: 'b', role: 'reagent' })]))
    expect(b).toMatchObject({ material: 'b-20pct', basis: 'at-least' })
    // 0.2 mol of 108.14 g/mol in 20 percent.
    expect(b!.massG).toBeCloseTo((0.2 * 108.14) / 0.2, 1)
  })

  it('of a reactant that no line names are added', () => {
    const lines = charged(libraryWith([]))
    expect(lines.at(-1)).toMatchObject({ material: 'b', line: null, basis: 'at-least', supply: 'bought' })
    expect(lines.at(-1)!.equivalents).toBeCloseTo(1, 9)
  })

  it('leave oxygen of the air and open water free', () => {
    const library = libraryWith([line({ material: 'water', role: 'solvent', unit: 'mL' })], {
      reactants: ['a', 'water', 'oxygen'].map(compound => ({ compound, coefficient: 1 })),
    })
    const lines = charged(library)
    expect(lines.map(l => [l.material, l.supply])).toEqual([
      ['a', 'start'],
      ['water', 'free'],
    ])
    expect(lines[1]!.massG).toBeNull()
  })

  it('show a made co-reactant as itself, and what its solution is made up with at the same volume, about', () => {
    const aqueous = charged(libraryWith([line({ material: 'b-20pct', unit: 'mL', amount: 50 })]), ['b'])
    // 50 mL x 1.1 x 0.2 = 11 g in the source, 22 g here; 100 mL of water about.
    expect(aqueous[1]).toMatchObject({ material: 'b', supply: 'made', basis: 'source' })
    expect(aqueous[1]!.massG).toBeCloseTo(22, 9)
    expect(aqueous[2]).toMatchObject({ material: 'water', volumeMl: 100, basis: 'about', supply: 'bought' })
    const organic = charged(libraryWith([line({ material: 'b-1m-hexane', unit: 'mL', amount: 100 })]), ['b'])
    expect(organic[2]).toMatchObject({ material: 'hexane', volumeMl: 200, basis: 'about' })
    expect(organic[1]!.amountMol).toBeCloseTo(0.2, 9)
  })

  it('weigh a made compound in place of its hydrate, mole for mole', () => {
    const lines = charged(libraryWith([line({ material: 'b-hydrate', amount: 10 })]), ['b'])
    expect(lines).toHaveLength(2)
    expect(lines[1]).toMatchObject({ material: 'b', supply: 'made' })
    expect(lines[1]!.massG).toBeCloseTo(16, 9)
  })

  it('weigh the start as the material in hand', () => {
    const library = libraryWith([line({ material: 'b', amount: 10.814 })])
    const lines = charged(library, [], { compound: 'b', material: 'b-20pct' })
    expect(lines[1]).toMatchObject({ material: 'b-20pct', supply: 'start' })
    // 21.63 g of b in 20 percent.
    expect(lines[1]!.massG).toBeCloseTo(108.14, 2)
  })

  it('buy a solvent, wash or catalyst even where the route makes that very compound', () => {
    const library = libraryWith([
      line({ material: 'b', amount: 12 }),
      line({ material: 'p', role: 'catalyst', amount: 1 }),
      line({ material: 'b', role: 'wash', amount: 5 }),
    ])
    const lines = charged(library, ['b'])
    expect(lines.map(l => l.supply)).toEqual(['start', 'made', 'bought', 'bought'])
  })
})

describe('open lines by rule of thumb', () => {
  const b = line({ material: 'b', amount: 12 })
  it('neutralise the opposite charge in the vessel', () => {
    // 8 g of sodium hydroxide, 0.2 mol in the source: 0.4 mol here, and so much acid.
    const lines = charged(
      libraryWith([
        b,
        line({ material: 'sodium-hydroxide', role: 'base', amount: 8 }),
        line({ material: 'hydrochloric-acid-37', role: 'acid', unit: 'mL', at: 'quench' }),
      ]),
    )
    const acid = lines.find(l => l.role === 'acid')!
    expect(acid.basis).toBe('planned')
    expect(acid.amountMol).toBeCloseTo(0.4, 3)
    expect(acid.massG).toBeCloseTo((0.4 * 36.46) / 0.37, 1)
  })
  it('take 10 mL a gram for recrystallisation, 1 mL a gram over a filter', () => {
    const lines = charged(
      libraryWith([
        b,
        line({ material: 'hexane', role: 'recrystallisation', unit: 'mL' }),
        line({ material: 'water', role: 'wash', unit: 'mL' }),
      ]),
    )
    expect(lines[2]).toMatchObject({ volumeMl: 200, basis: 'planned' })
    expect(lines[3]).toMatchObject({ volumeMl: 20, basis: 'planned' })
  })
  it('extract with the aqueous volume in three thirds, at least 5 mL a gram, wash with 0.4 and dry with 0.07 g/mL of it', () => {
    const extraction = [
      line({ material: 'ether', role: 'extraction', unit: 'mL' }),
      line({ material: 'water', role: 'wash', unit: 'mL' }),
      line({ material: 'sodium-sulfate', role: 'drying' }),
    ]
    const wet = charged(libraryWith([b, line({ material: 'water', role: 'solvent', unit: 'mL', amount: 150 }), ...extraction]))
    expect(wet[3]!.volumeMl).toBeCloseTo(300, 9)
    expect(wet[4]!.volumeMl).toBeCloseTo(120, 9)
    expect(wet[5]!.massG).toBeCloseTo(21, 9)
    const dry = charged(libraryWith([b, ...extraction]))
    expect(dry[2]!.volumeMl).toBeCloseTo(100, 9)
  })
  it('stay open where no rule reaches: no amount, never zero', () => {
    const lines = charged(
      libraryWith([b, line({ material: 'sodium-sulfate', role: 'other' }), line({ material: 'sodium-sulfate', role: 'drying' })]),
    )
    for (const open of lines.slice(2)) expect(open).toMatchObject({ basis: 'open', massG: null, volumeMl: null, amountMol: null })
  })
})

describe('what a route makes, buys and holds', () => {
  const { library } = bundled()
  const route = {
    start: 'sebacic-acid',
    target: 'nylon-6-10',
    steps: workingOrder(library, 'sebacic-acid', ['sebacoyl-chloride-thionyl', 'nylon-6-10-interfacial']),
  }
  it('makes the solute of a solution and buys what it is made up with', () => {
    expect(madeBy(library, route)).toEqual(['sebacoyl-chloride', 'nylon-6-10'])
    const bought = boughtBy(library, route)
    expect(bought).toContain('hexane')
    expect(bought).not.toContain('sebacoyl-chloride')
    expect(bought).not.toContain('sebacoyl-chloride-0p2m')
    expect(bought).not.toContain('sebacic-acid')
    expect([...bought].sort()).toEqual(bought)
  })
  it('lists each material once, with what it is there', () => {
    const materials = materialsOfRoute(library, route)
    expect(new Set(materials.map(m => m.material)).size).toBe(materials.length)
    const as = Object.fromEntries(materials.map(m => [m.material, m.as]))
    expect(as['sebacic-acid']).toEqual(['start', 'charged'])
    expect(as['sebacoyl-chloride-0p2m']).toEqual(['charged'])
    expect(as['sebacoyl-chloride']).toEqual(['made'])
    expect(as['nylon-6-10']).toEqual(['made', 'product'])
  })
})
