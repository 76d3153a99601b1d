import { describe, expect, it } from 'vitest'
import { parseFormula } from '../../core/chemistry/formula.ts'
import { transformationOf } from '../../core/library/library.ts'
import { chargesOf } from '../../core/route/charge.ts'
import { demandOf, reachOf } from '../../core/route/demand.ts'
import { flowOf } from '../../core/route/flow.ts'
import { isRoute } from '../../core/route/is-route.ts'
import { longestLinear, overallYieldOnStart, typicalYield } from '../../core/route/overall-yield.ts'
import type { Route } from '../../core/route/route.ts'
import { bundled } from '../../server/library/bundled.ts'
import { defaultRoutes } from '../support/default-routes.ts'

const { library } = bundled()
const routes = defaultRoutes(library, 4)
const name = (route: Route): string => `${route.start} -> ${route.steps.map(s => s.transformation).join(', ')}`
const relative = (got: number, want: number): number => Math.abs(got - want) / Math.abs(want)
/** Rounding along four steps. */
const exact = 1e-9
/** Compounds of a route in the way its steps take and make them. */
const chargesFor = (route: Route, targetG: number) => {
  const demand = demandOf(library, route.steps, new Map([[route.target, targetG]]))
  return route.steps.flatMap(s => {
    const limitingG = demand.limitingG.get(s.transformation)!
    const productG = limitingG * flowOf(library, s.transformation).theoryPerG * typicalYield(library, s.transformation)
    const made = new Set(route.steps.map(o => o.makes))
    return chargesOf(library, {
      transformation: s.transformation,
      limitingG,
      productG,
      start: { compound: route.start, material: route.start },
      made,
    })
  })
}

describe(`laws of amounts on ${routes.length} default routes of the bundled library`, () => {
  it('has enough of them, each a route', () => {
    expect(routes.length).toBeGreaterThan(900)
    expect(routes.flatMap(r => isRoute(library, r).map(fault => `${name(r)}: ${fault}`))).toEqual([])
  })

  it('backwards undoes forwards', () => {
    for (const route of routes) {
      const { scale, setBy } = reachOf(library, route.steps, new Map([[route.target, 1]]), new Map([[route.start, 24]]))
      expect(setBy, name(route)).toBe(route.start)
      const back = demandOf(library, route.steps, new Map([[route.target, scale]])).compoundG.get(route.start)!
      expect(relative(back, 24), name(route)).toBeLessThan(exact)
    }
  })

  it('twice the goal takes twice every charge', () => {
    const without = routes.filter(r => r.steps.every(s => flowOf(library, s.transformation).lossG === 0))
    expect(without.length).toBeGreaterThan(900)
    for (const route of without) {
      const once = chargesFor(route, 5)
      const twice = chargesFor(route, 10)
      expect(twice).toHaveLength(once.length)
      once.forEach((line, i) => {
        for (const key of ['massG', 'volumeMl', 'amountMol'] as const) {
          if (line[key] === null) expect(twice[i]![key]).toBeNull()
          else if (line[key] > 0) expect(relative(twice[i]![key]!, 2 * line[key]), `${name(route)} ${line.material}`).toBeLessThan(exact)
        }
      })
    }
  })

  it('both yields agree where each step takes the product before it as its limiting reactant and nothing twice', () => {
    const linear = routes.filter(r => {
      const chain = r.steps.map(s => transformationOf(library, s.transformation))
      return (
        chain.every((t, i) => t.limiting === (i === 0 ? r.start : chain[i - 1]!.mainProduct)) &&
        chain.every(t => t.reactants.filter(x => x.compound === r.start || chain.some(o => o.mainProduct === x.compound)).length === 1)
      )
    })
    expect(linear.length).toBeGreaterThan(500)
    for (const route of linear) {
      const { yieldFraction, chain } = longestLinear(library, route)
      expect(chain).toHaveLength(route.steps.length)
      expect(relative(overallYieldOnStart(library, route), yieldFraction), name(route)).toBeLessThan(exact)
    }
  })

  it('no overall yield is above the whole by more than what limiting reactants are charged short', () => {
    // A record may be charged up to 2 % short of its share before anybody warns.
    for (const route of routes) expect(overallYieldOnStart(library, route), name(route)).toBeLessThan(1.02)
  })

  it('every charge line has a basis, and no known amount is zero', () => {
    for (const route of routes) {
      for (const line of chargesFor(route, 5)) {
        expect(line.massG !== 0 && line.volumeMl !== 0 && line.amountMol !== 0, `${name(route)} ${line.material}`).toBe(true)
        if (line.basis === 'open') expect([line.massG, line.volumeMl, line.amountMol]).toEqual([null, null, null])
        else expect(line.massG ?? line.volumeMl ?? line.amountMol, `${name(route)} ${line.material}`).not.toBeNull()
      }
    }
  })

  it('atoms in are atoms out in every reaction, and mass with them', () => {
    const reactions = [...library.transformations.values()].filter(t => t.kind === 'reaction')
    expect(reactions.length).toBeGreaterThan(370)
    for (const t of reactions) {
      const sum = new Map<string, number>()
      const count = (side: typeof t.reactants, sign: 1 | -1): void => {
        for (const { compound, coefficient } of side) {
          const parsed = parseFormula(library.materials.get(compound)!.formula!)
          if (!parsed.ok) throw new Error(compound)
          for (const [element, n] of parsed.value.counts) sum.set(element, (sum.get(element) ?? 0) + sign * coefficient * n)
        }
      }
      count(t.reactants, 1)
      count(t.products, -1)
      for (const [element, n] of sum) expect(Math.abs(n), `${t.id} ${element}`).toBeLessThan(1e-9)
      const mass = (side: typeof t.reactants): number => side.reduce((g, r) => g + r.coefficient * library.molarMass.get(r.compound)!, 0)
      expect(relative(mass(t.products), mass(t.reactants)), t.id).toBeLessThan(1e-9)
    }
  })
})
