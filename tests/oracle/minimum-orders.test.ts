import { beforeAll, describe, expect, it } from 'vitest'
import { basketModel } from '../../core/shopping/basket-model.ts'
import type { Decision } from '../../core/shopping/decision.ts'
import { isHazardousGood } from '../../core/shopping/hazardous-goods.ts'
import { asked, coversOfItems } from '../../core/shopping/least-cost.ts'
import { leastLeft } from '../../core/shopping/least-left.ts'
import { cheapestWithMinimums } from '../../core/shopping/minimum-orders.ts'
import { ordersOf } from '../../core/shopping/orders.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { supplyOf } from '../../core/shopping/supply.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { largePurchase } from '../support/large-basket.ts'

/**
 * The search by groups of suppliers against the whole purchase as one integer program, which shares nothing with it but the needs. Source:
 * HiGHS 1.15, which proves each of these.
 */
let solver: Solver
beforeAll(async () => {
  solver = await loadSolver()
})

const itemsOf = (seed: number, materials: number, suppliers: number, minimumMinor: number) =>
  supplyOf(largePurchase(seed, { materials, packsEach: 3, suppliers, minimumMinor }, solver)).items

describe('baskets under minimum orders that bind', () => {
  it.each(Array.from({ length: 24 }, (_, i) => i + 1))('case %i costs what the integer program of the whole purchase costs', seed => {
    const size = [
      [6, 2, 6000],
      [9, 3, 9000],
      [14, 3, 20_000],
    ][seed % 3]!
    const input = largePurchase(seed, { materials: size[0]!, packsEach: 3, suppliers: size[1]!, minimumMinor: size[2]! }, solver)
    const { items } = supplyOf(input)
    const own = cheapestWithMinimums(items)
    const whole = asked(input.library, items, coversOfItems(items), { least: 'cost', mostMissing: 0, minimums: true }, solver)
    expect(whole.status).toBe('optimal')
    if (own === null || own === 'infeasible') throw new Error(`${own}`)
    expect(own.costMinor).toBe(whole.decided!.costMinor)
    expect(own.boundMinor).toBe(own.costMinor)
    // Witness: every need is covered, every minimum reached, and the sum is that of packs, carriage and fees.
    const goods = new Map<string, { minor: number; hazardous: boolean }>()
    for (const [offer, count] of own.decision.counts) {
      const order = goods.get(offer.supplier.id) ?? { minor: 0, hazardous: false }
      order.minor += offer.priceMinor * count
      order.hazardous ||= isHazardousGood(input.library.materials.get(offer.pack.material)!)
      goods.set(offer.supplier.id, order)
    }
    let total = 0
    for (const supplier of input.packs!.suppliers) {
      const order = goods.get(supplier.id)
      if (order === undefined) continue
      expect(order.minor).toBeGreaterThanOrEqual(supplier.minimumOrderMinor ?? 0)
      total += order.minor + supplier.carriageMinor + (order.hazardous ? supplier.hazardousFeeMinor : 0)
    }
    expect(total).toBe(own.costMinor)
    for (const item of items)
      expect(item.offers.reduce((sum, offer) => sum + offer.size * (own.decision.counts.get(offer) ?? 0), 0)).toBeGreaterThanOrEqual(
        item.need,
      )
  })

  it('are not free of them: in most cases the minimums make the basket dearer', () => {
    const dearer = Array.from({ length: 12 }, (_, i) => i + 1).filter(seed => {
      const own = cheapestWithMinimums(itemsOf(seed, 9, 3, 9000))
      const free = cheapestWithMinimums(itemsOf(seed, 9, 3, 0))
      return own !== null && own !== 'infeasible' && free !== null && free !== 'infeasible' && own.costMinor > free.costMinor
    })
    expect(dearer.length).toBeGreaterThan(5)
  })

  it('are proven for 60 materials, 4 packs and 4 suppliers within the work allowed; with next to none allowed the gap is told', () => {
    const items = supplyOf(largePurchase(1, { materials: 60, packsEach: 4, suppliers: 4, minimumMinor: 50_000 }, solver)).items
    const own = cheapestWithMinimums(items)
    const hasty = cheapestWithMinimums(items, { budget: 10 })
    if (own === null || own === 'infeasible' || hasty === null || hasty === 'infeasible') throw new Error('no basket')
    expect(own.boundMinor).toBe(own.costMinor)
    expect(hasty.boundMinor).toBeLessThan(hasty.costMinor)
    expect(hasty.boundMinor).toBeLessThanOrEqual(own.costMinor)
    expect(hasty.costMinor).toBeGreaterThanOrEqual(own.costMinor)
  })
})

describe('baskets with the least left over', () => {
  it('leave what the integer program of the whole purchase leaves, and cost no more', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const input = largePurchase(seed, { materials: 5, packsEach: 2, suppliers: 2, minimumMinor: 0 }, solver)
      const { items } = supplyOf(input)
      const covers = coversOfItems(items)
      const model = basketModel(items, { least: 'left', mostMissing: 0, minimums: true }, covers)
      const worth = ({ counts }: Decision) =>
        items.reduce((sum, { offers }) => {
          const perUnit = Math.min(...offers.map(offer => offer.priceMinor / offer.size))
          return sum + offers.reduce((size, offer) => size + offer.size * (counts.get(offer) ?? 0), 0) * perUnit
        }, 0)
      const least = worth(model.read(solver(model.text).columns)!)
      const own = leastLeft(items)!
      expect(worth(own.decision), `seed ${seed}`).toBeCloseTo(least, 3)
      const whole = asked(input.library, items, covers, { least: 'cost', mostMissing: 0, minimums: true, mostLeft: least }, solver)
      expect(own.costMinor).toBeLessThanOrEqual(whole.decided!.costMinor)
      expect(own.costMinor).toBe(ordersOf(input.library, own.decision.counts).reduce((sum, order) => sum + order.totalMinor, 0))
      for (const item of items)
        expect(item.offers.reduce((sum, offer) => sum + offer.size * (own.decision.counts.get(offer) ?? 0), 0)).toBeGreaterThanOrEqual(
          item.need,
        )
    }
  })
})
