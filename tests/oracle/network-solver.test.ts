import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import type { RoutesAsked } from '../../core/network/routes.ts'
import { sharedProgram } from '../../core/network/shared-program.ts'
import { solverOf } from '../../core/shopping/solver-of.ts'
import { listRoutes } from '../support/networks/listing.ts'
import { sfc32 } from '../support/networks/sfc32.ts'
import { smallNetwork } from '../support/networks/small.ts'

/** The integer program that is handed to HiGHS on request, against plain listing of all routes: neither knows anything of the search. */
describe('the least sum over distinct steps by an integer program', () => {
  it('is that of the listing, with what must be made, passed and not used, on 200 small networks', { timeout: 600_000 }, async () => {
    const solver = solverOf(await loadHighs())
    let cases = 0
    let none = 0
    let narrower = 0
    for (let seed = 1; seed <= 200; seed++) {
      const { network, weights, start, target } = smallNetwork(5_000_000 + seed, 'distinct')
      if (start === target) continue
      const draw = sfc32(seed)
      const below = (n: number) => Math.floor(draw() * n)
      const mode = seed % 2 === 0 ? 'default' : 'all'
      const masked = new Uint8Array(network.head.length)
      masked[below(masked.length)] = 1
      const make = draw() < 0.3 ? [below(network.compounds.length)].filter(c => c !== start) : []
      const mustPass = draw() < 0.3 ? [below(network.compounds.length)] : []
      const maxSteps = draw() < 0.3 ? 1 + below(4) : undefined
      const asked: RoutesAsked = { start, mode, masked, make, mustPass }
      const least = listRoutes(network, weights, { start, target, mode, make: new Set(make), masked }).find(
        route => route.arcs.length <= (maxSteps ?? 99) && mustPass.every(c => c === start || route.made.has(c)),
      )
      const program = sharedProgram(network, weights, asked, target, Number.POSITIVE_INFINITY, maxSteps)
      const answer = program === null ? null : solver(program.model)
      if (least === undefined) {
        expect(answer?.status ?? 'infeasible', `seed ${seed}`).toBe('infeasible')
        none++
        continue
      }
      expect(answer!.status, `seed ${seed}`).toBe('optimal')
      const route = program!.routeIn(answer!.columns)!
      expect(route.value, `seed ${seed}`).toBeCloseTo(least.value, 6)
      expect(listRoutes(network, weights, { start, target, mode, make: new Set(make), masked }).map(r => r.arcs.join())).toContain(
        route.arcs.join(),
      )
      // Knowing the least already leaves arcs out, and the answer the same.
      const known = sharedProgram(network, weights, asked, target, least.value, maxSteps)!
      expect(known.routeIn(solver(known.model).columns)!.value, `seed ${seed}`).toBeCloseTo(least.value, 6)
      if (known.model.length < program!.model.length) narrower++
      cases++
    }
    expect(cases).toBeGreaterThan(40)
    expect(narrower).toBeGreaterThan(20)
    expect(none).toBeGreaterThan(20)
  })
})
