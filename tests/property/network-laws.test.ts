import { describe, expect, it } from 'vitest'
import { labelsOf } from '../../core/network/best.ts'
import { chainSpace } from '../../core/network/chain-space.ts'
import { type Network, packed } from '../../core/network/network.ts'
import { frontOf, nonDominated } from '../../core/network/non-dominated.ts'
import { RouteSearch } from '../../core/network/ranked.ts'
import { routeValue } from '../../core/network/route-value.ts'
import { GainingCircle, routeSearch } from '../../core/network/routes.ts'
import { openSpace, type Space, targetNode, type Weights } from '../../core/network/space.ts'
import { differences, searched } from '../support/networks/ask.ts'
import { listRoutes } from '../support/networks/listing.ts'
import { sfc32 } from '../support/networks/sfc32.ts'
import { type SmallNetwork, smallNetwork } from '../support/networks/small.ts'

/** Laws of the search on small seeded networks; WAYBENCH_FUZZ sets how many. A failing seed is printed. */
const networks = Number(process.env.WAYBENCH_FUZZ ?? 10_000) / 10
const forms = ['sum', 'max', 'distinct'] as const
const timeout = 3_600_000

/** Runs a law over seeded networks whose start is not their target; circles that gain are another law's matter. */
function overNetworks(law: (small: SmallNetwork, seed: number, draw: () => number) => number, halves = false): number {
  let cases = 0
  for (let seed = 1; seed <= networks; seed++) {
    const small = smallNetwork(1_000_000 + seed, forms[seed % 3]!, halves)
    if (small.start === small.target) continue
    try {
      cases += law(small, seed, sfc32(seed))
    } catch (error) {
      if (error instanceof GainingCircle) continue
      throw new Error(`seed ${seed}: ${error instanceof Error ? error.message : error}`)
    }
  }
  return cases
}

const unmasked = (network: Network) => new Uint8Array(network.head.length)
const closed = (network: Network) => new Uint8Array(network.compounds.length)
const leafSpace = ({ network, weights, start }: SmallNetwork): Space =>
  openSpace(network, weights, { start, masked: unmasked(network), opened: closed(network), makeAll: false })

describe('labels', () => {
  it('are the smallest value of all routes where what can be bought is a leaf, and infinite where there is none', { timeout }, () => {
    const cases = overNetworks(small => {
      const labels = labelsOf(leafSpace(small))
      if (labels.circle || small.weights.form === 'distinct' || small.network.buyable[small.target]) return 0
      const listed = listRoutes(small.network, small.weights, { ...small, mode: 'leaf' })
      const least = listed[0]?.value ?? Number.POSITIVE_INFINITY
      if (least === Number.POSITIVE_INFINITY) expect(labels.value[small.target]).toBe(least)
      else expect(labels.value[small.target]).toBeCloseTo(least, 9)
      return 1
    })
    expect(cases).toBeGreaterThan(networks / 4)
  })

  it('are the fixed point that plain repetition reaches', { timeout }, () => {
    overNetworks(small => {
      const space = chainSpace(small.network, small.weights, {
        start: small.start,
        masked: unmasked(small.network),
        opened: closed(small.network),
        makeAll: false,
      })
      const labels = labelsOf(space)
      if (labels.circle) return 0
      const { network } = space
      const plain = new Float64Array(labels.value.length).fill(Number.POSITIVE_INFINITY)
      for (let changed = true; changed; ) {
        changed = false
        for (let a = 0; a < network.head.length; a++) {
          const parts = Array.from({ length: network.bodyStart[a + 1]! - network.bodyStart[a]! }, (_, i) => {
            const u = network.bodyStart[a]! + i
            return Math.min(space.leaf[u]!, space.factor[u]! * plain[network.body[u]!]! + space.made[u]!)
          })
          const value = space.own[a]! + (space.form === 'sum' ? parts.reduce((x, y) => x + y, 0) : Math.max(0, ...parts))
          if (value < plain[network.head[a]!]! * (1 - 1e-12)) {
            plain[network.head[a]!] = value
            changed = true
          }
        }
      }
      for (let c = 0; c < plain.length; c++) {
        if (plain[c] === Number.POSITIVE_INFINITY) expect(labels.value[c]).toBe(plain[c])
        else expect(labels.value[c]! / plain[c]! || 1).toBeCloseTo(1, 9)
      }
      return 1
    })
  })
})

describe('the stream of routes', () => {
  it('holds what must be made, passed and not used, and no more steps than allowed', { timeout }, () => {
    const cases = overNetworks((small, seed, draw) => {
      const { network } = small
      const below = (n: number) => Math.floor(draw() * n)
      const mode = seed % 2 === 0 ? 'default' : 'all'
      const masked = unmasked(network)
      masked[below(masked.length)] = 1
      const make = new Set(draw() < 0.5 ? [below(network.compounds.length)] : [])
      make.delete(small.start)
      const mustPass = draw() < 0.5 ? [below(network.compounds.length)] : []
      const maxSteps = draw() < 0.5 ? 1 + below(5) : Number.POSITIVE_INFINITY
      const listed = listRoutes(network, small.weights, { ...small, mode, make, masked }).filter(
        route => route.arcs.length <= maxSteps && mustPass.every(c => c === small.start || route.made.has(c)),
      )
      const found = searched(small, { mode, masked, make: [...make], mustPass }, { maxSteps, patience: [0, 3, 50][seed % 3]! })
      expect(differences(found, listed)).toBe('')
      return listed.length
    })
    expect(cases).toBeGreaterThan(networks / 10)
  })

  it('changes no value when compounds and arcs are renumbered', { timeout }, () => {
    const cases = overNetworks((small, seed, draw) => {
      const other = renumbered(small, draw)
      const mode = seed % 2 === 0 ? 'default' : 'all'
      const values = (net: SmallNetwork) => searched(net, { mode }).map(route => route.value)
      const [before, after] = [values(small), values(other)]
      expect(after.length).toBe(before.length)
      for (const [i, value] of after.entries()) expect(value).toBeCloseTo(before[i]!, 9)
      return before.length
    })
    expect(cases).toBeGreaterThan(networks / 4)
  })

  it('is never worse for one arc more', { timeout }, () => {
    const cases = overNetworks((small, seed, draw) => {
      const masked = unmasked(small.network)
      masked[Math.floor(draw() * masked.length)] = 1
      const mode = seed % 2 === 0 ? 'default' : 'all'
      const fewer = searched(small, { mode, masked })
      const more = searched(small, { mode })
      expect(more.length).toBeGreaterThanOrEqual(fewer.length)
      for (const [i, route] of fewer.entries()) expect(more[i]!.value).toBeLessThanOrEqual(route.value + 1e-9)
      return fewer.length
    })
    expect(cases).toBeGreaterThan(networks / 4)
  })

  it('never needs more start where one yield rises', { timeout }, () => {
    const cases = overNetworks((small, _, draw) => {
      const { network, weights } = small
      if (weights.form !== 'sum') return 0
      // Start needed and nothing else: what is made or in hand counts by its demand, and a better yield takes less of every reactant.
      const needed = (demand: (u: number) => number): Weights => {
        const factor = weights.factor.map((value, u) => value * demand(u))
        const none = new Float64Array(factor.length)
        return { form: 'sum', own: new Float64Array(network.head.length), factor, bought: none, made: none, start: factor }
      }
      const before = searched({ ...small, weights: needed(() => 1) }, { mode: 'default' })[0]
      if (!before) return 0
      // Half of the time a step that the best route takes.
      const arcs = draw() < 0.5 ? before.arcs : Array.from(network.head.keys())
      const arc = arcs[Math.floor(draw() * arcs.length)]!
      const after = searched({ ...small, weights: needed(u => (network.useArc[u] === arc ? 0.9 : 1)) }, { mode: 'default' })[0]
      expect(after!.value).toBeLessThanOrEqual(before.value + 1e-9)
      return before.value > after!.value ? 1 : 0
    })
    expect(cases).toBeGreaterThan(networks / 40)
  })

  it('never makes what is a leaf, and makes the target even where it could be bought', { timeout }, () => {
    const cases = overNetworks(small => {
      const buyable = small.network.buyable.slice()
      buyable[small.target] = 1
      const bought = { ...small, network: { ...small.network, buyable } }
      const found = searched(bought, { mode: 'default' })
      expect(differences(found, listRoutes(bought.network, small.weights, { ...small, mode: 'default' }))).toBe('')
      for (const route of found) expect(route.arcs.map(a => small.network.head[a])).toContain(small.target)
      for (const route of found) expect(route.arcs.map(a => small.network.head[a])).not.toContain(small.start)
      return found.length
    })
    expect(cases).toBeGreaterThan(networks / 10)
  })

  it('gives the value that demands running once up the route give', { timeout }, () => {
    const cases = overNetworks((small, seed) => {
      const found = searched(small, { mode: seed % 2 === 0 ? 'default' : 'all' })
      for (const { arcs, value } of found)
        expect(routeValue(small.network, small.weights, small.start, small.target, arcs)).toBeCloseTo(value, 9)
      return found.length
    })
    expect(cases).toBeGreaterThan(networks / 4)
  })

  it('holds the same routes in order of value where the order by steps is given up, each once', { timeout }, () => {
    let changed = 0
    const cases = overNetworks((small, seed, draw) => {
      for (const mode of ['default', 'all'] as const) {
        const usual = searched(small, { mode })
        const options = { plateauPatience: Math.floor(6 * draw()), patience: [0, 2, 50][seed % 3]! }
        const diving = searched(small, { mode }, options)
        const texts = (routes: readonly { arcs: readonly number[] }[]) => routes.map(route => route.arcs.join('+'))
        expect(texts(diving).sort()).toEqual(texts(usual).sort())
        for (const [i, { value }] of diving.entries()) expect(value).toBeCloseTo(usual[i]!.value, 9)
        if (texts(diving).join() !== texts(usual).join()) changed++
      }
      return 1
    })
    expect(cases).toBeGreaterThan(networks / 2)
    // An order that was never given up would prove nothing.
    expect(changed).toBeGreaterThan(networks / 100)
  })

  it('is the same while other streams of the same search run beside it', { timeout }, () => {
    const cases = overNetworks(small => {
      const search = routeSearch(small.network, small.weights, {
        start: small.start,
        mode: 'default',
        masked: unmasked(small.network),
        make: [],
        mustPass: [],
      })
      const alone = searched(small, { mode: 'default' })
      const streams = small.network.compounds.map((_, c) => search.routesTo(targetNode(search.space, c), { patience: 2 }))
      const own = streams[small.target]!
      const found = []
      for (let route = own.next(); route !== null; route = own.next()) {
        found.push(route)
        for (const stream of streams) if (stream !== own) stream.next()
      }
      expect(found.map(route => route.arcs)).toEqual(alone.map(route => route.arcs))
      for (const [i, route] of found.entries()) expect(route.value).toBeCloseTo(alone[i]!.value, 12)
      return found.length
    })
    expect(cases).toBeGreaterThan(networks / 4)
  })

  it('is the same however its work is divided', { timeout }, () => {
    const cases = overNetworks((small, seed) => {
      const stream = () =>
        routeSearch(small.network, small.weights, {
          start: small.start,
          mode: seed % 2 === 0 ? 'default' : 'all',
          masked: unmasked(small.network),
          make: [],
          mustPass: [],
        })
      const options = { patience: 2, plateauPatience: [4, 2000][seed % 2]! }
      const [whole, divided] = [stream(), stream()].map(search => search.routesTo(targetNode(search.space, small.target), options))
      for (;;) {
        const wanted = whole!.next()
        let found = divided!.next(1 + (seed % 3))
        while (found === null && divided!.paused) found = divided!.next(1 + (seed % 3))
        expect(found).toEqual(wanted)
        if (wanted === null) break
      }
      expect(divided!.complete).toBe(whole!.complete)
      expect(divided!.pops).toBe(whole!.pops)
      return whole!.pops
    })
    expect(cases).toBeGreaterThan(networks)
  })

  it('told to stop or out of budget, proves that nothing better is left', { timeout }, () => {
    const cases = overNetworks((small, seed) => {
      const search = routeSearch(small.network, small.weights, {
        start: small.start,
        mode: 'default',
        masked: unmasked(small.network),
        make: [],
        mustPass: [],
      })
      const all = searched(small, { mode: 'default' })
      const options = { budget: 1 + (seed % 12), plateauPatience: [3, 2000][seed % 2]! }
      const stream = search.routesTo(targetNode(search.space, small.target), options)
      let found = 0
      while (stream.next() !== null) found++
      if (stream.complete) {
        expect(found).toBe(all.length)
        return 0
      }
      for (const route of all.slice(found)) expect(stream.bound).toBeLessThanOrEqual(route.value + 1e-9)
      return 1
    })
    expect(cases).toBeGreaterThan(networks / 20)
  })
})

describe('coefficients below one', () => {
  it('are exact by re-opening, or refused with a circle that really gains', { timeout }, () => {
    let circles = 0
    const cases = overNetworks((small, seed, draw) => {
      if (seed % 3 !== 0) return 0
      const { network, start } = small
      // A cleavage gives two of its product: what falls below one here is common, and so are circles that gain.
      const factor = small.weights.factor.map(value => (draw() < 0.3 ? value * 0.6 : value))
      const weights = { ...small.weights, factor }
      const mode = seed % 2 === 0 ? 'default' : 'all'
      try {
        expect(differences(searched({ ...small, weights }, { mode }), listRoutes(network, weights, { ...small, mode }))).toBe('')
        return 1
      } catch (error) {
        if (!(error instanceof GainingCircle)) throw error
        circles++
        const named = error.compounds.map(id => network.compounds.indexOf(id))
        expect(named.length).toBeGreaterThan(1)
        expect(gainsOnSomeCircle(network, weights, new Set(named)), `start ${start}`).toBe(true)
        return 0
      }
    }, true)
    expect(cases).toBeGreaterThan(networks / 10)
    if (networks >= 1000) expect(circles).toBeGreaterThan(0)
  })
})

/** Is there a circle among these compounds whose factors multiply to less than one? By Bellman and Ford on the logarithms. */
function gainsOnSomeCircle(network: Network, weights: Weights, among: ReadonlySet<number>): boolean {
  const potential = new Float64Array(network.compounds.length)
  for (let round = 0; round <= network.compounds.length; round++) {
    let changed = false
    for (let u = 0; u < network.body.length; u++) {
      const from = network.body[u]!
      const to = network.head[network.useArc[u]!]!
      if (!among.has(from) || !among.has(to)) continue
      const length = potential[from]! + Math.log(weights.factor[u]!)
      if (length < potential[to]! - 1e-12) {
        potential[to] = length
        changed = true
      }
    }
    if (!changed) return false
  }
  return true
}

describe('the non-dominated routes', () => {
  it.each([2, 3, 4])('over %i axes are those of the listing', { timeout }, axes => {
    let points = 0
    for (let seed = 1; seed <= networks / 2; seed++) {
      const small = smallNetwork(2_000_000 + seed, 'sum')
      const { network, start, target } = small
      if (start === target) continue
      const mode = seed % 2 === 0 ? 'default' : 'all'
      const weights = Array.from({ length: axes }, (_, axis): Weights => {
        const drawn = smallNetwork(2_000_000 + seed, forms[axis % 3]!).weights
        return axis < 3 ? drawn : { ...drawn, own: drawn.own.map((_, a) => (a * 7) % 5) }
      })
      const rows = listRoutes(network, weights[0]!, { ...small, mode }).map(({ arcs }) =>
        weights.map(w => routeValue(network, w, start, target, arcs)),
      )
      const options = { start, masked: unmasked(network), opened: closed(network), makeAll: mode === 'all' }
      const spaces = weights.map(w => (mode === 'all' ? openSpace(network, w, options) : chainSpace(network, w, options)))
      const labels = spaces.map(labelsOf)
      if (labels.some(l => l.circle)) continue
      const front = frontOf(spaces, labels, mode === 'all' ? [{ start: true, nodes: [] }] : [], targetNode(spaces[0]!, target))
      expect(front.complete).toBe(true)
      const text = (values: readonly number[]) => values.map(v => v.toFixed(7)).join(' ')
      const wanted = new Set(nonDominated(rows).map(i => text(rows[i]!)))
      expect(new Set(front.routes.map(r => text(r.values))), `seed ${seed}`).toEqual(wanted)
      points += wanted.size
    }
    expect(points).toBeGreaterThan(networks / 10)
  })
})

/** The same network with compounds and arcs in another order. */
function renumbered({ network, weights, start, target }: SmallNetwork, draw: () => number): SmallNetwork {
  const shuffle = (n: number) => {
    const to = Array.from({ length: n }, (_, i) => i)
    for (let i = n - 1; i > 0; i--) {
      const j = Math.floor(draw() * (i + 1))
      ;[to[i], to[j]] = [to[j]!, to[i]!]
    }
    return to
  }
  const compoundTo = shuffle(network.compounds.length)
  const arcFrom = shuffle(network.head.length)
  const usesInOrder: number[] = []
  const arcs = arcFrom.map((a, index) => {
    const uses = Array.from({ length: network.bodyStart[a + 1]! - network.bodyStart[a]! }, (_, i) => network.bodyStart[a]! + i).reverse()
    usesInOrder.push(...uses)
    return {
      id: `t${String(index).padStart(2, '0')}`,
      head: compoundTo[network.head[a]!]!,
      body: uses.map(u => ({ compound: compoundTo[network.body[u]!]!, coefficient: network.coefficient[u]! })),
    }
  })
  const buyable = new Uint8Array(network.compounds.length)
  compoundTo.forEach((to, from) => {
    buyable[to] = network.buyable[from]!
  })
  const byUse = (list: Float64Array) => Float64Array.from(usesInOrder, u => list[u]!)
  return {
    network: packed(network.compounds, arcs, buyable),
    weights: {
      form: weights.form,
      own: Float64Array.from(arcFrom, a => weights.own[a]!),
      factor: byUse(weights.factor),
      bought: byUse(weights.bought),
      made: byUse(weights.made),
      start: byUse(weights.start),
    },
    start: compoundTo[start]!,
    target: compoundTo[target]!,
  }
}

it('searches share nothing between two spaces', () => {
  const small = smallNetwork(7, 'sum')
  const space = leafSpace(small)
  const labels = labelsOf(space)
  const one = new RouteSearch(space, labels).routesTo(small.target)
  const two = new RouteSearch(space, labels).routesTo(small.target)
  expect(one.next()).toEqual(two.next())
})
