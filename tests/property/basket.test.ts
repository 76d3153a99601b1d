import fc from 'fast-check'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Shopping, type ShoppingInput, shoppingOf } from '../../core/shopping/basket.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { chargedLine, chargedStep } from '../support/charged-steps.ts'
import { material, smallLibrary, transformation } from '../support/small-library.ts'

/**
 * Baskets against listing every basket: the listing below shares no code with the model. Materials are three plain ones, and a salt with two
 * solutions of it: a weak one that nobody sells and a strong one.
 */
const plain = ['first', 'second', 'third'] as const
const fractionOf: Readonly<Record<string, number>> = { salt: 1, 'salt-50pct': 0.5, 'salt-10pct': 0.1 }
const library = smallLibrary(
  [
    material({ id: 'first' }),
    material({ id: 'second', hazards: { codes: ['H225'], signalWord: 'Danger', from: 'a test' } }),
    material({ id: 'third', hazards: { codes: ['H411'], signalWord: 'none', from: 'a test' } }),
    material({ id: 'water', form: 'liquid', formula: 'H2O', densityGPerMl: 1 }),
    material({ id: 'salt', formula: 'NaCl' }),
    material({ id: 'salt-50pct', kind: 'mixture', form: 'solution', densityGPerMl: 1, contains: { compound: 'salt', massFraction: 0.5 } }),
    material({ id: 'salt-10pct', kind: 'mixture', form: 'solution', densityGPerMl: 1, contains: { compound: 'salt', massFraction: 0.1 } }),
  ],
  [transformation({ id: 'step' })],
)
const isFeeGood = (id: string) => id === 'second'

interface Case {
  readonly needs: ReadonlyMap<string, number>
  readonly stock: ReadonlyMap<string, number>
  readonly file: PacksFile
}

const amount = fc.integer({ min: 1, max: 30 })
const sold = [...plain, 'salt', 'salt-50pct']
const caseArbitrary: fc.Arbitrary<Case> = fc
  .record({
    needs: fc.dictionary(fc.constantFrom(...plain, 'salt', 'salt-50pct', 'salt-10pct'), amount, { minKeys: 1, maxKeys: 3 }),
    stock: fc.dictionary(fc.constantFrom(...plain, 'salt', 'salt-50pct', 'salt-10pct'), amount, { maxKeys: 2 }),
    suppliers: fc.array(
      fc.record({
        carriage: fc.integer({ min: 0, max: 15 }),
        fee: fc.integer({ min: 0, max: 10 }),
        minimum: fc.integer({ min: 0, max: 30 }),
      }),
      { minLength: 1, maxLength: 2 },
    ),
    packs: fc.array(
      fc.record({
        of: fc.nat(sold.length - 1),
        at: fc.nat(1),
        size: fc.integer({ min: 5, max: 25 }),
        price: fc.integer({ min: 6, max: 25 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
  })
  .map(({ needs, stock, suppliers, packs }) => ({
    needs: new Map(Object.entries(needs)),
    stock: new Map(Object.entries(stock)),
    file: {
      format: 'waybench-packs',
      version: 1,
      currency: 'EUR',
      suppliers: suppliers.map(({ carriage, fee, minimum }, index) => ({
        id: `shop-${index}`,
        name: `Shop ${index}`,
        carriageMinor: carriage,
        hazardousFeeMinor: fee,
        ...(minimum > 10 ? { minimumOrderMinor: minimum } : {}),
      })),
      packs: packs.map(({ of, at, size, price }) => ({
        supplier: `shop-${at % suppliers.length}`,
        material: sold[of]!,
        amount: size,
        unit: 'g' as const,
        priceMinor: price,
      })),
    },
  }))

let solver: Solver
beforeAll(async () => {
  solver = await loadSolver()
})

const inputOf = ({ needs, stock, file }: Case): ShoppingInput => ({
  library,
  steps: [chargedStep({ transformation: 'step', charges: [...needs].map(([id, massG]) => chargedLine({ material: id, massG })) })],
  products: [],
  shelf: [...stock].map(([id, grams]) => ({ material: id, amount: grams, unit: 'g' as const })),
  packs: file,
  reserve: 0,
  repeat: false,
  retainedSampleG: 0,
  solver,
})

describe('baskets', () => {
  it('cost what the cheapest of all possible baskets costs, in 500 seeded cases', () => {
    let withFee = 0
    let withMaking = 0
    fc.assert(
      fc.property(caseArbitrary, one => {
        const found = shoppingOf(inputOf(one))
        const best = cheapest(one)
        expect(found.problems).toEqual([])
        expect(found.basket!.proven).toBe(true)
        expect([...found.basket!.priceUnknown].sort()).toEqual(best.unknown)
        expect(found.basket!.orders.reduce((sum, order) => sum + order.totalMinor, 0)).toBe(best.cost)
        witness(one, found)
        if (found.basket!.orders.some(order => order.hazardousFeeMinor > 0)) withFee++
        if (found.lines.some(line => line.madeUp !== null)) withMaking++
      }),
      { seed: 20_261_126, numRuns: 500 },
    )
    // The cases must not all be easy ones.
    expect(withFee).toBeGreaterThan(20)
    expect(withMaking).toBeGreaterThan(50)
  })

  it('never cost less when more is needed', () => {
    fc.assert(
      fc.property(caseArbitrary, fc.integer({ min: 1, max: 10 }), (one, more) => {
        const dearer = { ...one, needs: new Map([...one.needs].map(([id, grams]) => [id, grams + more])) }
        const [less, rather] = [shoppingOf(inputOf(one)), shoppingOf(inputOf(dearer))]
        fc.pre(less.basket!.priceUnknown.length === 0 && rather.basket!.priceUnknown.length === 0)
        expect(rather.basket!.totalMinor!).toBeGreaterThanOrEqual(less.basket!.totalMinor!)
      }),
      { seed: 7, numRuns: 60 },
    )
  })
})

/** The answer looked at by itself: every need covered, every sum right, every minimum order reached. */
function witness({ needs, stock, file }: Case, { lines, basket }: Shopping): void {
  const given = new Map<string, number>()
  const taken = new Map<string, number>(needs)
  const add = (to: Map<string, number>, id: string, value: number) => to.set(id, (to.get(id) ?? 0) + value)
  for (const line of lines) {
    add(given, line.material, line.packs.reduce((sum, p) => sum + p.amount * p.count, 0) + (stock.get(line.material) ?? 0))
    if (line.madeUp === null) continue
    // Salt in = salt out: the source holds as much of it as the solution that is made.
    const made = line.need.amount! - line.shelf.amount!
    expect(line.madeUp.fromAmount.amount! * fractionOf[line.madeUp.from]!).toBeCloseTo(made * fractionOf[line.material]!, 9)
    expect(line.madeUp.fromAmount.amount! + line.madeUp.withAmount.amount!).toBeCloseTo(made, 9)
    add(given, line.material, made)
    add(taken, line.madeUp.from, line.madeUp.fromAmount.amount!)
  }
  for (const [id, grams] of taken) if (!basket!.priceUnknown.includes(id)) expect(given.get(id) ?? 0).toBeGreaterThanOrEqual(grams - 1e-6)
  for (const order of basket!.orders) {
    const supplier = file.suppliers.find(s => s.id === order.supplier)!
    const own = lines.flatMap(line => line.packs.filter(p => p.supplier === supplier.id).map(p => ({ ...p, material: line.material })))
    expect(order.goodsMinor).toBe(own.reduce((sum, p) => sum + p.count * p.priceMinor, 0))
    expect(order.goodsMinor).toBeGreaterThanOrEqual(supplier.minimumOrderMinor ?? 0)
    expect(order.carriageMinor).toBe(supplier.carriageMinor)
    expect(order.hazardousFeeMinor).toBe(own.some(p => isFeeGood(p.material)) ? supplier.hazardousFeeMinor : 0)
    expect(order.totalMinor).toBe(order.goodsMinor + order.carriageMinor + order.hazardousFeeMinor)
  }
}

/** Every basket there is: which recipe for the weak solution, then every number of every pack. */
function cheapest({ needs, stock, file }: Case): { readonly cost: number; readonly unknown: readonly string[] } {
  const short = (needs.get('salt-10pct') ?? 0) - (stock.get('salt-10pct') ?? 0)
  const isSold = (id: string) => file.packs.some(p => p.material === id)
  const recipes = short <= 0 || isSold('salt-10pct') ? [null] : ['salt', 'salt-50pct', 'none']
  // The strong solution can be made up too, where nobody sells it.
  const strongShort = (needs.get('salt-50pct') ?? 0) - (stock.get('salt-50pct') ?? 0)
  const strongRecipes = strongShort <= 0 || isSold('salt-50pct') ? [null] : ['salt', 'none']
  let best = { cost: Number.POSITIVE_INFINITY, unknown: [] as string[] }
  for (const weak of recipes)
    for (const strong of strongRecipes) {
      const demand = new Map(needs)
      const unknown: string[] = []
      const add = (id: string, grams: number) => demand.set(id, (demand.get(id) ?? 0) + grams)
      if (weak !== null) demand.delete('salt-10pct')
      if (strong !== null) demand.delete('salt-50pct')
      if (weak === 'none') unknown.push('salt-10pct')
      else if (weak !== null) add(weak, (short * 0.1) / fractionOf[weak]!)
      if (strong === 'none') unknown.push('salt-50pct')
      else if (strong === 'salt') add('salt', strongShort * 0.5)
      // A solution that is itself short and not sold has none to give.
      if (weak === 'salt-50pct' && strong !== null) continue
      let possible = true
      for (const [id, grams] of [...demand])
        if (grams > (stock.get(id) ?? 0) + 1e-9 && !isSold(id)) {
          // Its own need is out of reach at any price; what a recipe wants of it makes the recipe impossible.
          if ((needs.get(id) ?? 0) <= (stock.get(id) ?? 0) || id === weak || (id === 'salt' && strong === 'salt')) possible = false
          else {
            unknown.push(id)
            demand.delete(id)
          }
        }
      if (!possible) continue
      const cost = cheapestPacks(demand, stock, file, buyable(needs, stock, file))
      unknown.sort()
      if (
        unknown.length < best.unknown.length ||
        best.cost === Number.POSITIVE_INFINITY ||
        (unknown.length === best.unknown.length && cost < best.cost)
      )
        best = { cost, unknown }
    }
  return best
}

/** Packs that may be bought: of what is needed, or might be for a recipe, and is not on the shelf in full. Minimum orders are filled from them. */
function buyable(needs: Case['needs'], stock: Case['stock'], file: PacksFile): ReadonlySet<string> {
  const most = new Map(needs)
  const short = (id: string) => Math.max(0, (needs.get(id) ?? 0) - (stock.get(id) ?? 0))
  const isSold = (id: string) => file.packs.some(p => p.material === id)
  for (const solution of ['salt-10pct', 'salt-50pct'])
    if (short(solution) > 0 && !isSold(solution))
      for (const source of solution === 'salt-10pct' ? ['salt', 'salt-50pct'] : ['salt'])
        most.set(source, (most.get(source) ?? 0) + ((needs.get(solution) ?? 0) * fractionOf[solution]!) / fractionOf[source]!)
  return new Set([...most].filter(([id, grams]) => grams > (stock.get(id) ?? 0)).map(([id]) => id))
}

function cheapestPacks(
  demand: ReadonlyMap<string, number>,
  stock: Case['stock'],
  file: PacksFile,
  buyableIds: ReadonlySet<string>,
): number {
  const packs = file.packs.filter(p => buyableIds.has(p.material))
  const largest = Math.max(0, ...demand.values())
  let best = Number.POSITIVE_INFINITY
  const counts = packs.map(() => 0)
  const walk = (index: number, goods: number) => {
    if (goods >= best) return
    if (index === packs.length) {
      for (const [id, grams] of demand) {
        const bought = packs.reduce((sum, p, at) => (p.material === id ? sum + p.amount * counts[at]! : sum), 0)
        if (bought + (stock.get(id) ?? 0) < grams - 1e-9) return
      }
      let cost = goods
      for (const supplier of file.suppliers) {
        const own = packs.filter((p, at) => p.supplier === supplier.id && counts[at]! > 0)
        if (own.length === 0) continue
        const sum = packs.reduce((total, p, at) => (p.supplier === supplier.id ? total + p.priceMinor * counts[at]! : total), 0)
        if (sum < (supplier.minimumOrderMinor ?? 0)) return
        cost += supplier.carriageMinor + (own.some(p => isFeeGood(p.material)) ? supplier.hazardousFeeMinor : 0)
      }
      best = Math.min(best, cost)
      return
    }
    const pack = packs[index]!
    const minimum = file.suppliers.find(s => s.id === pack.supplier)!.minimumOrderMinor ?? 0
    const most = Math.ceil(largest / pack.amount) + Math.ceil(minimum / pack.priceMinor)
    for (counts[index] = 0; counts[index]! <= most; counts[index]!++) walk(index + 1, goods + pack.priceMinor * counts[index]!)
    counts[index] = 0
  }
  walk(0, 0)
  return best
}
