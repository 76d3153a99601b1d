import { describe, expect, it } from 'vitest'
import { confidentAmounts, glanced } from '../../../../core/plan/confidence.ts'
import { drawnOf, goalsDrawn } from '../../../../core/plan/drawn.ts'
import { checkedPlan } from '../../../../core/plan/goals.ts'
import { reckoned } from '../../../../core/plan/reckoned.ts'
import { startNeeded } from '../../../../core/plan/start-needed.ts'
import { DrawArrays } from '../../../../core/route/draw-arrays.ts'
import { percentiles } from '../../../../core/yields/percentiles.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { benzoinGoal, benzoinPlan, logEntry, mass, rest, share } from '../../../support/benzoin-plans.ts'

const { library } = bundled()
const goal = (target: string, amount = rest) => benzoinGoal(library, target, amount)
const correlation = (a: Float64Array, b: Float64Array): number => {
  const mean = (x: Float64Array) => x.reduce((s, v) => s + v, 0) / x.length
  const [ma, mb] = [mean(a), mean(b)]
  let [ab, aa, bb] = [0, 0, 0]
  for (let k = 0; k < a.length; k++) {
    ab += (a[k]! - ma) * (b[k]! - mb)
    aa += (a[k]! - ma) ** 2
    bb += (b[k]! - mb) ** 2
  }
  return ab / Math.sqrt(aa * bb)
}

describe('the spread of a plan', () => {
  it('is the same, digit for digit, for the same plan and seed, and another for another seed', () => {
    const plan = benzoinPlan([goal('hexaphenylbenzene')])
    const once = reckoned(library, plan).goals[0]!
    expect(reckoned(library, plan).goals[0]).toEqual(once)
    const other = reckoned(library, { ...plan, seed: 2 }).goals[0]!
    expect(other.medianG).not.toBe(once.medianG)
    // Seeds differ by the noise of 10,000 draws only.
    expect(Math.abs(other.medianG / once.medianG - 1)).toBeLessThan(0.01)
  })

  it('of one step has the stated range for its percentiles', () => {
    const { steps } = reckoned(library, benzoinPlan([goal('benzil')]))
    const { theoreticalG, yieldFraction, p10G, medianG, p90G } = steps[0]!
    // The score is a sum of two stratified streams: near its percentiles, to the noise of 10,000 draws.
    expect(p10G / theoreticalG!).toBeCloseTo(yieldFraction.low, 2)
    expect(medianG / theoreticalG!).toBeCloseTo(yieldFraction.typical, 2)
    expect(p90G / theoreticalG!).toBeCloseTo(yieldFraction.high, 2)
  })

  it('two branches from one benzil are not independent', () => {
    // Their own steps almost certain, so that what they share shows.
    const certain = { low: 90, typical: 90, high: 90 }
    const settings = {
      yields: { 'tetraphenylcyclopentadienone-koh': certain, 'benzil-dihydrazone': certain, 'diphenylacetylene-dihydrazone': certain },
    }
    const { amounts } = reckoned(library, benzoinPlan([goal('hexaphenylbenzene')], { settings }))
    const drawn = drawnOf(amounts, 1).productG
    const dienone = drawn.get('tetraphenylcyclopentadienone-koh')!
    const acetylene = drawn.get('diphenylacetylene-dihydrazone')!
    const benzil = drawn.get('benzil-copper-ammonium-nitrate')!
    expect(correlation(dienone, acetylene)).toBeGreaterThan(0.5)
    expect(correlation(dienone, benzil)).toBeGreaterThan(0.7)
    // The join runs on the scarcer of the two in each draw, so its median lies below the figure at typical yields.
    const { expectedG, medianG } = reckoned(library, benzoinPlan([goal('hexaphenylbenzene')])).goals[0]!
    expect(medianG).toBeLessThan(expectedG)
  })

  it('of five batches is narrower than of one, but not by the root of five: the bench is the same', () => {
    const width = (batches: number): number => {
      const plan = benzoinPlan([goal('benzil')], { settings: { batches: { 'benzil-copper-ammonium-nitrate': batches } } })
      const { p10G, p90G } = reckoned(library, plan).steps[0]!
      return p90G - p10G
    }
    const ratio = width(5) / width(1)
    // Variance 1/2 + 1/10 in place of 1: 0.775 on the score.
    expect(ratio).toBeGreaterThan(0.7)
    expect(ratio).toBeLessThan(0.85)
  })

  it('never gives a mass goal more of a shared intermediate than was planned for it', () => {
    const { amounts, steps } = reckoned(library, benzoinPlan([goal('lophine', mass(5)), goal('tetraphenylcyclopentadienone')]))
    const drawn = drawnOf(amounts, 1)
    const most = steps.find(s => s.transformation === 'lophine')!.theoreticalG!
    expect(Math.max(...drawn.goalG[0]!)).toBeLessThanOrEqual(most * (1 + 1e-12))
    expect(percentiles(drawn.goalG[1]!).p90 / percentiles(drawn.goalG[1]!).p10).toBeGreaterThan(1.1)
  })

  it('conserves the intermediate: what branches take and what is left is what was made', () => {
    const { amounts } = reckoned(library, benzoinPlan([goal('benzil', mass(6)), goal('lophine')]))
    const drawn = drawnOf(amounts, 1)
    const benzil = drawn.productG.get('benzil-copper-ammonium-nitrate')!
    const lophine = drawn.productG.get('lophine')!
    const yields = drawnOf(reckoned(library, benzoinPlan([goal('lophine')])).amounts, 1)
    for (let k = 0; k < 10_000; k += 97) {
      const ratio = lophine[k]! / (benzil[k]! - drawn.goalG[0]![k]!)
      expect(ratio).toBeCloseTo(yields.productG.get('lophine')![k]! / yields.productG.get('benzil-copper-ammonium-nitrate')![k]!, 9)
    }
  })
})

describe('whose hand', () => {
  it('tells both, each the other of the other', () => {
    const practised = reckoned(library, benzoinPlan([goal('lophine')]))
    const firstTime = reckoned(library, benzoinPlan([goal('lophine')], { settings: { hand: 'first-time' } }))
    expect(practised.goals[0]!.otherHandG).toBeCloseTo(firstTime.goals[0]!.expectedG, 9)
    expect(firstTime.goals[0]!.otherHandG).toBeCloseTo(practised.goals[0]!.expectedG, 9)
    expect(firstTime.goals[0]!.expectedG).toBeLessThan(practised.goals[0]!.expectedG)
  })
})

describe('a confidence', () => {
  const goals = [goal('lophine', mass(5)), goal('2-3-diphenylquinoxaline', mass(5))]
  const free = { start: { material: 'benzoin', massG: null } }

  it('makes the start grow until all mass goals come out together as often as asked', () => {
    const plain = reckoned(library, benzoinPlan(goals, free))
    const sure = reckoned(library, benzoinPlan(goals, { ...free, settings: { confidence: 0.9 } }))
    expect(plain.chanceAll).toBeLessThan(0.3)
    expect(sure.chanceAll).toBe(0.9)
    expect(sure.start.massG / plain.start.massG).toBeCloseTo(sure.factor, 9)
    // The smallest such factor: a hair less and the chance falls below.
    const less = goals.map(g => ({ ...g, amount: mass(5 * sure.factor * 0.999) }))
    const short = drawnOf(reckoned(library, benzoinPlan(less, free)).amounts, 1)
    let reached = 0
    for (let k = 0; k < 10_000; k++) if (short.goalG.every(g => g[k]! >= 5)) reached++
    expect(reached / 10_000).toBeLessThan(0.9)
    // Each goal alone is reached at least as often as both together.
    for (const g of sure.goals) expect(g.chance).toBeGreaterThanOrEqual(0.9)
  })

  it('divides as at typical yields', () => {
    const sure = reckoned(library, benzoinPlan(goals, { ...free, settings: { confidence: 0.95 } }))
    expect(sure.goals[0]!.expectedG).toBeCloseTo(sure.goals[1]!.expectedG, 9)
  })

  it('takes from the rest where the start is given', () => {
    const three = [...goals, goal('tetraphenylcyclopentadienone')]
    const plain = reckoned(library, benzoinPlan(three))
    const sure = reckoned(library, benzoinPlan(three, { settings: { confidence: 0.9 } }))
    expect(sure.chanceAll).toBeGreaterThanOrEqual(0.9)
    expect(sure.start.massG).toBeCloseTo(plain.start.massG, 9)
    expect(sure.goals[2]!.expectedG).toBeLessThan(plain.goals[2]!.expectedG)
    expect(sure.goals[2]!.expectedG).toBeGreaterThan(0)
  })

  it('says what the start allows where that is less', () => {
    const tight = { start: { material: 'benzoin', massG: 11 }, settings: { confidence: 0.9 } }
    const result = reckoned(library, benzoinPlan(goals, tight))
    expect(result.chanceAll).toBeLessThan(0.9)
    expect(result.notes.map(n => n.code)).toEqual(['confidence-out-of-reach'])
    expect(result.start.massG).toBeCloseTo(11, 3)
  })
})

describe('a factor that is only looked at', () => {
  // Shares, kept-back intermediates, fixed vessels and logged runs: each takes another way through the search.
  const vessels = [{ kind: 'flask' as const, volumeMl: 250, count: 1 }]
  const three = [goal('lophine', mass(2)), goal('2-3-diphenylquinoxaline', share(0.3)), goal('hexaphenylbenzene', mass(1))]
  it.each([
    ['masses alone', [goal('lophine', mass(9)), goal('hexaphenylbenzene', mass(6))], { start: { material: 'benzoin', massG: null } }],
    ['a share between', three, {}],
    ['something kept back', three, { settings: { keptBack: [{ compound: 'benzil', massG: 1 }], vessels } }],
    ['a logged run', [...three, goal('tetraphenylcyclopentadienone')], { log: [logEntry({ weighedG: 17 })] }],
  ])('stands with all of its charges and draws: %s', (_, goals, own) => {
    const settings = { vessels, confidence: 0.9, ...('settings' in own ? own.settings : {}) }
    const plan = benzoinPlan(goals, { ...own, settings })
    const checked = checkedPlan(library, plan)
    if (!checked.ok) throw new Error(checked.problems.map(p => p.what).join(' '))
    const input = { library, plan, merged: checked.value, settings: plan.settings }
    const { sure: seen } = glanced(input, 0.9)
    const whole = confidentAmounts(input, 0.9)
    expect(seen.chanceAll).toBe(whole.chanceAll)
    expect(seen.amounts.division).toEqual(whole.amounts.division)
    expect(seen.amounts.steps.map(s => s.batches)).toEqual(whole.amounts.steps.map(s => s.batches))
    const masses = plan.goals.flatMap((g, i) => (g.amount.kind === 'mass' ? [i] : []))
    const apart = goalsDrawn(whole.amounts, plan.seed, masses, new DrawArrays())
    for (const i of masses) expect(apart[i]).toEqual(whole.drawn.goalG[i])
  })
})

describe('the start needed', () => {
  it('is more for more confidence, with the figure at typical yields and its chance beside it', () => {
    const plan = benzoinPlan([goal('lophine', mass(5)), goal('tetraphenylcyclopentadienone')])
    const { startG, typicalG, typicalChance } = startNeeded(library, plan, 0.9)!
    // 4.3721 g by hand from 0.91 and 0.90; half of the benches get more, half less.
    expect(typicalG).toBeCloseTo(4.3721, 4)
    expect(typicalChance).toBeCloseTo(0.5, 1)
    expect(startG).toBeGreaterThan(typicalG)
    const sure = reckoned(library, benzoinPlan([goal('lophine', mass(5))], { start: { material: 'benzoin', massG: startG } }))
    // Planned for less than it has, the plan leaves the surplus; planned for all of it, nine draws in ten reach 5 g.
    expect(sure.start.leftG).toBeGreaterThan(0)
    const all = reckoned(library, benzoinPlan([goal('lophine')], { start: { material: 'benzoin', massG: startG } }))
    expect(all.goals[0]!.p10G).toBeCloseTo(5, 2)
  })
})

describe('rounding', () => {
  it('leaves nothing for a share of what a mass goal has used up, and so caps nothing', () => {
    const short = { start: { material: 'benzoin', massG: 2.72442828854801 } }
    const alone = reckoned(library, benzoinPlan([goal('benzil', mass(6.2))], short))
    const beside = reckoned(
      library,
      benzoinPlan([benzoinGoal(library, 'hexaphenylbenzene', share(0.01)), goal('benzil', mass(6.2))], short),
    )
    expect(beside.goals[0]!.expectedG).toBe(0)
    expect(beside.goals[1]!.p90G).toBeCloseTo(alone.goals[0]!.p90G, 9)
  })
})
