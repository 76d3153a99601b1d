import { beforeAll, describe, expect, it } from 'vitest'
import { evaluate } from '../../core/plan/evaluate.ts'
import { shoppingOf } from '../../core/shopping/basket.ts'
import { isHazardousGood } from '../../core/shopping/hazardous-goods.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { demoParts } from '../../server/library/demo.ts'
import { openWorkshop } from '../../server/library/workshop.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { benzoinGoal, benzoinPlan, mass, rest } from '../support/benzoin-plans.ts'
import { largePurchase } from '../support/large-basket.ts'

/** The basket found without a program, beside the one that HiGHS 1.15 proves the cheapest. */
let solver: Solver
beforeAll(async () => {
  solver = await loadSolver()
})

describe('a basket at once', () => {
  it.each([
    [12, 2, 3, 0],
    [12, 3, 3, 9000],
    [9, 3, 2, 9000],
  ])(
    'of %i materials, %i packs, %i suppliers, minimum %i: between its bound and what it says could be saved',
    (materials, packsEach, suppliers, minimumMinor) => {
      let dearer = 0
      for (let seed = 1; seed <= 6; seed++) {
        const input = largePurchase(seed, { materials, packsEach, suppliers, minimumMinor }, solver)
        const least = shoppingOf(input).basket!
        const { lines, basket } = shoppingOf({ ...input, solver: null, atOnce: true })
        expect(least.proven).toBe(true)
        expect(basket!.boundMinor!).toBeLessThanOrEqual(least.totalMinor!)
        expect(basket!.totalMinor!).toBeGreaterThanOrEqual(least.totalMinor!)
        expect(basket!.proven).toBe(basket!.boundMinor === basket!.totalMinor)
        if (basket!.totalMinor! > least.totalMinor!) dearer++
        // Witness: needs covered, minimums reached, the total summed anew from the packs.
        let total = 0
        const orders = new Map<string, { minor: number; hazardous: boolean }>()
        for (const line of lines) {
          expect(line.packs.reduce((sum, pack) => sum + pack.count * pack.amount, 0)).toBeGreaterThanOrEqual(line.need.amount!)
          for (const { supplier, count, priceMinor } of line.packs) {
            const order = orders.get(supplier) ?? { minor: 0, hazardous: false }
            order.minor += count * priceMinor
            order.hazardous ||= isHazardousGood(input.library.materials.get(line.material)!)
            orders.set(supplier, order)
          }
        }
        for (const [id, { minor, hazardous }] of orders) {
          const supplier = input.packs!.suppliers.find(one => one.id === id)!
          expect(minor).toBeGreaterThanOrEqual(supplier.minimumOrderMinor ?? 0)
          total += minor + supplier.carriageMinor + (hazardous ? supplier.hazardousFeeMinor : 0)
        }
        expect(basket!.totalMinor).toBe(total)
      }
      // Else nothing here could tell it from the cheapest.
      expect(dearer).toBeGreaterThan(0)
    },
  )

  it('from ten suppliers, too many for their groups, still has a bound below what is proven', () => {
    const input = largePurchase(2, { materials: 8, packsEach: 2, suppliers: 10, minimumMinor: 0 }, solver)
    const least = shoppingOf(input).basket!
    const { basket } = shoppingOf({ ...input, solver: null, atOnce: true })
    expect(least.proven).toBe(true)
    expect(basket!.boundMinor!).toBeGreaterThan(0)
    expect(basket!.boundMinor!).toBeLessThanOrEqual(least.totalMinor!)
    expect(basket!.totalMinor!).toBeGreaterThanOrEqual(least.totalMinor!)
  })

  it('of a plan on the bundled library makes up its solutions, and is told with its gap', async () => {
    const { library, tables, ...workshop } = await openWorkshop([])
    const { settings, ...stock } = demoParts()
    // The weaker solutions neither stand on the shelf nor are sold, but what they are made up from is sold at two places.
    const isWeaker = ({ material }: { readonly material: string }) => ['ethanol-95', 'ammonia-25'].includes(material)
    const shelf = stock.shelf.filter(item => !isWeaker(item))
    const stronger = ['ethanol', 'ammonia-solution-35'].flatMap(material =>
      stock.packs!.suppliers.slice(0, 2).map(({ id }, at) => ({
        supplier: id,
        material,
        amount: 250,
        unit: 'mL' as const,
        priceMinor: 500 + 40 * at,
      })),
    )
    const packs = { ...stock.packs!, packs: [...stock.packs!.packs.filter(pack => !isWeaker(pack)), ...stronger] }
    const goals = ['lophine', '2-3-diphenylquinoxaline', 'tetraphenylcyclopentadienone'].map((target, i) =>
      benzoinGoal(library, target, i === 2 ? rest : mass(3)),
    )
    const plan = benzoinPlan(goals, { settings, packs, shelf })
    const shared = { library, tables, traits: workshop.traits(), plan }
    const least = evaluate({ ...shared, solver })
    const found = evaluate({ ...shared, solver: null, basketAtOnce: true })
    if ('stopped' in least || 'stopped' in found) throw new Error('a list ends this plan')
    expect(found.basket!.priceUnknown).toEqual(least.basket!.priceUnknown)
    expect(found.shopping.filter(line => line.madeUp !== null).map(line => line.material)).toEqual(
      least.shopping.filter(line => line.madeUp !== null).map(line => line.material),
    )
    expect(found.shopping.some(line => line.madeUp !== null)).toBe(true)
    expect(found.basket!.totalMinor!).toBeGreaterThanOrEqual(least.basket!.totalMinor!)
    expect(found.basket!.boundMinor!).toBeLessThanOrEqual(least.basket!.totalMinor!)
  })
})
