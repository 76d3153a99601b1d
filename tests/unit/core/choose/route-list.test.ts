import { readFileSync } from 'node:fs'
import loadHighs from 'highs'
import { describe, expect, it } from 'vitest'
import { stepsApart } from '../../../../core/choose/apart.ts'
import type { Axis, RoutesQuery } from '../../../../core/choose/query.ts'
import { type RouteRows, routeList } from '../../../../core/choose/route-list.ts'
import type { RouteRow } from '../../../../core/choose/route-row.ts'
import { routeRows } from '../../../../core/choose/route-rows.ts'
import type { RoutesInput, SearchEvent } from '../../../../core/choose/searching.ts'
import { compareCounts } from '../../../../core/hazards/counts.ts'
import { traitsOf } from '../../../../core/hazards/traits.ts'
import { loadLibrary } from '../../../../core/library/load.ts'
import { settingsSchema } from '../../../../core/plan/settings.ts'
import { solverOf } from '../../../../core/shopping/solver-of.ts'
import { firstTimeRange } from '../../../../core/yields/belief.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { bundledTraits } from '../../../support/bundled-traits.ts'
import { covering } from '../../../support/networks/hard.ts'
import { libraryText } from '../../../support/networks/library-text.ts'
import { root } from '../../../support/tree.ts'

const { library } = bundled()
const { tables, traits } = bundledTraits()
const packs = JSON.parse(readFileSync(`${root}routes-data/demo/packs.json`, 'utf8'))
const goal = { from: 'benzoin', to: 'hexaphenylbenzene' }

function rows(query: RoutesQuery, more: Partial<RoutesInput> = {}, solver: Parameters<typeof routeRows>[1] = null): RouteRows {
  const answer = routeRows({ library, traits, query, ...more }, solver)
  if (!answer.ok || answer.value.kind !== 'routes') throw new Error(JSON.stringify(answer).slice(0, 400))
  return answer.value
}

describe('the growing list', () => {
  it('tells each row in order as it is found, the first before the search is done', () => {
    const search = routeList({ library, traits, query: { ...goal, make: ['all'], count: 20 } })
    const events: SearchEvent[] = []
    let step = search.next()
    for (; !step.done; step = search.next()) events.push(step.value)
    const told = events.filter(event => event.kind === 'row')
    expect(told.map(event => event.place)).toEqual(Array.from({ length: 20 }, (_, i) => i + 1))
    const answer = step.value
    if (!answer.ok || answer.value.kind !== 'routes') throw new Error('no routes')
    expect(told.map(event => event.row.steps)).toEqual(answer.value.routes.map(row => row.steps))
  })

  it('can be left at any pause', () => {
    const search = routeList({ library, traits, query: goal })
    search.next()
    search.return(undefined as never)
    expect(search.next().done).toBe(true)
  })

  it('asked for more, begins with the same', () => {
    for (const by of ['start', 'hands-on', 'elapsed'] as const) {
      const few = rows({ ...goal, by, make: ['all'], count: 7 }).routes
      const many = rows({ ...goal, by, make: ['all'], count: 30 }).routes
      expect(many.slice(0, 7).map(row => row.steps)).toEqual(few.map(row => row.steps))
    }
  })
})

describe('routes that no other beats', () => {
  const all = (by: Axis, make: readonly string[]) => rows({ ...goal, by, make, count: 1000 }, { packs }).routes
  const figures = (make: readonly string[], axes: readonly Axis[]): ReadonlyMap<string, readonly number[]> => {
    const hazards = [...all('hazard', make)].sort((a, b) => compareCounts(a.hazard, b.hazard))
    const lists = axes.map(
      axis =>
        new Map(
          all(axis, make).map((row): [string, number] => [
            row.steps.join(),
            axis === 'hazard'
              ? hazards.findIndex(other => compareCounts(other.hazard, row.hazard) === 0)
              : axis === 'yield'
                ? -row.overallYieldOnStart
                : (row.value ?? Number.POSITIVE_INFINITY),
          ]),
        ),
    )
    return new Map(all('start', make).map(row => [row.steps.join(), lists.map(list => list.get(row.steps.join())!)]))
  }
  const pairs: readonly (readonly Axis[])[] = [
    ['start', 'hands-on'],
    ['steps', 'elapsed'],
    ['yield', 'hazard'],
    ['start', 'elapsed', 'mass-intensity'],
    ['cost', 'hands-on'],
    ['start', 'hands-on', 'elapsed', 'hazard'],
    ['start', 'steps', 'elapsed', 'mass-intensity'],
  ]
  it.each(pairs.flatMap(axes => [[axes, []] as const, [axes, ['all']] as const]))(
    'on %s, %s: all of them and no others, held against the whole list',
    (axes, make) => {
      const answer = rows({ ...goal, unbeaten: axes, make, count: 1000 }, { packs })
      expect(answer.unbeaten).toEqual({ axes, exact: true })
      expect(answer.complete).toBe(true)
      const whole = figures(make, axes)
      const beats = (a: readonly number[], b: readonly number[]) => {
        const close = (x: number, y: number) => x === y || Math.abs(x - y) <= 1e-9 * (1 + Math.abs(y))
        return a.every((x, i) => x < b[i]! || close(x, b[i]!)) && a.some((x, i) => x < b[i]! && !close(x, b[i]!))
      }
      const wanted = [...whole].filter(([, own]) => ![...whole.values()].some(other => beats(other, own)))
      const key = (own: readonly number[]) => own.map(x => x.toPrecision(8)).join(' ')
      // Of routes with the same figures one is enough.
      expect(new Set(answer.routes.map(row => key(whole.get(row.steps.join())!)))).toEqual(new Set(wanted.map(([, own]) => key(own))))
      for (const row of answer.routes) for (const axis of axes) expect(row.values).toHaveProperty(axis)
    },
  )

  it('refuses one axis, five, and the same twice', () => {
    for (const unbeaten of [['start'], ['start', 'start'], ['start', 'steps', 'cost', 'elapsed', 'hazard']] as Axis[][]) {
      const answer = routeRows({ library, traits, query: { ...goal, unbeaten } })
      expect(answer.ok ? [] : answer.problems.map(p => p.code)).toEqual(['axes-to-compare'])
    }
  })
})

describe('routes at least so many steps apart', () => {
  it.each(['start', 'hazard'] as const)('by %s: each keeps its distance from every one before, and none was left out that does', by => {
    const whole = rows({ ...goal, by, make: ['all'], count: 1000 }).routes
    for (const apart of [2, 3, 5]) {
      const thinned = rows({ ...goal, by, make: ['all'], count: 1000, apart })
      const kept: RouteRow[] = []
      for (const row of whole) if (kept.every(other => stepsApart(other.steps, row.steps) >= apart)) kept.push(row)
      expect(thinned.routes.map(row => row.steps)).toEqual(kept.map(row => row.steps))
      expect(thinned.apart).toBe(apart)
    }
  })
})

describe('the hand', () => {
  it('a first attempt ranks by its own typical yields', () => {
    const settings = settingsSchema.parse({ hand: 'first-time' })
    const row = rows({ from: 'benzoin', to: 'benzil', count: 50 }, { settings }).routes.find(r => r.steps.join() === 'benzil-nitric-acid')!
    const t = library.transformations.get('benzil-nitric-acid')!
    const { low, typical, high } = t.yieldPercent
    const { range } = firstTimeRange(
      { low: low / 100, typical: typical / 100, high: high / 100 },
      false,
      (t.reports ?? []).map(report => report.percent / 100),
    )
    expect(row.overallYieldOnStart).toBeCloseTo(range.typical, 9)
    expect(row.overallYieldOnStart).toBeLessThan(typical / 100)
  })
})

describe('what no line gives', () => {
  it('makes the figure a lower bound, and the row says so', () => {
    const listed = rows({ ...goal, by: 'mass-intensity', make: ['all'], count: 1000 }).routes
    const open = listed.filter(row => row.valueAtLeast)
    expect(open.length).toBeGreaterThan(0)
    for (const row of listed) expect(row.flags.some(flag => flag.kind === 'value-at-least')).toBe(row.valueAtLeast === true)
    for (const row of rows({ ...goal, by: 'steps' }).routes) expect(row.valueAtLeast).toBeUndefined()
  })
})

describe('proof', () => {
  it('where the search is cut short, the best says how far it may lie above the bound; the solver proves it', async () => {
    // A covering problem: wide for a search by partial routes, small for HiGHS.
    const { network, start, target } = covering(15, 13, 8)
    const yields = new Float64Array(network.arcs.length).fill(0.8)
    const hours = new Float64Array(network.arcs.length).fill(2)
    const loaded = loadLibrary([
      { name: 'covering.json', text: libraryText({ network, yields, hours, ownCost: hours, name: '' } as never) },
    ])
    if (!loaded.ok) throw new Error(loaded.problems[0]!.what)
    const wide = { library: loaded.value, traits: traitsOf(loaded.value, tables, null) }
    const query = { from: network.compounds[start]!, to: network.compounds[target]!, by: 'steps' as const, make: ['all'], count: 5 }
    const proof = rows({ ...query, prove: true }, wide, solverOf(await loadHighs()))
    expect(proof.best).toEqual({ proven: true, atMostAbovePercent: 0 })
    const best = proof.routes[0]!.value!
    let short = 0
    for (const budget of [1, 10, 100, 1000]) {
      const cut = rows(query, { ...wide, budget })
      const { atMostAbovePercent, proven } = cut.best
      if (proven) expect(cut.routes[0]!.value).toBeCloseTo(best, 6)
      if (proven || atMostAbovePercent === null) continue
      expect(cut.routes[0]!.value!).toBeGreaterThanOrEqual(best - 1e-9)
      expect(cut.routes[0]!.value! / (1 + atMostAbovePercent / 100)).toBeLessThanOrEqual(best + 1e-9)
      short++
    }
    expect(short).toBeGreaterThan(0)
  })
  it('the best of the bundled library is proven within the least budget', () => {
    const query = { ...goal, by: 'hands-on' as const, make: ['all'], count: 5 }
    const best = rows(query).routes[0]!.value!
    for (const budget of [1, 3, 7]) {
      const cut = rows(query, { budget })
      expect([cut.best.proven, cut.routes[0]!.value]).toEqual([true, best])
    }
  })
})
