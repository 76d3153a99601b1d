import { beforeAll, describe, expect, it } from 'vitest'
import type { Evaluation } from '../../../../core/plan/evaluation.ts'
import { costText } from '../../../../core/report/answers.ts'
import { carriageOpen } from '../../../../core/report/basket-gaps.ts'
import { shoppingOf } from '../../../../core/shopping/basket.ts'
import type { PacksFile } from '../../../../core/shopping/packs.ts'
import type { Solver } from '../../../../core/shopping/shopping.ts'
import { loadSolver } from '../../../../server/solver/highs.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const library = smallLibrary(
  [
    material({ id: 'salt' }),
    material({ id: 'oil', form: 'liquid' }),
    material({ id: 'rare' }),
    material({ id: 'fleeting', buyable: false }),
    material({ id: 'hydroxide', formula: 'NaOH', hazards: { codes: ['H314'], signalWord: 'Danger', from: 'data sheet of a test' } }),
    material({
      id: 'hydroxide-3m',
      kind: 'mixture',
      form: 'solution',
      densityGPerMl: 1.12,
      contains: { compound: 'hydroxide', molPerL: 3 },
    }),
    material({ id: 'water', form: 'liquid', formula: 'H2O', densityGPerMl: 0.998 }),
  ],
  [transformation({ id: 'step' })],
)
const packs: PacksFile = {
  format: 'waybench-packs',
  version: 1,
  currency: 'EUR',
  rates: { USD: 0.5, JPY: 0.006 },
  suppliers: [{ id: 'shop', name: 'Shop', carriageMinor: 500, hazardousFeeMinor: 700 }],
  packs: [
    { supplier: 'shop', material: 'salt', amount: 100, unit: 'g', priceMinor: 300 },
    { supplier: 'shop', material: 'hydroxide', amount: 1, unit: 'kg', priceMinor: 1100 },
  ],
}
let solver: Solver
beforeAll(async () => {
  solver = await loadSolver()
})
const shop = (grams: Readonly<Record<string, number | null>>, own: Partial<Parameters<typeof shoppingOf>[0]> = {}) => {
  const charges = Object.entries(grams).map(([id, massG]) =>
    chargedLine({ material: id, massG, basis: massG === null ? 'open' : 'source' }),
  )
  const steps = [chargedStep({ transformation: 'step', charges })]
  return shoppingOf({ library, steps, products: [], shelf: [], packs, reserve: 0, repeat: false, retainedSampleG: 0, solver, ...own })
}

describe('the basket', () => {
  it('says of an order whose carriage was never stated that it costs at least that', () => {
    const open = {
      ...packs,
      suppliers: packs.suppliers.map(one => ({ ...one, carriageMinor: 0, hazardousFeeMinor: 0, carriageUnknown: true as const })),
    }
    const { lines, basket } = shop({ salt: 150 }, { packs: open })
    expect(basket!.orders).toMatchObject([{ supplier: 'shop', goodsMinor: 600, totalMinor: 600, carriageUnknown: true }])
    expect(carriageOpen(basket!)).toBe('carriage of Shop not stated')
    expect(costText({ basket, shopping: lines } as Evaluation)).toBe('€\u00a06.00 and carriage not stated')
    const known = shop({ salt: 150 })
    expect(carriageOpen(known.basket!)).toBeNull()
    expect(costText({ basket: known.basket, shopping: known.lines } as Evaluation)).toBe('€\u00a011.00')
  })
  it('tells goods, carriage, fee, total and what is left over', () => {
    const { lines, basket, problems } = shop({ salt: 150 })
    expect(problems).toEqual([])
    expect(basket).toMatchObject({ totalMinor: 1100, complete: true, priceUnknown: [], amountUnknown: [], currency: 'EUR', proven: true })
    expect(basket!.orders).toEqual([
      {
        supplier: 'shop',
        name: 'Shop',
        goodsMinor: 600,
        carriageMinor: 500,
        hazardousFeeMinor: 0,
        minimumMinor: 0,
        totalMinor: 1100,
        priceFrom: {},
      },
    ])
    expect(lines[0]).toMatchObject({ buy: { amount: 150, unit: 'g' }, costMinor: 600, left: { amount: 50, unit: 'g' } })
  })

  it('is net of the shelf, and empty where the shelf has it all', () => {
    const { lines, basket } = shop({ salt: 150 }, { shelf: [{ material: 'salt', amount: 200, unit: 'g' }] })
    expect(lines[0]).toMatchObject({ need: { amount: 150 }, shelf: { amount: 150 }, buy: { amount: 0 }, costMinor: 0, packs: [] })
    expect(basket).toMatchObject({ totalMinor: 0, complete: true, orders: [], proven: true })
  })

  it('lists an unknown price first and never counts it as free', () => {
    const { lines, basket } = shop({ salt: 150, rare: 5 })
    expect(lines.map(l => [l.material, l.costMinor])).toEqual([
      ['rare', null],
      ['salt', 600],
    ])
    expect(basket).toMatchObject({ totalMinor: 1100, complete: false, priceUnknown: ['rare'] })
    expect(shop({ rare: 5 }).basket).toMatchObject({ totalMinor: null, complete: false })
  })

  it('does not buy what is not sold', () => {
    const { lines } = shop(
      { fleeting: 5 },
      { packs: { ...packs, packs: [{ supplier: 'shop', material: 'fleeting', amount: 5, unit: 'g', priceMinor: 1 }] } },
    )
    expect(lines[0]).toMatchObject({ costMinor: null, packs: [], notes: [expect.stringMatching(/made and used on the spot/)] })
  })

  it('lists an open amount, never as zero', () => {
    const { lines, basket } = shop({ salt: null })
    expect(lines[0]).toMatchObject({ need: { amount: null }, buy: { amount: null }, costMinor: null, open: true })
    expect(basket).toMatchObject({ complete: false, amountUnknown: ['salt'], priceUnknown: [] })
  })

  it('never buys water, and is complete however much of it there is', () => {
    const { lines, basket } = shop({ salt: 100, water: null })
    expect(lines.find(l => l.material === 'water')).toMatchObject({ buy: { amount: 0 }, costMinor: 0 })
    expect(basket).toMatchObject({ complete: true, amountUnknown: [] })
  })

  it('makes a solution that nobody sells up from what is sold, with its working', () => {
    const { lines, basket } = shop({ 'hydroxide-3m': 1120 })
    const made = lines.find(l => l.material === 'hydroxide-3m')!
    expect(made).toMatchObject({ buy: { amount: 0 }, costMinor: 0, madeUp: { from: 'hydroxide', with: 'water' } })
    // 1 L of 3 mol/L holds 3 mol of 39.997 g/mol (CIAAW weights).
    expect(made.madeUp!.fromAmount.amount).toBeCloseTo(119.99, 2)
    expect(made.madeUp!.how).toMatch(/never the other way round; make up to 1\.00\u00a0L/)
    expect(lines.find(l => l.material === 'hydroxide')).toMatchObject({ costMinor: 1100, packs: [{ count: 1 }] })
    expect(basket).toMatchObject({ totalMinor: 1100 + 500 + 700, complete: true })
  })

  it('takes the pellets for the solution from the shelf first', () => {
    const { lines, basket } = shop(
      { 'hydroxide-3m': 1120 },
      { shelf: [{ material: 'hydroxide', amount: 200, unit: 'g', assay: 0.85, opened: '2026-01-10' }] },
    )
    expect(basket!.totalMinor).toBe(0)
    const pellets = lines.find(l => l.material === 'hydroxide')!
    expect(pellets.notes).toContainEqual(expect.stringMatching(/120\u00a0g is 141\u00a0g out of the bottle opened 2026-01-10/))
  })

  it('shares the pack between the solution and the need of its own', () => {
    const { basket, lines } = shop({ 'hydroxide-3m': 1120, hydroxide: 900 })
    // 900 g + 120 g: a second kilo.
    expect(lines.find(l => l.material === 'hydroxide')).toMatchObject({ packs: [{ count: 2 }] })
    expect(basket!.totalMinor).toBe(2200 + 500 + 700)
  })

  it('turns a foreign price by the rate, whatever the places of its minor unit', () => {
    const foreign = (currency: string, priceMinor: number): PacksFile => ({
      ...packs,
      packs: [{ supplier: 'shop', material: 'salt', amount: 100, unit: 'g', priceMinor, currency }],
    })
    expect(shop({ salt: 50 }, { packs: foreign('USD', 1001) }).lines[0]!.costMinor).toBe(501)
    // 1000 yen at 0.006 EUR are 6.00 EUR.
    expect(shop({ salt: 50 }, { packs: foreign('JPY', 1000) }).lines[0]!.costMinor).toBe(600)
    const without = shop({ salt: 50 }, { packs: foreign('CHF', 1000) })
    expect(without.problems.map(p => p.code)).toEqual(['pack-currency-without-rate'])
    expect(without.basket!.priceUnknown).toEqual(['salt'])
  })

  it('leaves out a pack that cannot be compared or that nobody sells, and says so', () => {
    const byVolume: PacksFile = { ...packs, packs: [{ supplier: 'shop', material: 'oil', amount: 100, unit: 'mL', priceMinor: 1 }] }
    expect(shop({ oil: 5 }, { packs: byVolume }).problems.map(p => p.code)).toEqual(['pack-not-comparable'])
    const nobody: PacksFile = { ...packs, packs: [{ supplier: 'nobody', material: 'salt', amount: 100, unit: 'g', priceMinor: 1 }] }
    expect(shop({ salt: 5 }, { packs: nobody }).problems.map(p => p.code)).toEqual(['pack-supplier-unknown'])
  })

  it('reaches a minimum order by buying more', () => {
    const least: PacksFile = { ...packs, suppliers: [{ ...packs.suppliers[0]!, minimumOrderMinor: 1000 }] }
    const { basket, lines } = shop({ salt: 150 }, { packs: least })
    expect(basket!.orders[0]!.goodsMinor).toBe(1200)
    expect(lines[0]).toMatchObject({ packs: [{ count: 4 }], left: { amount: 250 } })
  })

  it('says that a minimum order cannot be reached, instead of guessing', () => {
    const least: PacksFile = {
      ...packs,
      suppliers: [{ ...packs.suppliers[0]!, minimumOrderMinor: 1000 }],
      packs: [{ supplier: 'shop', material: 'salt', amount: 100, unit: 'g', priceMinor: 0 }],
    }
    const { basket, problems, lines } = shop({ salt: 150 }, { packs: least })
    expect(basket).toBeNull()
    expect(problems.map(p => p.code)).toEqual(['basket-infeasible'])
    expect(lines[0]).toMatchObject({ buy: { amount: 150 }, costMinor: null, packs: [] })
  })

  it('is null without a solver, the lines standing without packs', () => {
    const { basket, lines, problems } = shop({ salt: 150 }, { solver: null })
    expect([basket, problems]).toEqual([null, []])
    expect(lines[0]).toMatchObject({ buy: { amount: 150 }, packs: [], costMinor: null })
  })

  it.each([
    ['gives no answer', { status: 'failed', columns: new Map() }],
    ['claims an optimum that covers nothing', { status: 'optimal', columns: new Map() }],
  ] as const)('is not shown where the solver %s', (_, answer) => {
    const { basket, problems } = shop({ salt: 150 }, { solver: () => answer })
    expect(basket).toBeNull()
    expect(problems.map(p => p.code)).toEqual(['basket-not-found'])
  })

  it('says that the best found is not proven where the solver stopped at its limit', () => {
    const limited: Solver = model => ({ ...solver(model), status: 'feasible' })
    expect(shop({ salt: 150 }, { solver: limited }).basket).toMatchObject({ totalMinor: 1100, proven: false })
  })
})
