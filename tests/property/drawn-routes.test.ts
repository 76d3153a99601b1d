import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { openAmountsAt } from '../../core/choose/at-least.ts'
import { axes } from '../../core/choose/query.ts'
import { isNotable } from '../../core/choose/route-flags.ts'
import { routeRows } from '../../core/choose/route-rows.ts'
import { hazardCounts } from '../../core/hazards/counts.ts'
import { regulatedAmong } from '../../core/hazards/regulated.ts'
import { hazardTally } from '../../core/hazards/tally.ts'
import { materialsOfRoute } from '../../core/route/materials.ts'
import { bundled } from '../../server/library/bundled.ts'
import { bundledTraits } from '../support/bundled-traits.ts'

// What a search works out for each route it draws, in short ways, against the long way that a plan takes for the one that is chosen.
const { library } = bundled()
const { traits } = bundledTraits()
const transformations = [...library.transformations.keys()]
const materials = [...library.materials.keys()]

const someRoute = fc.record({
  start: fc.constantFrom(...materials),
  target: fc.constantFrom(...materials),
  steps: fc
    .uniqueArray(fc.constantFrom(...transformations), { maxLength: 12 })
    .map(ids => ids.map(transformation => ({ transformation, makes: library.transformations.get(transformation)!.mainProduct }))),
})

describe('what is worked out for every route that is drawn', () => {
  it('counts the same hazards as the list of its materials does', () => {
    fc.assert(
      fc.property(someRoute, route => {
        const long = hazardCounts(library, materialsOfRoute(library, route))
        const ids = route.steps.map(s => s.transformation)
        expect(hazardTally(library, route.start, route.target, ids)).toEqual(long)
      }),
      { numRuns: 2000 },
    )
  })
  it('leaves out no material that a list concerns', () => {
    fc.assert(
      fc.property(someRoute, fc.constantFrom('EU', 'UK', 'US', 'UN'), fc.constantFrom('public', 'professional'), (route, region, buyer) => {
        const all = materialsOfRoute(library, route)
        const notable = materialsOfRoute(library, route, material => isNotable(traits, material))
        expect(regulatedAmong(traits, notable, { region, buyer })).toEqual(regulatedAmong(traits, all, { region, buyer }))
        expect(notable.filter(one => !traits.get(one.material)!.screened)).toEqual(all.filter(one => !traits.get(one.material)!.screened))
      }),
      { numRuns: 500 },
    )
  })
  it('remembers of a step whether it buys something without an amount only where the route cannot change that', () => {
    const yields = new Map<string, number>()
    const answers = ['benzoin', 'benzaldehyde', '1-3-diphenylacetone'].map(from =>
      routeRows({ library, traits, query: { from, to: 'hexaphenylbenzene', make: ['all'], count: 100 } }),
    )
    const routes = answers.flatMap((answer, i) => {
      if (!answer.ok || answer.value.kind !== 'routes') throw new Error('no routes')
      const start = ['benzoin', 'benzaldehyde', '1-3-diphenylacetone'][i]!
      return answer.value.routes.map(({ steps }) => ({
        start,
        target: 'hexaphenylbenzene',
        steps: steps.map(transformation => ({ transformation, makes: library.transformations.get(transformation)!.mainProduct })),
      }))
    })
    const remembered = openAmountsAt(library, yields)
    const told = routes.map(route => remembered(route))
    expect(told).toEqual(routes.map(route => openAmountsAt(library, yields)(route)))
    expect(new Set(told).size).toBe(2)
  })
  it.each(axes)('by %s, the first k of a longer list are the list of k', by => {
    let longer = 0
    for (const [from, to] of [
      ['benzoin', 'hexaphenylbenzene'],
      ['benzaldehyde', 'tetraphenylcyclopentadienone'],
      ['sodium-hypochlorite', 'lophine'],
      ['acetophenone', 'chalcone'],
    ] as const)
      for (const make of [[], ['all']]) {
        const listed = (count: number) => {
          const answer = routeRows({ library, traits, query: { from, to, by, make, count } })
          if (!answer.ok) throw new Error(answer.problems[0]!.what)
          return answer.value.kind === 'routes' ? answer.value.routes.map(({ steps, value }) => ({ steps, value })) : []
        }
        const most = listed(40)
        for (const count of [1, 2, 3, 5, 8, 13, 14, 25]) {
          expect(listed(count)).toEqual(most.slice(0, count))
          if (most.length > count) longer++
        }
      }
    expect(longer).toBeGreaterThan(8)
  })
})
