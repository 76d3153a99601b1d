import { describe, expect, it } from 'vitest'
import { labelsOf } from '../../core/network/best.ts'
import { RouteSearch } from '../../core/network/ranked.ts'
import { openSpace } from '../../core/network/space.ts'
import { branchingValues } from '../support/networks/branching.ts'
import { chainYieldWeights, costWeights, generatedNetwork } from '../support/networks/generated.ts'

/** The ranked search against a run of labels for each branch, on networks too large to list. */
describe.each([
  [1_000, 20],
  [10_000, 6],
])('on %i arcs', (m, k) => {
  const generated = generatedNetwork(m)
  const n = m / 2
  it.each([
    ['cost', costWeights],
    ['chain yield', chainYieldWeights],
  ] as const)(`the ${k} best by %s have the same values`, (_, weightsOf) => {
    const space = openSpace(generated.network, weightsOf(generated), {
      start: -1,
      masked: new Uint8Array(m),
      opened: new Uint8Array(n),
      makeAll: false,
    })
    const labels = labelsOf(space)
    const search = new RouteSearch(space, labels)
    let compared = 0
    for (let i = 0; i < 8; i++) {
      const target = (i * 7919 + 13) % n
      if (space.mayBeLeaf[target]) continue
      const stream = search.routesTo(target)
      const found: number[] = []
      while (found.length < k) {
        const route = stream.next()
        if (route === null) break
        found.push(route.value)
      }
      const wanted = branchingValues(space, target, k)
      expect(found.length).toBe(wanted.length)
      for (const [j, value] of found.entries()) expect(value / wanted[j]!).toBeCloseTo(1, 9)
      compared += found.length
    }
    expect(compared).toBeGreaterThan(4 * k)
  })
})
