import { describe, expect, it } from 'vitest'
import { quenchLines, withPlannedQuench } from '../../../../core/hazards/quench.ts'
import { traitsOf } from '../../../../core/hazards/traits.ts'
import { shareLeft, wasteOf } from '../../../../core/hazards/waste.ts'
import { needsOf } from '../../../../core/shopping/needs.ts'
import { bundledWorkshop } from '../../../support/app.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { bundledTables, toolkit } from '../../../support/hazards.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const permanganate = material({ id: 'potassium-permanganate', cas: '7722-64-7', formula: 'KMnO4' })
const bleach = material({
  id: 'weak-bleach',
  kind: 'mixture',
  form: 'solution',
  contains: { compound: 'hypochlorite', massFraction: 0.05 },
})
const hypochlorite = material({ id: 'hypochlorite', cas: '7681-52-9', formula: 'NaClO' })
const bottles = [
  permanganate,
  bleach,
  hypochlorite,
  material({ id: 'alcohol' }),
  material({ id: 'acid' }),
  material({ id: 'water', cas: '7732-18-5', formula: 'H2O' }),
  material({ id: 'sodium-bisulfite', name: 'sodium bisulfite', formula: 'HNaO3S' }),
]
const oxidation = (oxidant: string) =>
  transformation({
    id: 'oxidation',
    reactants: [
      { compound: 'alcohol', coefficient: 3 },
      { compound: oxidant, coefficient: 2 },
    ],
    products: [{ compound: 'acid', coefficient: 3 }],
    mainProduct: 'acid',
    limiting: 'alcohol',
  })
const lines = (oxidant: string, amountMol: number | null, ...more: Parameters<typeof chargedLine>[0][]) => {
  const compound = oxidant === 'weak-bleach' ? 'hypochlorite' : oxidant
  const library = smallLibrary(bottles, [oxidation(compound)])
  const step = chargedStep({
    transformation: 'oxidation',
    number: '2a',
    limiting: { compound: 'alcohol', amountMol: 0.3, massG: 30 },
    yieldFraction: { low: 0.7, typical: 0.8, high: 0.9 },
    charges: [
      chargedLine({ material: 'alcohol', amountMol: 0.3, massG: 30 }),
      chargedLine({ material: oxidant, role: 'oxidant', amountMol, massG: 50 }),
      ...more.map(chargedLine),
    ],
  })
  return { step, library, found: quenchLines(library, bundledTables(), [step]) }
}

describe('residues that are destroyed before the bottle', () => {
  // 2 MnO4- + 5 HSO3- + H+ -> 2 Mn2+ + 5 SO4(2-) + 3 H2O: 2.5 mol for one. Of 0.3 mol, 0.3 x 0.8 x 2/3 = 0.16 is used; 0.14 mol is left.
  it('get a reagent by the equation, for what is left at typical yield', () => {
    const { found } = lines('potassium-permanganate', 0.3)
    expect(found).toMatchObject([
      { step: '2a', destroys: 'potassium-permanganate', from: 'planned', reagents: [{ name: 'sodium bisulfite' }] },
    ])
    expect(found[0]!.reagents[0]!.massG).toBeCloseTo(0.14 * 2.5 * 104.06, 6)
    expect(found[0]!.test).toMatch(/purple/)
  })
  it('are found by the compound in a bottle', () => {
    expect(lines('weak-bleach', 0.5).found).toMatchObject([{ destroys: 'weak-bleach', from: 'planned' }])
  })
  it('are left to the quench of the step itself, where it has one: its lines are in the shopping list', () => {
    const { found } = lines('potassium-permanganate', 0.3, {
      material: 'sodium-bisulfite',
      role: 'quench',
      at: 'quench',
      massG: 12,
      basis: 'source',
    })
    expect(found).toMatchObject([{ from: 'source', reagents: [{ name: 'sodium bisulfite', massG: 12 }], do: null }])
  })
  it('are not left to a quench that does not destroy them: water leaves permanganate as it is', () => {
    const water = { material: 'water', role: 'quench', at: 'quench', massG: 400, basis: 'source' } as const
    const { found } = lines('potassium-permanganate', 0.3, water)
    expect(found).toMatchObject([{ from: 'planned', reagents: [{ name: 'sodium bisulfite' }] }])
  })
  it('are reckoned so in the bundled library: dichromate poured on water gets its bisulfite', async () => {
    const { library } = await bundledWorkshop()
    const charges = [
      chargedLine({ material: 'sodium-dichromate-dihydrate', role: 'oxidant', amountMol: 1, massG: 298 }),
      chargedLine({ material: 'water', role: 'quench', at: 'quench', massG: 400, basis: 'source' }),
    ]
    const limiting = { compound: 'isoborneol', amountMol: 0.3, massG: 46 }
    const step = chargedStep({ transformation: 'camphor-chromic-acid', number: '1', limiting, charges })
    expect(quenchLines(library, bundledTables(), [step])).toMatchObject([
      { from: 'planned', reagents: [{ material: 'sodium-bisulfite' }], test: 'the orange has turned green' },
    ])
  })
  // Half of 0.6 mol was run before and is logged: 0.3 mol of alcohol is still to meet the 0.3 mol of permanganate charged, as above.
  it('are those of what is still to be run, where a part was run and logged', () => {
    const { step, library, found } = lines('potassium-permanganate', 0.3)
    const repeated = {
      ...step,
      limiting: { compound: 'alcohol', amountMol: 0.6, massG: 60 },
      expectedG: 34,
      ofCharge: { ...step.ofCharge, chargeG: 30 },
      done: { isolatedG: 10, leftToRun: 1, ownRuns: 1 },
    }
    expect(quenchLines(library, bundledTables(), [repeated])).toEqual(found)
    const waste = (of: typeof step) => wasteOf(library, bundledTables(), traitsOf(library, bundledTables(), toolkit), [of])
    expect(waste(repeated)[0]!.from[0]!.materials).toEqual(waste(step)[0]!.from[0]!.materials)
    expect(waste(repeated)[0]!.massG).toBeCloseTo(30 + 50 - 24, 9)
  })
  it('are none where the equation uses all of it up', () => {
    expect(lines('potassium-permanganate', 0.16).found).toEqual([])
  })
  it('have no amount where none is known, and are told all the same', () => {
    const { found, library, step } = lines('potassium-permanganate', null)
    expect(shareLeft(library, step, 'potassium-permanganate')).toBeNull()
    expect(found[0]!.reagents[0]!.massG).toBeNull()
  })
})

describe('a planned quench is a need like any other', () => {
  const planned = (amountMol: number | null) => {
    const { step, library } = lines('potassium-permanganate', amountMol)
    const steps = withPlannedQuench(library, bundledTables(), [step])
    const plain = { library, products: [], reserve: 0.1, repeat: false, retainedSampleG: 0 }
    return { library, step, steps, need: needsOf({ ...plain, steps }).find(need => need.material === 'sodium-bisulfite') }
  }
  // By hand, as above: 0.14 mol is left and takes 0.35 mol of NaHSO3, 104.06 g/mol, 36.42 g; with a reserve of a tenth 40.06 g.
  it('is bought, marked as planned, with its reason', () => {
    const { need } = planned(0.3)
    expect(need!.amount).toBeCloseTo(40.063, 2)
    expect(need).toMatchObject({ planned: true, open: false, uses: [{ role: 'quench' }] })
    expect(need!.notes.join(' ')).toMatch(/common practice, not from the source/)
  })
  it('stays open where nobody knows how much is left', () => {
    expect(planned(null).need).toMatchObject({ amount: null, open: true, planned: true })
  })
  it('ends in the waste of its step: what goes in comes out', () => {
    const { library, step, steps } = planned(0.3)
    const massG = (of: typeof steps) => wasteOf(library, bundledTables(), traitsOf(library, bundledTables(), toolkit), of)[0]!.massG!
    expect(massG(steps) - massG([step])).toBeCloseTo(36.42, 1)
  })
  it('is told the same when its line stands in the step, and is planned once', () => {
    const { library, step, steps } = planned(0.3)
    const tables = bundledTables()
    expect(quenchLines(library, tables, steps)).toEqual(quenchLines(library, tables, [step]))
    expect(withPlannedQuench(library, tables, steps)[0]!.charges.filter(line => line.material === 'sodium-bisulfite')).toHaveLength(1)
  })
  it('is told and not bought where the library has no such material', () => {
    const { step, library } = lines('potassium-permanganate', 0.3)
    const without = { ...library, materials: new Map([...library.materials].filter(([id]) => id !== 'sodium-bisulfite')) }
    expect(quenchLines(without, bundledTables(), [step])[0]!.reagents[0]!.material).toBeNull()
    expect(withPlannedQuench(without, bundledTables(), [step])).toEqual([step])
  })
  it('names materials that the bundled library sells, with the molar mass that it has', async () => {
    const { library } = await bundledWorkshop()
    for (const { material, reagentGPerMol } of bundledTables().quenchRules) {
      expect(library.materials.get(material!)?.buyable).toBe(true)
      expect(library.molarMass.get(material!)).toBeCloseTo(reagentGPerMol, 1)
    }
  })
})
