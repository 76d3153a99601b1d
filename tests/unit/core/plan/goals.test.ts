import { describe, expect, it } from 'vitest'
import { checkedPlan, PlanRefused } from '../../../../core/plan/goals.ts'
import type { Plan } from '../../../../core/plan/plan.ts'
import { reckoned } from '../../../../core/plan/reckoned.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { benzoinGoal, benzoinPlan, mass, rest, share } from '../../../support/benzoin-plans.ts'

const { library } = bundled()
const goal = (target: string, amount = rest, steps?: readonly string[]) => benzoinGoal(library, target, amount, ...(steps ? [steps] : []))
const codes = (plan: Plan) => {
  const checked = checkedPlan(library, plan)
  return (checked.ok ? checked.warnings : checked.problems).map(p => p.code)
}

describe('a plan is held against the library before it is reckoned', () => {
  it('passes a good one', () => {
    expect(codes(benzoinPlan([goal('lophine')]))).toEqual([])
  })
  it.each([
    ['no goal', benzoinPlan([]), ['no-goal']],
    [
      'two makers of one compound',
      benzoinPlan([goal('lophine', mass(5)), goal('2-3-diphenylquinoxaline', rest, ['benzil-nitric-acid', 'diphenylquinoxaline'])]),
      ['two-makers'],
    ],
    ['a route that is none', benzoinPlan([goal('lophine', rest, ['lophine'])]), ['goal-route']],
    ['the same goal twice', benzoinPlan([goal('lophine', mass(5)), goal('lophine')]), ['goal-twice']],
    ['an unknown start', benzoinPlan([goal('lophine')], { start: { material: 'unobtainium', massG: 2 } }), ['start-unknown']],
    ['a start that holds something else', benzoinPlan([goal('lophine')], { start: { material: 'ethanol', massG: 2 } }), ['start-differs']],
    ['no amount', benzoinPlan([goal('lophine')], { start: { material: 'benzoin', massG: 0 } }), ['start-amount']],
    ['rest of nothing', benzoinPlan([goal('lophine')], { start: { material: 'benzoin', massG: null } }), ['rest-of-nothing']],
    [
      'shares of nothing',
      benzoinPlan([goal('lophine', share(0.5))], { start: { material: 'benzoin', massG: null } }),
      ['share-of-nothing'],
    ],
    [
      'shares above the whole',
      benzoinPlan([goal('lophine', share(0.7)), goal('2-3-diphenylquinoxaline', share(0.4))]),
      ['shares-above-whole'],
    ],
    ['two rests', benzoinPlan([goal('lophine'), goal('2-3-diphenylquinoxaline')]), ['rest-twice']],
    ['a mass below zero', benzoinPlan([goal('lophine', mass(-1))]), ['goal-amount']],
    [
      'a shelf of unknown things',
      benzoinPlan([goal('lophine')], { shelf: [{ material: 'unobtainium', amount: 1, unit: 'g' }] }),
      ['shelf-unknown'],
    ],
    [
      'keeping back what never is (a warning)',
      benzoinPlan([goal('lophine')], { settings: { keptBack: [{ compound: 'ethanol', massG: 1 }] } }),
      ['kept-back-absent'],
    ],
  ] as const)('%s', (_name, plan, expected) => {
    expect(codes(plan)).toEqual(expected)
  })
  it('tells all problems at once', () => {
    expect(codes(benzoinPlan([goal('lophine', mass(-1))], { start: { material: 'ethanol', massG: -2 } }))).toEqual([
      'start-differs',
      'start-amount',
      'goal-amount',
    ])
  })
  it('lets three thirds be the whole', () => {
    const thirds = ['lophine', '2-3-diphenylquinoxaline', 'tetraphenylcyclopentadienone'].map(t => goal(t, share(1 / 3)))
    expect(codes(benzoinPlan(thirds))).toEqual([])
  })
  it('is refused as a whole by the reckoning, with its problems', () => {
    expect(() => reckoned(library, benzoinPlan([]))).toThrow(PlanRefused)
  })
})
