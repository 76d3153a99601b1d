import { linked, type Network } from './network.ts'
import { known, type Space, type SpaceOptions, type Weights } from './space.ts'

/**
 * The space of default routes: a chain from the start to the target, with every other reactant bought, and made only where it cannot be.
 *
 * Each compound c stands for two nodes: `n + c`, made by the chain, and `c`, taken beside the chain. A chain arc is a transformation together
 * with the one reactant that carries the chain (first in its body); beside the chain only what cannot be bought has arcs. One more arc hands
 * c on from the chain to the side: a compound that the route makes supplies every step that takes it, so the labels must reckon with it.
 */
export function chainSpace(network: Network, weights: Weights, options: SpaceOptions): Space {
  const { start, masked, opened } = options
  const n = network.compounds.length
  const buyable = new Uint8Array(n)
  for (let c = 0; c < n; c++) buyable[c] = (network.buyable[c] && !opened[c]) || c === start ? 1 : 0

  const head: number[] = []
  const body: number[] = []
  const bodyStart: number[] = [0]
  const useOf: number[] = []
  const arcOf: number[] = []
  const add = (arc: number, node: number, first: number) => {
    head.push(node)
    arcOf.push(arc)
    if (first >= 0) {
      body.push(n + network.body[first]!)
      useOf.push(first)
    }
    for (let u = network.bodyStart[arc]!; u < network.bodyStart[arc + 1]!; u++) {
      if (u === first) continue
      body.push(network.body[u]!)
      useOf.push(u)
    }
    bodyStart.push(body.length)
  }
  for (let a = 0; a < network.head.length; a++) {
    const h = network.head[a]!
    if (masked[a] || h === start || Number.isNaN(weights.own[a]!)) continue
    if (!buyable[h]) add(a, h, -1)
    for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) add(a, n + h, u)
  }
  for (let c = 0; c < n; c++) {
    if (c === start || network.makerStart[c] === network.makerStart[c + 1]) continue
    head.push(c)
    arcOf.push(-1)
    body.push(n + c)
    useOf.push(-1)
    bodyStart.push(body.length)
  }

  const uses = body.length
  const factor = new Float64Array(uses)
  const leaf = new Float64Array(uses)
  const made = new Float64Array(uses)
  for (let u = 0; u < uses; u++) {
    const from = useOf[u]!
    const node = body[u]!
    leaf[u] = Number.POSITIVE_INFINITY
    if (from < 0) {
      factor[u] = 1
      continue
    }
    factor[u] = weights.factor[from]!
    made[u] = known(weights.made[from]!)
    if (node === start || node === n + start) leaf[u] = known(weights.start[from]!)
    else if (node < n && buyable[node]) leaf[u] = known(weights.bought[from]!)
  }
  const mayBeLeaf = new Uint8Array(2 * n)
  mayBeLeaf.set(buyable)
  mayBeLeaf[n + start] = 1
  const twin = new Int32Array(2 * n).fill(-1)
  for (let c = 0; c < n; c++) if (c !== start) twin[c] = n + c
  const own = Float64Array.from(arcOf, arc => (arc < 0 ? 0 : weights.own[arc]!))
  return {
    network: linked(
      namesTwice(network.compounds),
      network.arcs,
      Int32Array.from(head),
      Int32Array.from(bodyStart),
      Int32Array.from(body),
      factor,
      mayBeLeaf,
    ),
    form: weights.form,
    masked: new Uint8Array(head.length),
    own,
    factor,
    leaf,
    made,
    mayBeLeaf,
    arcOf: Int32Array.from(arcOf),
    twin,
    start,
  }
}

const namesTwice = (ids: readonly string[]): string[] => [...ids, ...ids]
