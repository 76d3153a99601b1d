import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Goal, GoalAmount } from '../../core/plan/plan.ts'
import { reckoned } from '../../core/plan/reckoned.ts'
import { bundled } from '../../server/library/bundled.ts'
import { benzoinGoal, benzoinPlan } from '../support/benzoin-plans.ts'

const { library } = bundled()
const targets = ['benzil', 'lophine', '2-3-diphenylquinoxaline', 'tetraphenylcyclopentadienone', 'hexaphenylbenzene'] as const

const amounts: fc.Arbitrary<GoalAmount> = fc.oneof(
  fc.record({ kind: fc.constant('mass' as const), massG: fc.double({ min: 0.1, max: 20, noNaN: true }) }),
  fc.record({ kind: fc.constant('share' as const), fraction: fc.double({ min: 0.01, max: 0.2, noNaN: true }) }),
)
const plans = fc
  .record({
    picked: fc.shuffledSubarray([...targets], { minLength: 1 }),
    amounts: fc.array(amounts, { minLength: 5, maxLength: 5 }),
    restAt: fc.option(fc.nat(4), { nil: null }),
    haveG: fc.double({ min: 1, max: 80, noNaN: true }),
    keptG: fc.double({ min: 0, max: 3, noNaN: true }),
    seed: fc.integer({ min: 0, max: 1000 }),
  })
  .map(({ picked, amounts: given, restAt, haveG, keptG, seed }) => {
    const goals: Goal[] = picked.map((target, i) => benzoinGoal(library, target, restAt === i ? { kind: 'rest' } : given[i]!))
    const settings = { keptBack: keptG > 1 ? [{ compound: 'benzoin', massG: keptG }] : [] }
    return benzoinPlan(goals, { start: { material: 'benzoin', massG: haveG }, settings, seed })
  })

describe('laws of a plan', () => {
  it('divides no more than there is, and with a rest all of it', () => {
    fc.assert(
      fc.property(plans, plan => {
        const { start, goals, steps } = reckoned(library, plan)
        const haveG = plan.start.massG!
        const free = Math.max(0, haveG - start.keptBackG)
        expect(start.massG).toBeLessThanOrEqual(free * (1 + 1e-9))
        expect(goals.reduce((sum, g) => sum + g.startG, 0)).toBeCloseTo(start.massG, 6)
        if (plan.goals.some(g => g.amount.kind === 'rest')) expect(start.massG).toBeCloseTo(free, 6)
        for (const [i, goal] of plan.goals.entries()) {
          if (goal.amount.kind === 'mass') expect(goals[i]!.expectedG).toBeLessThanOrEqual(goal.amount.massG * (1 + 1e-9))
          expect(goals[i]!.p10G).toBeLessThanOrEqual(goals[i]!.medianG)
          expect(goals[i]!.medianG).toBeLessThanOrEqual(goals[i]!.p90G)
        }
        // What a step makes is what its takers get; with a cut goal nothing is left over either.
        for (const step of steps) expect(step.goesTo.reduce((sum, u) => sum + u.massG, 0)).toBeCloseTo(step.expectedG, 6)
      }),
      { numRuns: 60 },
    )
  })

  it('twice the start and twice the masses give twice of everything', () => {
    fc.assert(
      fc.property(plans, plan => {
        const twice = {
          ...plan,
          start: { ...plan.start, massG: plan.start.massG! * 2 },
          goals: plan.goals.map(g => (g.amount.kind === 'mass' ? { ...g, amount: { ...g.amount, massG: g.amount.massG * 2 } } : g)),
          settings: { ...plan.settings, keptBack: plan.settings.keptBack.map(k => ({ ...k, massG: k.massG * 2 })) },
        }
        const [one, two] = [reckoned(library, plan), reckoned(library, twice)]
        one.goals.forEach((g, i) => {
          for (const key of ['expectedG', 'p10G', 'medianG', 'p90G'] as const) expect(two.goals[i]![key]).toBeCloseTo(2 * g[key], 6)
        })
        expect(two.chanceAll).toBe(one.chanceAll)
      }),
      { numRuns: 40 },
    )
  })

  it('more confidence never takes less start, and never gives a smaller chance', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...targets], { minLength: 1, maxLength: 3 }),
        fc.double({ min: 0.3, max: 0.9, noNaN: true }),
        (picked, confidence) => {
          const goals = picked.map(target => benzoinGoal(library, target, { kind: 'mass', massG: 3 }))
          const at = (c: number) =>
            reckoned(library, benzoinPlan(goals, { start: { material: 'benzoin', massG: null }, settings: { confidence: c } }))
          const [less, more] = [at(confidence), at(confidence + 0.08)]
          expect(more.start.massG).toBeGreaterThanOrEqual(less.start.massG)
          expect(less.chanceAll).toBeGreaterThanOrEqual(confidence)
          expect(more.chanceAll).toBeGreaterThanOrEqual(confidence + 0.08)
        },
      ),
      { numRuns: 15 },
    )
  })
})
