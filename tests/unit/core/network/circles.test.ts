import { describe, expect, it } from 'vitest'
import { packed } from '../../../../core/network/network.ts'
import { GainingCircle, routeSearch } from '../../../../core/network/routes.ts'
import { targetNode, type Weights } from '../../../../core/network/space.ts'

/** A dimer is cleaved into two acids; the acids make the dimer again. Compounds: 0 start, 1 dimer, 2 acid, 3 ester. */
function dimers(perAcid: number, perDimer: number) {
  const network = packed(
    ['c0', 'c1', 'c2', 'c3'],
    [
      { id: 't0', head: 1, body: [{ compound: 0, coefficient: 1 }] },
      { id: 't1', head: 2, body: [{ compound: 1, coefficient: perAcid }] },
      { id: 't2', head: 1, body: [{ compound: 2, coefficient: perDimer }] },
      { id: 't3', head: 3, body: [{ compound: 2, coefficient: 1 }] },
    ],
    new Uint8Array(4),
  )
  const zeros = () => new Float64Array(4)
  const weights: Weights = {
    form: 'sum',
    own: zeros(),
    factor: network.coefficient,
    bought: zeros(),
    made: zeros(),
    start: Float64Array.of(1, 0, 0, 0),
  }
  return () => routeSearch(network, weights, { start: 0, mode: 'default', masked: new Uint8Array(4), make: [], mustPass: [] })
}

describe('a circle', () => {
  it('that loses, or gives back exactly what it took, is no matter', () => {
    for (const perDimer of [2.2, 2]) {
      const search = dimers(0.5, perDimer)()
      const stream = search.routesTo(targetNode(search.space, 3))
      expect(stream.next()).toEqual({ arcs: [0, 1, 3], value: 0.5 })
      expect(stream.next()).toBeNull()
      expect(stream.complete).toBe(true)
    }
  })

  it('that gains is refused and named', () => {
    const build = dimers(0.5, 1.8)
    expect(build).toThrow(GainingCircle)
    try {
      build()
    } catch (error) {
      expect((error as GainingCircle).compounds.toSorted()).toEqual(['c1', 'c2'])
    }
  })
})
