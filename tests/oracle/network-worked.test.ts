import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { RoutesQuery } from '../../core/choose/query.ts'
import type { RouteRow } from '../../core/choose/route-row.ts'
import { routeRows } from '../../core/choose/route-rows.ts'
import type { Traits } from '../../core/hazards/traits.ts'
import type { Library } from '../../core/library/library.ts'
import { loadLibrary } from '../../core/library/load.ts'
import { isRoute } from '../../core/route/is-route.ts'
import { workingOrder } from '../../core/route/working-order.ts'
import { bundled } from '../../server/library/bundled.ts'

/**
 * Routes, their number and their yields, reckoned twice by two programs that share no code with this one and read only the definitions.
 * Not from a source: a check on the definitions, not on nature.
 */
interface Goal {
  readonly default: readonly { readonly steps: readonly string[]; readonly overallYieldOnStart: number }[]
  readonly makeAllCount: number
  readonly makeAllFirst12OverallYields: readonly number[]
}
const folder = new URL('../support/worked/', import.meta.url)
const textOf = (name: string) => readFileSync(new URL(name, folder), 'utf8')
const expected: { random: Record<string, Record<string, Goal>>; bundledFacts: Record<string, Goal> } = JSON.parse(textOf('expected.json'))

function openLibrary(name: string): Library {
  const loaded = loadLibrary([{ name, text: textOf(name) }])
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems[0]))
  return loaded.value
}

/** Nothing is on any list here: what the lists do is another test's matter. */
const unlisted = (library: Library): ReadonlyMap<string, Traits> =>
  new Map([...library.materials.keys()].map(id => [id, { screened: true, regulated: [], groups: [], smarts: [] }]))

function rows(library: Library, query: RoutesQuery): readonly RouteRow[] {
  const answer = routeRows({ library, traits: unlisted(library), query })
  if (!answer.ok || answer.value.kind !== 'routes') throw new Error(JSON.stringify(answer))
  expect(answer.value.complete).toBe(true)
  return answer.value.routes
}

// The figures are printed to ten digits.
const near = (yieldFraction: number) => expect.closeTo(yieldFraction, 8)

const goals = [
  ...Object.entries(expected.bundledFacts).map(([key, goal]) => ({ name: `bundled: ${key}`, key, goal, open: () => bundled().library })),
  ...Object.entries(expected.random).flatMap(([file, of]) =>
    Object.entries(of).map(([key, goal]) => ({ name: `${file}: ${key}`, key, goal, open: () => openLibrary(file) })),
  ),
]

it('are 27 goals', () => expect(goals.length).toBe(27))

describe.each(goals)('$name', ({ key, goal, open }) => {
  const [from, to] = key.split(' -> ') as [string, string]
  const library = open()

  it('has these default routes in this order', () => {
    const found = rows(library, { from, to, count: 1000 })
    expect(found.map(row => row.steps)).toEqual(goal.default.map(row => row.steps))
    expect(found.map(row => row.overallYieldOnStart)).toEqual(goal.default.map(row => near(row.overallYieldOnStart)))
  })

  it('has so many routes in all, and these yields first', () => {
    const found = rows(library, { from, to, make: ['all'], count: 1000 })
    expect(found.length).toBe(goal.makeAllCount)
    expect(found.slice(0, 12).map(row => row.overallYieldOnStart)).toEqual(goal.makeAllFirst12OverallYields.map(near))
  })

  it('has routes by the definition alone', () => {
    for (const make of [[], ['all']]) {
      for (const row of rows(library, { from, to, make, count: 1000 })) {
        expect(isRoute(library, { start: from, target: to, steps: workingOrder(library, from, row.steps) })).toEqual([])
      }
    }
  })
})

describe('benzoin to hexaphenylbenzene, counted by hand-plain means', () => {
  it('has 82 routes when everything may be made', () => {
    const { library } = bundled()
    expect(countAll(library, 'benzoin', 'hexaphenylbenzene')).toBe(82)
    expect(rows(library, { from: 'benzoin', to: 'hexaphenylbenzene', make: ['all'], count: 1000 }).length).toBe(82)
  })
})

/** Decides compound after compound, bought or made by each maker in turn; counts what uses the start and has no circle. */
function countAll(library: Library, start: string, target: string): number {
  const seen = new Set<string>()
  const decide = (open: readonly string[], makers: ReadonlyMap<string, string | null>): void => {
    const [compound, ...rest] = open
    if (compound === undefined) {
      if (usesStart(makers) && !hasCircle(makers))
        seen.add(
          [...makers]
            .filter(([, m]) => m !== null)
            .sort()
            .join(),
        )
      return
    }
    if (compound === start || makers.has(compound)) {
      decide(rest, makers)
      return
    }
    if (compound !== target && library.materials.get(compound)!.buyable !== false) decide(rest, new Map(makers).set(compound, null))
    for (const t of library.makers.get(compound) ?? [])
      decide([...rest, ...t.reactants.map(r => r.compound)], new Map(makers).set(compound, t.id))
  }
  const takes = (id: string) => library.transformations.get(id)!.reactants.map(r => r.compound)
  const usesStart = (makers: ReadonlyMap<string, string | null>) =>
    [...makers.values()].some(id => id !== null && takes(id).includes(start))
  const hasCircle = (makers: ReadonlyMap<string, string | null>) => {
    const walk = (compound: string, above: readonly string[]): boolean => {
      const id = makers.get(compound)
      return above.includes(compound) || (!!id && takes(id).some(r => walk(r, [...above, compound])))
    }
    return walk(target, [])
  }
  decide([target], new Map())
  return seen.size
}
