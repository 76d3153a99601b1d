import { describe, expect, it } from 'vitest'
import { reachList, reachRows } from '../../../../core/choose/reach-rows.ts'
import { routeRows } from '../../../../core/choose/route-rows.ts'
import type { SearchEvent } from '../../../../core/choose/searching.ts'
import { isRoute } from '../../../../core/route/is-route.ts'
import { workingOrder } from '../../../../core/route/working-order.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { bundledTraits } from '../../../support/bundled-traits.ts'

const { library } = bundled()
const { traits } = bundledTraits()

function reach(from: string, maxSteps?: number) {
  const answer = reachRows({ library, traits, query: { from, ...(maxSteps !== undefined && { maxSteps }) } })
  if (!answer.ok || answer.value.kind !== 'reach') throw new Error(JSON.stringify(answer))
  return answer.value.reach
}

describe('what a start can become', () => {
  it.each(['benzoin', 'castor-oil', 'copper-metal', 'cinnamon-bark', 'benzaldehyde'].filter(id => library.users.has(id)))(
    '%s: each row is the first default route, and counts them all',
    from => {
      const rows = reach(from)
      expect(rows.length).toBeGreaterThan(1)
      for (const row of rows) {
        const answer = routeRows({ library, traits, query: { from, to: row.compound, count: 1000 } })
        if (!answer.ok || answer.value.kind !== 'routes') throw new Error(`${row.compound}: ${JSON.stringify(answer)}`)
        expect([row.routes, row.counted, row.proven]).toEqual([answer.value.routes.length, true, true])
        expect(row.route).toEqual(answer.value.routes[0]!.steps)
        expect(row.bestYieldOnStart).toBe(answer.value.routes[0]!.overallYieldOnStart)
        const { yieldTrust } = answer.value.routes[0]!
        expect(row.yieldTrust).toBe(['remembered', 'own bench', 'seen'].find(trust => yieldTrust.some(one => one === trust)))
        expect(isRoute(library, { start: from, target: row.compound, steps: workingOrder(library, from, row.route!) })).toEqual([])
      }
    },
  )

  it('leaves out what no default route makes', () => {
    const reached = new Set(reach('benzoin').map(row => row.compound))
    let none = 0
    for (const compound of library.makers.keys()) {
      if (compound === 'benzoin' || reached.has(compound)) continue
      const answer = routeRows({ library, traits, query: { from: 'benzoin', to: compound } })
      expect(answer.ok && answer.value.kind).toBe('none')
      none++
    }
    expect(none).toBeGreaterThan(300)
  })

  it('keeps to the steps allowed', () => {
    const near = reach('benzoin', 1)
    expect(near.map(row => row.steps)).toEqual(near.map(() => 1))
    expect(near.length).toBeLessThan(reach('benzoin').length)
  })

  it('refuses water, what nothing takes and what is unknown', () => {
    for (const from of ['water', 'hexaphenylbenzene', 'benzion']) expect(reachRows({ library, traits, query: { from } }).ok).toBe(false)
  })
})

describe('the list as it grows', () => {
  const told = (from: string, shouldStop: (events: readonly SearchEvent[]) => boolean) => {
    const events: SearchEvent[] = []
    const search = reachList({ library, traits, query: { from }, shouldStop: () => shouldStop(events) })
    for (let step = search.next(); ; step = search.next()) {
      if (!step.done) events.push(step.value)
      else if (step.value.ok && step.value.value.kind === 'reach') return { events, ...step.value.value }
      else throw new Error(JSON.stringify(step.value))
    }
  }
  const confirmed = (events: readonly SearchEvent[]) => events.flatMap(event => (event.kind === 'reached' ? event.rows : []))

  it('tells every row once, as a route confirms it, best yield first, before any is counted', () => {
    const { events, reach: rows, complete } = told('benzoin', () => false)
    expect(complete).toBe(true)
    const early = confirmed(events)
    expect(early.map(row => row.compound).sort()).toEqual(rows.map(row => row.compound).sort())
    for (const row of early) {
      expect(isRoute(library, { start: 'benzoin', target: row.compound, steps: workingOrder(library, 'benzoin', row.route!) })).toEqual([])
      expect({ ...row, name: '' }).toEqual({ ...rows.find(one => one.compound === row.compound)!, routes: 1, counted: false, name: '' })
    }
    const counting = events.findIndex(event => event.kind === 'progress' && event.of?.doing === 'counting')
    expect(events.slice(counting).some(event => event.kind === 'reached')).toBe(false)
  })

  it('stopped at once, everything possible stands as not proven', () => {
    const { reach: rows, complete } = told('benzoin', () => true)
    expect(complete).toBe(false)
    expect(rows.length).toBeGreaterThanOrEqual(reach('benzoin').length)
    expect(rows.every(row => !row.proven && row.route === null && row.bestYieldOnStart === null)).toBe(true)
  })

  it('stopped while routes are counted, what was confirmed stays proven, with at least one route', () => {
    const whole = new Map(reach('benzoin').map(row => [row.compound, row]))
    const { reach: rows, complete } = told('benzoin', events =>
      events.some(event => event.kind === 'progress' && event.of?.doing === 'counting' && event.of.done > 3),
    )
    expect(complete).toBe(false)
    expect(rows.filter(row => row.counted).length).toBeGreaterThan(2)
    const uncounted = rows.filter(row => !row.counted)
    expect(uncounted.length).toBeGreaterThan(2)
    for (const row of uncounted) {
      expect(row.proven).toBe(true)
      expect(row.routes).toBeLessThanOrEqual(whole.get(row.compound)!.routes)
    }
  })
})
