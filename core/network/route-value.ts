import type { Network } from './network.ts'
import type { Weights } from './space.ts'

/**
 * Value of one finished route, straight from the definition: demands run once up the route (`sum`), the longest chain down it (`max`), or
 * every step is counted once (`distinct`).
 *
 * @param arcs  the route's arcs, in any order
 * @returns NaN where the route holds something unknown
 */
export function routeValue(network: Network, weights: Weights, start: number, target: number, arcs: readonly number[]): number {
  if (weights.form === 'distinct') return arcs.reduce((sum, a) => sum + weights.own[a]!, 0)
  const maker = new Map(arcs.map(a => [network.head[a]!, a]))
  const order = makersFirst(network, maker, target)
  if (weights.form === 'max') {
    const value = new Map<number, number>()
    for (const a of order) {
      let most = 0
      for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++)
        most = Math.max(most, part(network, weights, start, maker, value, u))
      value.set(network.head[a]!, weights.own[a]! + most)
    }
    return value.get(target)!
  }
  const demand = new Map([[target, 1]])
  let sum = 0
  for (let i = order.length - 1; i >= 0; i--) {
    const a = order[i]!
    const amount = demand.get(network.head[a]!) ?? 0
    sum += amount * weights.own[a]!
    for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) {
      const c = network.body[u]!
      if (c === start) sum += amount * weights.start[u]!
      else if (!maker.has(c)) sum += amount * weights.bought[u]!
      else {
        sum += amount * weights.made[u]!
        demand.set(c, (demand.get(c) ?? 0) + amount * weights.factor[u]!)
      }
    }
  }
  return sum
}

function part(
  network: Network,
  weights: Weights,
  start: number,
  maker: ReadonlyMap<number, number>,
  value: ReadonlyMap<number, number>,
  u: number,
): number {
  const c = network.body[u]!
  if (c === start) return weights.start[u]!
  return maker.has(c) ? weights.factor[u]! * value.get(c)! + weights.made[u]! : weights.bought[u]!
}

/** Arcs so that each stands after those that make its reactants. */
function makersFirst(network: Network, maker: ReadonlyMap<number, number>, target: number): number[] {
  const order: number[] = []
  const done = new Set<number>()
  const add = (c: number) => {
    const a = maker.get(c)
    if (a === undefined || done.has(c)) return
    done.add(c)
    for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) add(network.body[u]!)
    order.push(a)
  }
  add(target)
  return order
}
