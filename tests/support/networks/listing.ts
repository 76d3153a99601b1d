import type { Network } from '../../../core/network/network.ts'
import type { Weights } from '../../../core/network/space.ts'

/** A route found by listing: arcs in order, what it makes, and its value. */
export interface ListedRoute {
  readonly arcs: readonly number[]
  readonly made: ReadonlySet<number>
  readonly value: number
}

export interface ListingQuery {
  readonly start: number
  readonly target: number
  /**
   * `default`: a chain, the rest bought where it can be; `all`: every route that uses the start; `leaf`: what can be bought is never made,
   * and the start need not be used.
   */
  readonly mode: 'default' | 'all' | 'leaf'
  /** Compounds that are to be made: never bought, and made by every route listed. */
  readonly make?: ReadonlySet<number>
  readonly masked?: Uint8Array
}

/**
 * Every route by its definition and by nothing else: takes each way of giving every compound one maker or none, and keeps those that are
 * routes. Shares no code with the search.
 */
export function listRoutes(network: Network, weights: Weights, query: ListingQuery): ListedRoute[] {
  const { start, target, make = new Set<number>() } = query
  const n = network.compounds.length
  const bodies = network.arcs.map((_, a) => [...network.body.subarray(network.bodyStart[a], network.bodyStart[a + 1])])
  const canBuy = (c: number) => network.buyable[c] === 1 && !make.has(c)
  const found: ListedRoute[] = []
  const maker = new Int32Array(n).fill(-1)
  if (start === target) return found

  const keep = () => {
    if (maker[target] === -1) return
    for (const c of make) if (maker[c] === -1) return
    const arcs: number[] = []
    for (let c = 0; c < n; c++) if (maker[c]! >= 0) arcs.push(maker[c]!)
    const consumed = new Set(arcs.flatMap(a => bodies[a]!))
    if (query.mode !== 'leaf' && !consumed.has(start)) return
    if (query.mode === 'leaf' && [...maker.keys()].some(c => maker[c]! >= 0 && c !== target && canBuy(c))) return
    for (let c = 0; c < n; c++) if (maker[c]! >= 0 && c !== target && !consumed.has(c)) return
    for (const c of consumed) if (c !== start && maker[c] === -1 && !canBuy(c)) return
    // Peel from what is there; a circle never peels.
    const left = new Set(arcs)
    const there = (c: number) => maker[c] === -1 || !left.has(maker[c]!)
    for (let again = true; again; ) {
      again = false
      for (const a of left) {
        if (bodies[a]!.every(there)) {
          left.delete(a)
          again = true
        }
      }
    }
    if (left.size > 0) return
    const made = new Set(arcs.map(a => network.head[a]!))
    if (query.mode === 'default' && !hasChain(made)) return
    arcs.sort((a, b) => a - b)
    found.push({ arcs, made, value: valueOfRoute(arcs) })
  }

  /** Some way from the start to the target passes every made compound that could have been bought. */
  const hasChain = (made: ReadonlySet<number>): boolean => {
    const wanted = [...made].filter(canBuy).length
    const walk = (c: number, passed: number): boolean => {
      if (c === start) return passed === wanted
      if (maker[c] === -1) return false
      return bodies[maker[c]!]!.some(r => walk(r, passed + (canBuy(c) ? 1 : 0)))
    }
    return walk(target, 0)
  }

  const valueOfRoute = (arcs: readonly number[]): number => {
    if (weights.form === 'distinct') return arcs.reduce((sum, a) => sum + weights.own[a]!, 0)
    const ofArc = (a: number): number => {
      let value = 0
      for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) {
        const c = network.body[u]!
        const part =
          c === start ? weights.start[u]! : maker[c] === -1 ? weights.bought[u]! : weights.factor[u]! * ofArc(maker[c]!) + weights.made[u]!
        value = weights.form === 'sum' ? value + part : Math.max(value, part)
      }
      return weights.own[a]! + value
    }
    return ofArc(maker[target]!)
  }

  const give = (c: number) => {
    if (c === n) return keep()
    give(c + 1)
    if (c === start) return
    for (let a = 0; a < network.head.length; a++) {
      if (network.head[a] !== c || query.masked?.[a]) continue
      maker[c] = a
      give(c + 1)
    }
    maker[c] = -1
  }
  give(0)
  return found.sort((a, b) => a.value - b.value)
}
