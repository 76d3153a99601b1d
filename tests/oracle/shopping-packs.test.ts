import { beforeAll, describe, expect, it } from 'vitest'
import { shoppingOf } from '../../core/shopping/basket.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { chargedLine, chargedStep } from '../support/charged-steps.ts'
import checkValues from '../support/check-values.json' with { type: 'json' }
import { material, smallLibrary, transformation } from '../support/small-library.ts'

interface PackBuying {
  readonly id: string
  readonly inputs: {
    readonly need: number
    readonly mustBeExact: boolean
    readonly packs: readonly { readonly size: number; readonly price: number }[]
  }
  readonly expected: { readonly minimumCost: number; readonly amountBought: number; readonly packs: Readonly<Record<string, number>> }
}

let solver: Solver
beforeAll(async () => {
  solver = await loadSolver()
})

const entries = checkValues.filter(entry => entry.topic === 'pack-buying')
// Each entry names its source in check-values.json. Those that must be met exactly ask another question: here a need is covered, and more
// may be bought than is needed.
const covering = (entries as unknown as readonly PackBuying[]).filter(entry => !entry.inputs.mustBeExact)

describe('buying packs, worked examples in print', () => {
  it('has them all', () => {
    expect(entries).toHaveLength(5)
    expect(covering.map(c => c.id)).toEqual(['pk-buying-hay', 'pk-oranges-1-cover', 'pk-lab-overshoot'])
  })

  it.each(covering)('$id', ({ inputs, expected }) => {
    const library = smallLibrary([material({ id: 'stuff' })], [transformation({ id: 'step' })])
    const packs: PacksFile = {
      format: 'waybench-packs',
      version: 1,
      currency: 'EUR',
      suppliers: [{ id: 'shop', name: 'Shop', carriageMinor: 0, hazardousFeeMinor: 0 }],
      packs: inputs.packs.map(({ size, price }) => ({ supplier: 'shop', material: 'stuff', amount: size, unit: 'g', priceMinor: price })),
    }
    const steps = [chargedStep({ transformation: 'step', charges: [chargedLine({ material: 'stuff', massG: inputs.need })] })]
    const { lines, basket } = shoppingOf({
      library,
      steps,
      products: [],
      shelf: [],
      packs,
      reserve: 0,
      repeat: false,
      retainedSampleG: 0,
      solver,
    })
    expect(basket?.totalMinor).toBe(expected.minimumCost)
    expect(basket?.proven).toBe(true)
    expect(lines[0]!.packs.reduce((sum, p) => sum + p.amount * p.count, 0)).toBe(expected.amountBought)
    expect(Object.fromEntries(lines[0]!.packs.map(p => [String(p.amount), p.count]))).toEqual(expected.packs)
  })
})
