import { beforeAll, describe, expect, it } from 'vitest'
import { solve } from 'yalps'
import { shoppingOf } from '../../core/shopping/basket.ts'
import type { Solver } from '../../core/shopping/shopping.ts'
import { loadSolver } from '../../server/solver/highs.ts'
import { largePurchase } from '../support/large-basket.ts'

/**
 * Baskets against a second integer-program solver, on a program written here anew: counts of packs, carriage, hazardous-goods fee and minimum
 * order, nothing of the product's covers or bounds. Source: YALPS 0.6.4, an independent simplex with branch and bound.
 */
let solver: Solver
beforeAll(async () => {
  solver = await loadSolver()
})

const size = { materials: 5, packsEach: 2, suppliers: 2, minimumMinor: 0 }

describe('baskets beside a second solver', () => {
  it.each(Array.from({ length: 50 }, (_, i) => i + 1))('case %i costs the same', seed => {
    const input = largePurchase(seed, { ...size, minimumMinor: seed % 5 === 0 ? 4000 : 0 }, solver)
    const { basket, lines } = shoppingOf(input)
    expect(basket!.proven).toBe(true)
    expect(basket!.totalMinor).toBe(secondOpinion(input))
    // Witness: every need is covered.
    for (const line of lines) expect(line.packs.reduce((sum, p) => sum + p.amount * p.count, 0)).toBeGreaterThanOrEqual(line.need.amount!)
  })
})

function secondOpinion({ packs: file, steps, library }: ReturnType<typeof largePurchase>): number {
  const variables: Record<string, Record<string, number>> = {}
  const constraints: Record<string, { min?: number; max?: number }> = {}
  const integers: string[] = []
  const binaries: string[] = []
  for (const line of steps[0]!.charges) constraints[`need ${line.material}`] = { min: line.massG! }
  for (const s of file!.suppliers) {
    variables[`open ${s.id}`] = { cost: s.carriageMinor, [`least ${s.id}`]: -(s.minimumOrderMinor ?? 0) }
    variables[`fee ${s.id}`] = { cost: s.hazardousFeeMinor }
    binaries.push(`open ${s.id}`, `fee ${s.id}`)
    constraints[`least ${s.id}`] = { min: 0 }
  }
  file!.packs.forEach((pack, n) => {
    const need = constraints[`need ${pack.material}`]!.min!
    const minimum = file!.suppliers.find(s => s.id === pack.supplier)!.minimumOrderMinor ?? 0
    const most = Math.ceil(need / pack.amount) + Math.ceil(minimum / pack.priceMinor)
    const hazardous = library.materials.get(pack.material)!.hazards!.codes.length > 0
    variables[`pack ${n}`] = {
      cost: pack.priceMinor,
      [`need ${pack.material}`]: pack.amount,
      [`least ${pack.supplier}`]: pack.priceMinor,
      [`opens ${n}`]: 1,
      ...(hazardous ? { [`fees ${n}`]: 1 } : {}),
    }
    constraints[`opens ${n}`] = { max: 0 }
    variables[`open ${pack.supplier}`]![`opens ${n}`] = -most
    if (hazardous) {
      constraints[`fees ${n}`] = { max: 0 }
      variables[`fee ${pack.supplier}`]![`fees ${n}`] = -most
    }
    integers.push(`pack ${n}`)
  })
  const found = solve(
    { direction: 'minimize', objective: 'cost', constraints, variables, integers, binaries },
    { tolerance: 0, maxIterations: 5_000_000, timeout: 50_000, maxPivots: 100_000 },
  )
  expect(found.status).toBe('optimal')
  return Math.round(found.result)
}
