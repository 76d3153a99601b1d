import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import type { Network } from '../../core/network/network.ts'
import { OrderedRoutes } from '../../core/network/routes.ts'
import type { Weights } from '../../core/network/space.ts'
import { solverOf } from '../../core/shopping/solver-of.ts'
import { type HardNetwork, inForm, lattice } from '../support/networks/hard.ts'

/**
 * The least sum over distinct steps as an integer program, solved by HiGHS: a second solver that knows nothing of the search. One variable an
 * arc; a made reactant has a maker; along an arc the order rises, so that no circle feeds itself.
 */
function asProgram(network: Network, weights: Weights, start: number, target: number): string {
  const n = network.compounds.length
  const makersOf = (c: number) => [...network.makers.subarray(network.makerStart[c], network.makerStart[c + 1])]
  const rows: string[] = []
  const sum = (arcs: readonly number[]) => arcs.map(a => `x${a}`).join(' + ')
  rows.push(`${sum(makersOf(target))} = 1`)
  for (let c = 0; c < n; c++) if (c !== target && c !== start && makersOf(c).length > 1) rows.push(`${sum(makersOf(c))} <= 1`)
  for (let a = 0; a < network.head.length; a++) {
    const head = network.head[a]!
    if (head === start) {
      rows.push(`x${a} = 0`)
      continue
    }
    for (let u = network.bodyStart[a]!; u < network.bodyStart[a + 1]!; u++) {
      const c = network.body[u]!
      if (c === start) continue
      rows.push(
        `${
          makersOf(c)
            .map(m => `x${m}`)
            .join(' + ') || '0 x0'
        } - x${a} >= 0`,
      )
      rows.push(`u${head} - u${c} - ${n} x${a} >= ${1 - n}`)
    }
  }
  const arcs = Array.from({ length: network.head.length }, (_, a) => a)
  return [
    'Minimize',
    ` obj: ${arcs.map(a => `${weights.own[a]} x${a}`).join(' + ')}`,
    'Subject To',
    ...rows.map((row, i) => ` r${i}: ${row}`),
    'Bounds',
    ...Array.from({ length: n }, (_, c) => ` 0 <= u${c} <= ${n}`),
    'Binary',
    ` ${arcs.map(a => `x${a}`).join(' ')}`,
    'End',
  ].join('\n')
}

/** Deep lattices take the integer program minutes: they are left to long runs. */
const [deep, width] = process.env.WAYBENCH_FUZZ === undefined ? [10, 4] : [2, 5]

const routesOf = (net: HardNetwork, budget?: number) => {
  const weights: Weights = inForm(net.weights, 'distinct')
  const asked = { start: net.start, mode: 'default' as const, masked: new Uint8Array(net.network.head.length), make: [], mustPass: [] }
  return { weights, routes: new OrderedRoutes(net.network, weights, weights, asked, net.target, budget === undefined ? {} : { budget }) }
}

describe('the least sum over distinct steps', () => {
  it('is what HiGHS finds, on 30 networks full of shared intermediates', { timeout: 600_000 }, async () => {
    const solver = solverOf(await loadHighs())
    let proven = 0
    for (let seed = 1; seed <= 30; seed++) {
      const net = lattice(3 + (seed % deep === 0 ? 1 : 0), width, seed)
      const { weights, routes } = routesOf(net)
      const first = routes.next()!
      const solved = solver(asProgram(net.network, weights, net.start, net.target))
      expect(solved.status).toBe('optimal')
      const least = [...solved.columns].reduce(
        (sum, [name, x]) => (name.startsWith('x') && x > 0.5 ? sum + weights.own[Number(name.slice(1))]! : sum),
        0,
      )
      if (first.proven) {
        expect(first.value!, `seed ${seed}`).toBeCloseTo(least, 6)
        proven++
      } else {
        // The best found is no better than the least, and the bound no worse.
        expect(first.value!).toBeGreaterThanOrEqual(least - 1e-6)
        expect(routes.bound!).toBeLessThanOrEqual(least + 1e-6)
      }
    }
    expect(proven).toBe(30)
  })

  it('out of budget, comes as the best found, marked, beside a bound that holds', () => {
    const net = lattice(5, 5, 3)
    const least = routesOf(net).routes.next()!
    expect(least.proven).toBe(true)
    const { routes } = routesOf(net, 20)
    const found = [routes.next()!, routes.next()!, routes.next()!]
    expect(found.map(route => route.proven)).toEqual([false, false, false])
    expect(routes.complete).toBe(false)
    expect(routes.bound!).toBeLessThanOrEqual(least.value! + 1e-9)
    expect(found[0]!.value!).toBeGreaterThanOrEqual(least.value! - 1e-9)
    // A third above the least would be poor guessing on networks as small as this.
    expect(found[0]!.value!).toBeLessThan(least.value! * 1.33)
    expect(new Set(found.map(route => route.arcs.join())).size).toBe(3)
  })
})
