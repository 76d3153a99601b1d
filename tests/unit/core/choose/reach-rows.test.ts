import { describe, expect, it } from 'vitest'
import { reachRows } from '../../../../core/choose/reach-rows.ts'
import { routeRows } from '../../../../core/choose/route-rows.ts'
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
