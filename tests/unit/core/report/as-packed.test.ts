import { beforeAll, expect, it } from 'vitest'
import { asPacked, packForReserve, reservePackText } from '../../../../core/report/as-packed.ts'
import type { ShoppingLine } from '../../../../core/shopping/shopping.ts'
import { reported } from './demo-plans.ts'

let demo: Awaited<ReturnType<typeof reported>>
beforeAll(async () => {
  demo = await reported('Benzoin downstream')
})

// Density of acetic acid 1.049 g/mL at 20 °C: CRC Handbook, from memory; by hand 105.3 / 1.049 = 100.4, so the second bottle is for 0.4 mL.
const acid = (changes: Partial<ShoppingLine> = {}): ShoppingLine => {
  const g = (amount: number) => ({ amount, unit: 'g' as const })
  return {
    ...demo.evaluation.shopping.find(one => one.material === 'acetic-acid')!,
    need: g(157.8),
    shelf: g(52.5),
    buy: g(105.3),
    left: g(2 * 104.9 - 105.3),
    open: false,
    atLeast: false,
    packs: [{ supplier: 'shop', amount: 100, unit: 'mL', count: 2, priceMinor: 610, priceFrom: {} }],
    uses: [],
    lots: [],
    ...changes,
  }
}

it('reads what is sold by volume by volume', () => {
  const line = asPacked(demo.library, acid())
  expect(line.buy.unit).toBe('mL')
  expect(line.buy.amount).toBeCloseTo(100.4, 1)
  expect(line.need.amount! - line.shelf.amount!).toBeCloseTo(line.buy.amount!, 9)
  const byMass = acid({ packs: [{ supplier: 'shop', amount: 500, unit: 'g', count: 1, priceMinor: 610, priceFrom: {} }] })
  expect(asPacked(demo.library, byMass)).toBe(byMass)
})

it('tells a pack that only the reserve asks for, and what it costs', () => {
  const line = asPacked(demo.library, acid())
  expect(reservePackText(packForReserve(demo.library, line, 0.1)!, 'EUR')).toMatch(
    /^0\.\d+\u00a0mL less, .* saves a pack of €\u00a06\.10\.$/,
  )
  // Without a reserve every gram of it is charged.
  expect(packForReserve(demo.library, line, 0)).toBeNull()
  // 130 g are more than the bottle and the reserve of 14 g together.
  expect(packForReserve(demo.library, acid({ buy: { amount: 130, unit: 'g' }, left: { amount: 79.8, unit: 'g' } }), 0.1)).toBeNull()
  expect(packForReserve(demo.library, acid({ open: true }), 0.1)).toBeNull()
})
