import { beforeAll, describe, expect, it } from 'vitest'
import { shoppingOf } from '../../core/shopping/basket.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { chargedLine, chargedStep } from '../support/charged-steps.ts'
import { checkValuesOf } from '../support/check-values.ts'
import { material, smallLibrary, transformation } from '../support/small-library.ts'

interface PackBuying {
  readonly id: string
  readonly inputs: {
    readonly need: number
    readonly mustBeExact: boolean
    readonly packs: readonly { readonly size: number; readonly price: number }[]
  }
  readonly expected: {
    readonly feasible: boolean
    readonly minimumCost: number
    readonly amountBought: number
    readonly packs: Readonly<Record<string, number>>
  }
}

let solver: Solver
beforeAll(async () => {
  solver = await loadSolver()
})

const entries = checkValuesOf('pack-buying', 5) as unknown as readonly PackBuying[]
// Each entry names its source in check-values.json. Those that must be met exactly ask another question: here a need is covered, and more
// may be bought than is needed.
const covering = entries.filter(entry => !entry.inputs.mustBeExact)

describe('buying packs, worked examples in print', () => {
  it('has them all', () => {
    expect(entries).toHaveLength(5)
    expect(covering.map(c => c.id)).toEqual(['pk-buying-hay', 'pk-oranges-1-cover', 'pk-lab-overshoot'])
  })

  it.each(covering)('$id', ({ inputs, expected }) => {
    const { lines, basket } = bought(inputs)
    expect(basket?.totalMinor).toBe(expected.minimumCost)
    expect(basket?.proven).toBe(true)
    expect(lines[0]!.packs.reduce((sum, p) => sum + p.amount * p.count, 0)).toBe(expected.amountBought)
    expect(Object.fromEntries(lines[0]!.packs.map(p => [String(p.amount), p.count]))).toEqual(expected.packs)
  })

  it('never costs more than meeting the need exactly does', () => {
    const exact = entries.filter(entry => entry.inputs.mustBeExact && entry.expected.feasible)
    expect(exact.map(e => e.id)).toEqual(['pk-oranges-2'])
    for (const { inputs, expected } of exact) expect(bought(inputs).basket!.totalMinor!).toBeLessThanOrEqual(expected.minimumCost)
  })
})

function bought({ need, packs }: PackBuying['inputs']) {
  const file: PacksFile = {
    format: 'waybench-packs',
    version: 1,
    currency: 'EUR',
    suppliers: [{ id: 'shop', name: 'Shop', carriageMinor: 0, hazardousFeeMinor: 0 }],
    packs: packs.map(({ size, price }) => ({ supplier: 'shop', material: 'stuff', amount: size, unit: 'g', priceMinor: price })),
  }
  return shoppingOf({
    library: smallLibrary([material({ id: 'stuff' })], [transformation({ id: 'step' })]),
    steps: [chargedStep({ transformation: 'step', charges: [chargedLine({ material: 'stuff', massG: need })] })],
    products: [],
    shelf: [],
    packs: file,
    reserve: 0,
    repeat: false,
    retainedSampleG: 0,
    solver,
  })
}
