import { describe, expect, it } from 'vitest'
import { type Pack, packsFileSchema } from '../../../../core/shopping/packs.ts'
import { packsFromCsv, packsToCsv } from '../../../../core/shopping/packs-csv.ts'
import { isSamePack, withPrice, withPriceBefore } from '../../../../web/state/prices.ts'
import { emptyState } from '../../../../web/state/sheet-state.ts'

const file = packsFileSchema.parse({
  format: 'waybench-packs',
  version: 1,
  currency: 'EUR',
  priceFrom: { source: 'made up', trust: 'invented' },
  suppliers: [{ id: 'kiln-lane', name: 'Kiln Lane', carriageMinor: 0, hazardousFeeMinor: 0 }],
  packs: [
    { supplier: 'kiln-lane', material: 'benzil', amount: 1, unit: 'kg', priceMinor: 5000 },
    { supplier: 'kiln-lane', material: 'benzil', amount: 100, unit: 'g', priceMinor: 900, priceFrom: { source: 'page 4', trust: 'seen' } },
  ],
})
const [kilo, small] = file.packs as [Pack, Pack]
const plan = { ...emptyState(1).plan, packs: file }
const put = (on: typeof plan, pack: Pack) => withPrice(on, { supplier: file.suppliers[0]!, pack, currency: 'EUR' })

describe('a price written over a known one', () => {
  it('stands in its place, with what was there beside it, whatever unit the size is written in', () => {
    const mine = { ...kilo, amount: 1000, unit: 'g' as const, priceMinor: 4200, priceFrom: { trust: 'own bench' as const } }
    expect(isSamePack(mine, kilo)).toBe(true)
    const after = put(plan, mine)
    expect(after.packs).toEqual([{ ...kilo, priceMinor: 4200, priceFrom: { trust: 'own bench' }, inPlaceOf: { priceMinor: 5000 } }, small])
    expect(packsFileSchema.safeParse(after).success).toBe(true)
    // Written over twice, what the list said is still there; and it comes back whole.
    const twice = put({ ...plan, packs: after }, { ...mine, priceMinor: 4100 })
    expect(twice.packs[0]!.inPlaceOf).toEqual({ priceMinor: 5000 })
    expect(withPriceBefore(twice, twice.packs[0]!)).toEqual(file)
  })
  it('gives back where the old price was got', () => {
    const after = put(plan, { ...small, priceMinor: 950, priceFrom: {} })
    expect(after.packs[1]!.inPlaceOf).toEqual({ priceMinor: 900, priceFrom: { source: 'page 4', trust: 'seen' } })
    expect(withPriceBefore(after, after.packs[1]!)).toEqual(file)
  })
  it('is another pack where size, kind of measure or supplier differ', () => {
    for (const other of [
      { ...small, amount: 101 },
      { ...small, unit: 'mL' as const },
      { ...small, supplier: 'other' },
    ]) {
      expect(isSamePack(other, small)).toBe(false)
      expect(put(plan, other).packs).toHaveLength(3)
    }
  })
  it('leaves a carriage that nobody stated unknown, until somebody states it', () => {
    const corner = { id: 'corner', name: 'Corner shop', carriageMinor: 0, hazardousFeeMinor: 0 }
    const pack = { ...small, supplier: 'corner' }
    const open = withPrice(plan, { supplier: { ...corner, carriageUnknown: true }, pack, currency: 'EUR' })
    expect(open.suppliers[1]).toEqual({ ...corner, carriageUnknown: true })
    const again = withPrice({ ...plan, packs: open }, { supplier: { ...corner, carriageUnknown: true }, pack, currency: 'EUR' })
    expect(again.suppliers).toEqual(open.suppliers)
    const told = withPrice({ ...plan, packs: open }, { supplier: { ...corner, carriageMinor: 490 }, pack, currency: 'EUR' })
    expect(told.suppliers[1]).toEqual({ ...corner, carriageMinor: 490 })
    // What is known of a supplier is not written over by a price.
    expect(
      withPrice({ ...plan, packs: told }, { supplier: { ...corner, carriageUnknown: true }, pack, currency: 'EUR' }).suppliers,
    ).toEqual(told.suppliers)
  })
  it('keeps the old price through a table', () => {
    const after = put(plan, { ...small, priceMinor: 950, priceFrom: { source: 'a receipt', trust: 'own bench' } })
    const read = packsFromCsv(id => ({ ok: true, value: { id } as never, warnings: [] }), 'packs.csv', packsToCsv(after), {
      ...file,
      packs: [],
      suppliers: [],
    })
    expect(read.refused).toEqual([])
    expect(read.file.packs[1]).toMatchObject({ priceMinor: 950, inPlaceOf: { priceMinor: 900 } })
  })
})
