import { describe, expect, it } from 'vitest'
import type { Goal, Plan } from '../../../../core/plan/plan.ts'
import { reckoned } from '../../../../core/plan/reckoned.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { benzoinGoal, benzoinPlan, mass, rest, share } from '../../../support/benzoin-plans.ts'

const { library } = bundled()
const goal = (target: string, amount: Goal['amount']) => benzoinGoal(library, target, amount)
const result = (plan: Plan) => reckoned(library, plan)

describe('the division of 24 g of benzoin', () => {
  const goals = [goal('lophine', mass(5)), goal('2-3-diphenylquinoxaline', mass(5)), goal('tetraphenylcyclopentadienone', rest)]

  it('serves masses first and leaves the rest, as drawn in the example sheet', () => {
    const { steps, goals: found, start } = result(benzoinPlan(goals))
    // 3.94, 4.96 and 12.73 g of benzil by hand from 0.91, 0.90, 0.75 and the molar masses.
    expect(steps[0]!.goesTo.map(u => u.massG.toFixed(2))).toEqual(['3.94', '4.96', '12.73'])
    expect(found.map(g => g.expectedG.toFixed(3))).toEqual(['5.000', '5.000', '21.787'])
    expect(found.reduce((sum, g) => sum + g.startG, 0)).toBeCloseTo(24, 9)
    expect([start.massG, start.leftG]).toEqual([expect.closeTo(24, 9), 0])
  })

  it('does not depend on the place of the rest, but on the order of masses where they do not fit', () => {
    const turned = [goals[2]!, goals[1]!, goals[0]!]
    expect(result(benzoinPlan(turned)).goals[0]!.expectedG).toBeCloseTo(21.787, 3)
    const scarce = benzoinPlan(goals.slice(0, 2), { start: { material: 'benzoin', massG: 6 } })
    const first = result(scarce)
    expect(first.goals[0]!.expectedG).toBeCloseTo(5, 9)
    // What 6 - 4.3721 g of benzoin give by 0.91 and 0.75.
    expect(first.goals[1]!.expectedG).toBeCloseTo((5 * (6 - 4.37211)) / 5.50718, 3)
    const note = first.notes.find(n => n.code === 'start-short')!
    expect(note.where).toEqual(['goals', '2-3-diphenylquinoxaline'])
    expect(note.what).toContain('benzoin does not reach for 5.00 g')
    // 4.3721 + 5.5072 - 6
    expect(note.what).toContain('3.88 g more')
    const second = result(benzoinPlan([goals[1]!, goals[0]!], { start: { material: 'benzoin', massG: 6 } }))
    expect(second.goals[0]!.expectedG).toBeCloseTo(5, 9)
    expect(second.goals[1]!.expectedG).toBeLessThan(5)
  })

  it('gives shares of the start, what is kept back taken off before', () => {
    const plan = benzoinPlan([goal('lophine', share(0.5)), goal('2-3-diphenylquinoxaline', share(0.25))], {
      settings: { keptBack: [{ compound: 'benzoin', massG: 4 }] },
    })
    const { goals: found, start } = result(plan)
    expect(found.map(g => g.startG)).toEqual([expect.closeTo(10, 9), expect.closeTo(5, 9)])
    expect(start.leftG).toBeCloseTo(5, 9)
    expect(start.keptBackG).toBe(4)
  })

  it('keeps back an intermediate, made from the start but used by nobody', () => {
    const plan = benzoinPlan([goal('lophine', rest)], { settings: { keptBack: [{ compound: 'benzil', massG: 2 }] } })
    const { steps, goals: found } = result(plan)
    expect(steps[0]!.expectedG).toBeCloseTo(21.6326, 3)
    expect(steps[0]!.goesTo.at(-1)).toEqual({ step: null, goal: null, massG: 2 })
    expect(steps[1]!.limiting.massG).toBeCloseTo(steps[0]!.expectedG - 2, 9)
    expect(found[0]!.p10G).toBeLessThan(found[0]!.medianG)
  })

  it('lets the start grow where none is in hand', () => {
    const free = { start: { material: 'benzoin', massG: null } }
    expect(result(benzoinPlan(goals.slice(0, 2), free)).start.massG).toBeCloseTo(4.37211 + 5.50718, 4)
    // Half of it to a share: the masses need the other half.
    const shared = result(benzoinPlan([goals[0]!, goal('2-3-diphenylquinoxaline', share(0.5))], free))
    expect(shared.start.massG).toBeCloseTo(2 * 4.37211, 4)
  })

  it('sets aside a goal that is also an intermediate', () => {
    const { goals: found, steps } = result(benzoinPlan([goal('benzil', mass(6)), goal('lophine', rest)]))
    expect(found[0]!.expectedG).toBeCloseTo(6, 9)
    expect(steps[1]!.limiting.massG).toBeCloseTo(21.6326 - 6, 3)
  })

  it('says when nothing is left', () => {
    const { goals: found, notes } = result(benzoinPlan([goal('lophine', mass(100)), goal('tetraphenylcyclopentadienone', rest)]))
    expect(found[1]!.expectedG).toBe(0)
    expect(notes.map(n => n.code)).toEqual(['start-short', 'nothing-left'])
  })
})

describe('step numbers', () => {
  it('count from the start, with letters in the order of the goals', () => {
    const { steps } = result(
      benzoinPlan([goal('lophine', mass(5)), goal('2-3-diphenylquinoxaline', mass(5)), goal('tetraphenylcyclopentadienone', rest)]),
    )
    expect(Object.fromEntries(steps.map(s => [s.transformation, s.number]))).toEqual({
      'benzil-copper-ammonium-nitrate': '1',
      lophine: '2a',
      diphenylquinoxaline: '2b',
      'tetraphenylcyclopentadienone-koh': '2c',
    })
  })
  it('count the longest way to a joining step', () => {
    const { steps } = result(benzoinPlan([goal('hexaphenylbenzene', rest)]))
    expect(steps.map(s => s.number)).toEqual(['1', '2a', '3', '2b', '4'])
  })
})
