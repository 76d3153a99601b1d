import { linked, type Network } from '../../../core/network/network.ts'
import type { Weights } from '../../../core/network/space.ts'
import { sfc32 } from './sfc32.ts'

/** A large random network with its figures, reproducible from the number of arcs and the seed. */
export interface GeneratedNetwork {
  readonly network: Network
  /** By arc: typical yield, own cost, hours. */
  readonly yields: Float64Array
  readonly ownCost: Float64Array
  readonly hours: Float64Array
  /** By compound. */
  readonly price: Float64Array
}

/**
 * m arcs over m/2 compounds of rising age; the oldest 2 % are bought, ids are shuffled so that memory order helps nobody. In-degree tail
 * exponent about 2.7, out-degree about 2.25: hubs and stragglers as real reaction networks have them, 10 % of reactants younger than their
 * product, so that circles occur.
 */
export function generatedNetwork(m: number, seed = 42, reactantsWanted?: number): GeneratedNetwork {
  const draw = sfc32(seed)
  const n = m >> 1
  const stock = Math.max(1, Math.floor(n * 0.02))
  const idOfRank = Int32Array.from({ length: n }, (_, i) => i)
  for (let i = n - 1; i > 0; i--) {
    const j = Math.floor(draw() * (i + 1))
    const other = idOfRank[i]!
    idOfRank[i] = idOfRank[j]!
    idOfRank[j] = other
  }
  const head = new Int32Array(m)
  const bodyStart = new Int32Array(m + 1)
  let body = new Int32Array(m * 3)
  let coefficient = new Float64Array(m * 3)
  const yields = new Float64Array(m)
  const ownCost = new Float64Array(m)
  const hours = new Float64Array(m)
  const normal = () => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw())
  let at = 0
  for (let a = 0; a < m; a++) {
    const rank = a < n - stock ? stock + a : stock + Math.floor((n - stock) * draw() ** 2.5)
    head[a] = idOfRank[rank]!
    const u = draw()
    const wanted = reactantsWanted ?? (u < 0.35 ? 1 : u < 0.85 ? 2 : 3)
    const first = at
    for (let tries = 0; at - first < wanted && tries < 50; tries++) {
      const v = draw()
      let from: number
      if (v < 0.1) from = rank + 1 + Math.floor((n - rank - 1) * draw())
      else if (v < 0.6) from = rank - 1 - Math.floor(0.2 * rank * draw())
      else from = Math.floor(rank * draw() ** 5)
      if (from < 0 || from >= n || from === rank) continue
      const compound = idOfRank[from]!
      let known = false
      for (let k = first; k < at; k++) known ||= body[k] === compound
      if (known) continue
      if (at === body.length) {
        const [moreBody, moreCoefficient] = [new Int32Array(at * 2), new Float64Array(at * 2)]
        moreBody.set(body)
        moreCoefficient.set(coefficient)
        body = moreBody
        coefficient = moreCoefficient
      }
      body[at] = compound
      coefficient[at++] = draw() < 0.12 ? 2 : 1
    }
    if (at === first) {
      body[at] = idOfRank[0]!
      coefficient[at++] = 1
    }
    bodyStart[a + 1] = at
    yields[a] = Math.round(100 * (0.25 + 0.73 * Math.max(draw(), draw()))) / 100
    ownCost[a] = Math.exp(2.5 + 0.8 * normal())
    hours[a] = Math.max(0.5, Math.exp(1.2 + 0.7 * normal()))
  }
  const buyable = new Uint8Array(n)
  for (let rank = 0; rank < stock; rank++) buyable[idOfRank[rank]!] = 1
  const price = Float64Array.from({ length: n }, () => Math.exp(3 + normal()))
  const network = linked(numbered('c', n), numbered('t', m), head, bodyStart, body.slice(0, at), coefficient.slice(0, at), buyable)
  return { network, yields, ownCost, hours, price }
}

const numbered = (prefix: string, count: number): string[] =>
  Array.from({ length: count }, (_, i) => `${prefix}${String(i).padStart(8, '0')}`)

/** Cost per mole: prices of what is bought, own costs of the steps, losses by yield. */
export function costWeights({ network, yields, ownCost, price }: GeneratedNetwork): Weights {
  const factor = network.coefficient.map((c, u) => c / yields[network.useArc[u]!]!)
  const bought = factor.map((f, u) => f * price[network.body[u]!]!)
  const own = ownCost.map((cost, a) => cost / yields[a]!)
  return { form: 'sum', own, factor, bought, made: new Float64Array(factor.length), start: bought }
}

/** The lowest yield along any chain, as a sum of logarithms. */
export function chainYieldWeights({ network, yields }: GeneratedNetwork): Weights {
  const uses = network.body.length
  return {
    form: 'max',
    own: yields.map(y => -Math.log(y)),
    factor: new Float64Array(uses).fill(1),
    bought: new Float64Array(uses),
    made: new Float64Array(uses),
    start: new Float64Array(uses),
  }
}
