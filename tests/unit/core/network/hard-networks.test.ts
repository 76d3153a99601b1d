import { describe, expect, it } from 'vitest'
import { routeValue } from '../../../../core/network/route-value.ts'
import { OrderedRoutes } from '../../../../core/network/routes.ts'
import { hardNetworks, inForm } from '../../../support/networks/hard.ts'

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
    const routes = new OrderedRoutes(net.network, weights, weights, asked, net.target, { budget: 40_000 })
    const found = Array.from({ length: 10 }, () => routes.next()!)
    for (const [i, { arcs, value }] of found.entries()) {
      expect(routeValue(net.network, weights, net.start, net.target, arcs)).toBeCloseTo(value!, 9)
      if (i > 0) expect(value!).toBeGreaterThanOrEqual(found[i - 1]!.value! - 1e-9)
    }
  })
})
