import { linked, type Network } from './network.ts'
import { atOnce, eachInPieces, type InPieces } from './pieces.ts'
import { known, type Space, type SpaceOptions, type Weights } from './space.ts'

/**
 * The space of default routes: a chain from the start to the target, with every other reactant bought, and made only where it cannot be.
 *
 * Each compound c stands for two nodes: `n + c`, made by the chain, and `c`, taken beside the chain. A chain arc is a transformation together
 * with the one reactant that carries the chain (first in its body); beside the chain only what cannot be bought has arcs. One more arc hands
 * c on from the chain to the side: a compound that the route makes supplies every step that takes it, so the labels must reckon with it.
 */
export const chainSpace = (network: Network, weights: Weights, options: SpaceOptions): Space =>
  atOnce(chainSpaceInPieces(network, weights, options))

/** The same with pauses. */
export function* chainSpaceInPieces(network: Network, weights: Weights, options: SpaceOptions): InPieces<Space> {
  const { start, masked, opened } = options
  const n = network.compounds.length
  const buyable = new Uint8Array(n)
  for (let c = 0; c < n; c++) buyable[c] = (network.buyable[c] && !opened[c]) || c === start ? 1 : 0

  // Counted first, so that all goes straight into arrays of the size it takes: lists that grow cost more than the search in them.
  let arcs = 0
  let uses = 0
  const isOut = (h: number, a: number): boolean => masked[a] === 1 || h === start || Number.isNaN(weights.own[a]!)
  const isMade = (c: number): boolean => c !== start && network.makerStart[c] !== network.makerStart[c + 1]
  yield* eachInPieces(network.head, (h, a) => {
    if (isOut(h, a)) return
    const reactants = network.bodyStart[a + 1]! - network.bodyStart[a]!
    const ways = reactants + (buyable[h] ? 0 : 1)
    arcs += ways
    uses += ways * reactants
  })
  for (let c = 0; c < n; c++) {
    if (!isMade(c)) continue
    arcs++
    uses++
  }

  const head = new Int32Array(arcs)
  const arcOf = new Int32Array(arcs)
  const bodyStart = new Int32Array(arcs + 1)
  const body = new Int32Array(uses)
  const useOf = new Int32Array(uses)
  let arcsIn = 0
  let usesIn = 0
  const add = (arc: number, node: number, first: number) => {
    head[arcsIn] = node
    arcOf[arcsIn] = arc
    if (first >= 0) {
      body[usesIn] = n + network.body[first]!
      useOf[usesIn++] = first
    }
    for (let u = network.bodyStart[arc]!; u < network.bodyStart[arc + 1]!; u++) {
      if (u === first) continue
      body[usesIn] = network.body[u]!
      useOf[usesIn++] = u
    }
    bodyStart[++arcsIn] = usesIn
  }
  yield* eachInPieces(network.head, (h, a) => {
    if (isOut(h, a)) return
    if (!buyable[h]) add(a, h, -1)
    for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) add(a, n + h, u)
  })
  for (let c = 0; c < n; c++) {
    if (!isMade(c)) continue
    head[arcsIn] = c
    arcOf[arcsIn] = -1
    body[usesIn] = n + c
    useOf[usesIn++] = -1
    bodyStart[++arcsIn] = usesIn
  }

  const factor = new Float64Array(uses)
  const leaf = new Float64Array(uses).fill(Number.POSITIVE_INFINITY)
  const made = new Float64Array(uses)
  yield* eachInPieces(body, (node, u) => {
    const from = useOf[u]!
    if (from < 0) {
      factor[u] = 1
      return
    }
    factor[u] = weights.factor[from]!
    made[u] = known(weights.made[from]!)
    if (node === start || node === n + start) leaf[u] = known(weights.start[from]!)
    else if (node < n && buyable[node]) leaf[u] = known(weights.bought[from]!)
  })
  const mayBeLeaf = new Uint8Array(2 * n)
  mayBeLeaf.set(buyable)
  mayBeLeaf[n + start] = 1
  const twin = new Int32Array(2 * n).fill(-1)
  for (let c = 0; c < n; c++) if (c !== start) twin[c] = n + c
  const own = new Float64Array(arcOf.length)
  for (let a = 0; a < own.length; a++) own[a] = arcOf[a]! < 0 ? 0 : weights.own[arcOf[a]!]!
  yield
  return {
    network: linked(namesTwice(network.compounds), network.arcs, head, bodyStart, body, factor, mayBeLeaf),
    form: weights.form,
    masked: new Uint8Array(arcs),
    own,
    factor,
    leaf,
    made,
    mayBeLeaf,
    arcOf,
    twin,
    start,
  }
}

const namesTwice = (ids: readonly string[]): string[] => [...ids, ...ids]
