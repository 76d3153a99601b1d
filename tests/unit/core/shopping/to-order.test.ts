import { expect, it } from 'vitest'
import type { ShoppingLine } from '../../../../core/shopping/shopping.ts'
import { materialsToOrder } from '../../../../core/shopping/to-order.ts'

const line = (material: string, buy: number | null, from?: string): ShoppingLine => {
  const g = (amount: number | null) => ({ amount, unit: 'g' as const })
  return {
    material,
    need: g(1),
    shelf: g(0),
    buy: g(buy),
    open: false,
    planned: false,
    atLeast: false,
    packs: [],
    costMinor: null,
    left: g(0),
    uses: [],
    madeUp: from === undefined ? null : { from, fromAmount: g(1), with: 'water', withAmount: g(1), how: '' },
    lots: [],
    notes: [],
  }
}

it('waits for what is bought, for what may be, and for what is made up from such', () => {
  const lines = [line('bought', 5), line('open', null), line('there', 0), line('solution', 0, 'bought'), line('other-solution', 0, 'there')]
  expect([...materialsToOrder(lines)]).toEqual(['bought', 'open', 'solution'])
})
