import { beforeAll, describe, expect, it } from 'vitest'
import { compareCounts, hazardCounts } from '../../../../core/hazards/counts.ts'
import type { HazardList } from '../../../../core/hazards/hazard-list.ts'
import { hazardsOf } from '../../../../core/hazards/list.ts'
import { tablesForPage } from '../../../../core/hazards/tables.ts'
import type { Traits } from '../../../../core/hazards/traits.ts'
import { traitsOf } from '../../../../core/hazards/traits.ts'
import { reckoned } from '../../../../core/plan/reckoned.ts'
import { defaultSettings, type Settings } from '../../../../core/plan/settings.ts'
import { materialsOfRoute } from '../../../../core/route/materials.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { bundledTables, toolkit } from '../../../support/hazards.ts'

const { library } = bundled()
const tables = bundledTables()
let traits: ReadonlyMap<string, Traits>
beforeAll(() => {
  traits = traitsOf(library, tables, toolkit)
})

const route = (...ids: string[]) => ({
  start: 'benzoin',
  target: library.transformations.get(ids.at(-1)!)!.mainProduct,
  steps: ids.map(id => ({ transformation: id, makes: library.transformations.get(id)!.mainProduct })),
})
function listOf(ids: string[], own: Partial<Settings> = {}, from = tables): HazardList {
  const settings = { ...defaultSettings, ...own }
  const start = { material: 'benzoin', massG: 24 }
  const one = route(...ids)
  const plan = {
    title: '',
    start,
    goals: [{ target: one.target, amount: { kind: 'rest' as const }, route: one }],
    shelf: [],
    packs: null,
    settings,
    log: [],
    seed: 1,
  }
  return hazardsOf({ library, tables: from, traits, steps: reckoned(library, plan).toRun, start, settings })
}
const counts = (...ids: string[]) => hazardCounts(library, materialsOfRoute(library, route(...ids)))

describe('benzil from benzoin, four ways', () => {
  it('tells nitric acid from the milder oxidants at a glance: a gas that kills stands in its list and in no other', () => {
    const nitric = listOf(['benzil-nitric-acid'])
    expect(nitric.materials[0]).toMatchObject({ material: 'nitrogen-dioxide', class: 'gravest' })
    expect(nitric.materials[0]?.codes[0]).toEqual({ code: 'H330', statement: 'Fatal if inhaled' })
    for (const milder of ['benzil-copper-ammonium-nitrate', 'benzil-copper-acetate', 'benzil-iron-chloride']) {
      expect(compareCounts(counts('benzil-nitric-acid'), counts(milder)), milder).toBeGreaterThan(0)
      expect(listOf([milder]).counts.gravest, milder).toBe(0)
    }
  })
  it('has its counts from the materials of the route, each once', () => {
    expect(counts('benzil-nitric-acid').gravest).toBe(1)
    expect(listOf(['benzil-nitric-acid']).counts).toEqual(counts('benzil-nitric-acid'))
  })
})

describe('the list of a plan', () => {
  const list = () => listOf(['benzil-copper-ammonium-nitrate', 'lophine'], { region: 'EU', buyer: 'public' })
  it('puts what is not known first, then gravest, danger, warning, none', () => {
    const order = ['unknown', 'gravest', 'danger', 'warning', 'none']
    const classes = list().materials.map(one => order.indexOf(one.class))
    expect(classes).toEqual([...classes].sort((a, b) => a - b))
    expect(list().unknown).toEqual(['lophine'])
    expect(list().materials[0]).toMatchObject({ material: 'lophine', known: 'unknown', codes: [], pictograms: [] })
  })
  it('names every material once, with what it is and at plan scale', () => {
    const ids = list().materials.map(one => one.material)
    expect(new Set(ids).size).toBe(ids.length)
    const benzoin = list().materials.find(one => one.material === 'benzoin')
    expect(benzoin).toMatchObject({ as: ['start', 'charged'], steps: ['1'] })
    expect(benzoin?.massG).toBeCloseTo(24, 9)
    const nitrogen = list().materials.find(one => one.material === 'nitrogen')
    // One mole of nitrogen (28.01 g) for each of benzoin (212.25 g/mol), at full conversion.
    expect(nitrogen?.massG).toBeCloseTo((24 / 212.248) * 28.014, 2)
  })
  it('says to the public of the EU first what it cannot have', () => {
    expect(list().regulated[0]).toMatchObject({ material: 'ammonium-nitrate', action: 'licence', barred: true })
  })
  it('marks the meeting the step is built for, with the condition of the source', () => {
    const found = list().meetings.find(
      meeting => meeting.title === 'Ammonium nitrate with hot organic material' && meeting.where === 'step',
    )
    expect(found).toMatchObject({ intended: true, place: '1', severity: 'never' })
    expect(found?.conditions.length).toBeGreaterThan(1)
  })
  it('has something to say on every step', () => {
    expect(list().steps.map(step => [step.step, step.notes.length > 0])).toEqual([
      ['1', true],
      ['2', true],
    ])
  })
  it('needs no rows to screen by, once the traits are known: a page reckons the same without them', () => {
    const page = tablesForPage(tables)
    expect(page.regulated.entries).toEqual([])
    expect(listOf(['benzil-copper-ammonium-nitrate', 'lophine'], { region: 'EU', buyer: 'public' }, page)).toEqual(list())
  })
  it('is plain JSON', () => {
    expect(JSON.parse(JSON.stringify(list()))).toEqual(list())
  })
})

describe('every transformation of the library', () => {
  it('has a hazard list at the scale of its source', () => {
    const bench = { region: 'EU' as const, buyer: 'professional' as const, vessels: [], hood: true, inertGas: true }
    let meetings = 0
    for (const transformation of library.transformations.values()) {
      const charges = transformation.charge.map((line, index) => ({
        material: line.material,
        role: line.role,
        at: line.at ?? ('vessel' as const),
        massG: line.amount,
        volumeMl: null,
        amountMol: null,
        equivalents: null,
        basis: 'source' as const,
        supply: 'bought' as const,
        line: index,
      }))
      const step = {
        transformation: transformation.id,
        makes: transformation.mainProduct,
        number: '1',
        scale: 1,
        limiting: { compound: transformation.limiting, amountMol: 0.1, massG: 10 },
        charges,
        theoreticalG: 10,
        ofCharge: { chargeG: 10, theoryG: 10, p10G: 7, medianG: 8, p90G: 9 },
        yieldFraction: { low: 0.7, typical: 0.8, high: 0.9 },
        expectedG: 8,
        p10G: 7,
        medianG: 8,
        p90G: 9,
        batches: 1,
        goesTo: [],
        coProducts: [],
        volumeMl: { perBatch: 100, assumed: false },
        notes: [],
      }
      const found = hazardsOf({
        library,
        tables,
        traits,
        steps: [step],
        start: { material: transformation.limiting, massG: 10 },
        settings: bench,
      })
      expect(found.materials.length, transformation.id).toBeGreaterThan(1)
      expect(
        found.materials.every(one => one.class !== 'none' || one.known === 'seen'),
        transformation.id,
      ).toBe(true)
      expect(found.gas.length > 0, transformation.id).toBe(found.steps[0]!.notes.some(note => note.startsWith('Gives up to')))
      expect(
        found.regulated.filter(hit => hit.action === 'stop'),
        transformation.id,
      ).toEqual([])
      meetings += found.meetings.filter(meeting => meeting.where === 'step').length
    }
    expect(library.transformations.size).toBeGreaterThanOrEqual(390)
    expect(meetings).toBeGreaterThan(400)
  })
})
