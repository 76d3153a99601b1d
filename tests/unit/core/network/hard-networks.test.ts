import { describe, expect, it } from 'vitest'
import { routeValue } from '../../../../core/network/route-value.ts'
import { OrderedRoutes, routeSearch } from '../../../../core/network/routes.ts'
import { targetNode } from '../../../../core/network/space.ts'
import { hardNetworks, inForm, lattice, trap } from '../../../support/networks/hard.ts'

/**
 * Networks on which a search can drown. What counts is work, not time, so that the test means the same on every machine: 20,000 partial
 * routes are some 100 ms on the machine this was measured on.
 */
describe.each(hardNetworks())('$name', net => {
  it.each(['default', 'all'] as const)('gives the ten best %s routes by sums within the budget', mode => {
    const asked = { start: net.start, mode, masked: new Uint8Array(net.network.head.length), make: [], mustPass: [] }
    const routes = new OrderedRoutes(net.network, net.weights, net.weights, asked, net.target, { budget: 20_000 })
    const found = Array.from({ length: 10 }, () => routes.next()!)
    expect(new Set(found.map(route => route.arcs.join())).size).toBe(10)
    for (const [i, { arcs, value, proven }] of found.entries()) {
      expect(proven).toBe(true)
      expect(routeValue(net.network, net.weights, net.start, net.target, arcs)).toBeCloseTo(value!, 9)
      if (i > 0) expect(value!).toBeGreaterThanOrEqual(found[i - 1]!.value! - 1e-9)
    }
  })

  it('gives the ten best by the longest chain, in order of value', () => {
    const weights = inForm(net.weights, 'max')
    const asked = { start: net.start, mode: 'default' as const, masked: new Uint8Array(net.network.head.length), make: [], mustPass: [] }
    const routes = new OrderedRoutes(net.network, weights, weights, asked, net.target, { budget: 20_000 })
    const found = Array.from({ length: 10 }, () => routes.next()!)
    for (const [i, { arcs, value }] of found.entries()) {
      expect(routeValue(net.network, weights, net.start, net.target, arcs)).toBeCloseTo(value!, 9)
      if (i > 0) expect(value!).toBeGreaterThanOrEqual(found[i - 1]!.value! - 1e-9)
    }
  })
})

/** How far the best found may lie above the bound, by network; the others are proven. Measured: 39 % and 32 %. */
const open: Readonly<Record<string, number>> = {
  'a lattice of joins with ways back': 1.45,
  '200 layers, bodies of up to 25, carriers, ways back': 1.35,
}

describe.each(hardNetworks())('$name, by distinct steps', net => {
  it('gives ten routes, proven or beside a bound that is not far', () => {
    const weights = inForm(net.weights, 'distinct')
    const asked = { start: net.start, mode: 'default' as const, masked: new Uint8Array(net.network.head.length), make: [], mustPass: [] }
    const routes = new OrderedRoutes(net.network, weights, weights, asked, net.target)
    const found = Array.from({ length: 10 }, () => routes.next()!)
    expect(new Set(found.map(route => route.arcs.join())).size).toBe(10)
    for (const [i, { arcs, value }] of found.entries()) {
      expect(routeValue(net.network, weights, net.start, net.target, arcs)).toBeCloseTo(value!, 9)
      if (i > 0) expect(value!).toBeGreaterThanOrEqual(found[i - 1]!.value! - 1e-9)
    }
    const most = open[net.name]
    expect(found.every(route => route.proven)).toBe(most === undefined)
    if (most !== undefined) expect(found[0]!.value! / routes.bound!).toBeLessThan(most)
  })
})

it.each([20, 60, 200])('a budget of %i ends the repair of labels that would go beyond it', budget => {
  const net = trap(60, 20)
  const asked = { start: net.start, mode: 'default' as const, masked: new Uint8Array(net.network.head.length), make: [], mustPass: [] }
  const search = routeSearch(net.network, net.weights, asked)
  const stream = search.routesTo(targetNode(search.space, net.target), { budget, patience: 0 })
  while (stream.next() !== null);
  expect(stream.complete).toBe(false)
  // What the last one had looked at when it was left: the takers of one compound more, at ten for one of the budget.
  expect(stream.pops).toBeLessThanOrEqual(budget + 3)
})

describe('an axis that knows nothing of any route', () => {
  it('still lists routes, by guessing, where not even the order by steps comes to its end', () => {
    const net = lattice(5, 5, 3)
    const unknown = { ...net.weights, own: new Float64Array(net.weights.own.length).fill(Number.NaN) }
    const steps = inForm({ ...net.weights, own: new Float64Array(net.weights.own.length).fill(1) }, 'distinct')
    const asked = { start: net.start, mode: 'default' as const, masked: new Uint8Array(net.network.head.length), make: [], mustPass: [] }
    const routes = new OrderedRoutes(net.network, unknown, steps, asked, net.target, { budget: 20 })
    const found = Array.from({ length: 5 }, () => routes.next()!)
    expect(new Set(found.map(route => route.arcs.join())).size).toBe(5)
    for (const { arcs, value, proven } of found) {
      expect([value, proven]).toEqual([null, false])
      // A route by its value: finite, and one for each step.
      expect(routeValue(net.network, steps, net.start, net.target, arcs)).toBe(arcs.length)
    }
    expect(routes.complete).toBe(false)
  })
})
