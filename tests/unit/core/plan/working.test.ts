import { describe, expect, it } from 'vitest'
import { evaluate } from '../../../../core/plan/evaluate.ts'
import type { Evaluation } from '../../../../core/plan/evaluation.ts'
import type { Plan } from '../../../../core/plan/plan.ts'
import { type Working, type WorkingKey, workingOf } from '../../../../core/plan/working.ts'
import { openWorkshop } from '../../../../server/library/workshop.ts'
import { benzoinGoal, benzoinPlan, logEntry, mass, rest } from '../../../support/benzoin-plans.ts'

const workshop = await openWorkshop([])
const { library, tables } = workshop
const traits = workshop.traits()
const evaluated = (plan: Plan): Evaluation => {
  const result = evaluate({ library, tables, traits, plan, solver: null })
  if ('stopped' in result) throw new Error('stopped')
  return result
}
const plan = benzoinPlan([
  benzoinGoal(library, 'lophine', mass(5)),
  benzoinGoal(library, '2-3-diphenylquinoxaline', mass(5)),
  benzoinGoal(library, 'tetraphenylcyclopentadienone', rest),
])
const evaluation = evaluated(plan)
const of = (key: WorkingKey): Working => workingOf(library, plan, evaluation, key)!

/** Number at the head of a printed value. */
const number = (text: string): number =>
  Number(
    text
      .replace(/[\u202f\u00a0]/g, ' ')
      .replace(/(\d) (?=\d{3})/g, '$1')
      .replace('\u2212', '-')
      .split(' ')[0],
  )
/** What the rows come to, worked from top to bottom as they are printed; percents as such. */
function worked({ rows }: Working): number {
  return rows.reduce((sum, row) => {
    const n = row.value.includes('%') ? number(row.value) / 100 : number(row.value)
    if (row.sign === '') return n
    if (row.sign === '+') return sum + n
    if (row.sign === '\u2212') return sum - n
    return row.sign === '\u00d7' ? sum * n : sum / n
  }, 0)
}
/** Rows are printed to four figures, yields to a tenth of a percent. */
const printed = 2e-3

describe('the working behind a number', () => {
  it('of a charge is the one drawn in the example sheet', () => {
    const { rows, total, said, seen } = of({ of: 'charge', step: 'benzil-copper-ammonium-nitrate', index: 1 })
    expect(rows.map(r => [r.sign, r.label, r.value])).toEqual([
      ['', 'benzoin in hand', '24.00\u00a0g'],
      ['\u00f7', 'benzoin in the source', '3.720\u00a0g'],
      ['\u00d7', 'ammonium nitrate in the source', '1.900\u00a0g'],
    ])
    expect(total.value).toBe('12.26\u00a0g')
    expect(said[0]).toBe('Scale 6.452.')
    expect(seen).toBe('seen')
  })

  it('comes to the total, for every charge, product, use and goal of the plan', () => {
    let checked = 0
    const hold = (key: WorkingKey): void => {
      const working = of(key)
      if (working.rows.length === 0) return
      const want = number(working.total.value)
      expect(Math.abs(worked(working) / want - 1), `${JSON.stringify(key)} ${worked(working)} ${want}`).toBeLessThan(printed)
      checked++
    }
    for (const step of evaluation.steps) {
      step.charges.forEach((line, index) => {
        if (line.basis !== 'open') hold({ of: 'charge', step: step.transformation, index })
      })
      hold({ of: 'product', step: step.number })
      step.goesTo.forEach((_, index) => {
        hold({ of: 'uses', step: step.transformation, index })
      })
    }
    for (const goal of evaluation.goals) hold({ of: 'goal', target: goal.target })
    hold({ of: 'start' })
    expect(checked).toBeGreaterThan(25)
  })

  it('of an overall yield names the other yield too', () => {
    const working = of({ of: 'overall', target: 'lophine' })
    expect(worked(working)).toBeCloseTo(0.819, 3)
    expect(working.said.join(' ')).toContain('longest linear sequence: 81.9')
  })

  it('of a yield lists what people report, with their sources', () => {
    const withReports = [...library.transformations.values()].filter(t => (t.reports?.length ?? 0) > 0)
    expect(withReports.length).toBe(70)
    const working = of({ of: 'yield', step: 'lophine' })
    expect(working.total.value).toBe('90.0\u00a0%')
    expect(working.sources.length).toBeGreaterThan(0)
  })

  it('of what is to buy adds uses and takes the shelf off', () => {
    const line = evaluation.shopping.find(l => l.material === 'ammonium-nitrate')!
    const working = of({ of: 'buy', material: 'ammonium-nitrate' })
    expect(number(working.total.value)).toBeCloseTo(line.buy.amount!, 1)
    expect(working.rows.at(-1)!.label).toBe('on the shelf')
  })

  it('of a gas is moles times the molar volume', () => {
    const nitric = benzoinPlan([benzoinGoal(library, 'benzil', rest, ['benzil-nitric-acid'])])
    const result = evaluated(nitric)
    const { step, compound, litres } = result.hazards.gas[0]!
    const working = workingOf(library, nitric, result, { of: 'gas', step, compound })!
    expect(worked(working) / 1000).toBeCloseTo(litres, 1)
  })

  it('of a logged product is the weighing', () => {
    const logged = { ...plan, log: [logEntry({ weighedG: 20, dampPercent: 10 })] }
    const result = evaluated(logged)
    const working = workingOf(library, logged, result, { of: 'product', step: '1' })!
    expect(working.rows).toEqual([{ sign: '', label: 'isolated, dry and pure, as logged', value: '18.00\u00a0g', own: true }])
  })

  it('is nothing for what the plan does not hold', () => {
    expect(workingOf(library, plan, evaluation, { of: 'goal', target: 'vanillin' })).toBeNull()
    expect(workingOf(library, plan, evaluation, { of: 'charge', step: '9', index: 0 })).toBeNull()
    expect(workingOf(library, plan, evaluation, { of: 'charge', step: '1', index: 99 })).toBeNull()
    expect(workingOf(library, plan, evaluation, { of: 'buy', material: 'vanillin' })).toBeNull()
  })
})

describe('the working of the mass metrics', () => {
  const metrics = ['atom-economy', 'reaction-mass-efficiency', 'e-factor', 'e-factor-without-water', 'mass-intensity'] as const
  it.each(metrics)('%s comes to the figure, for each step and the whole plan', which => {
    for (const step of [null, ...evaluation.steps.map(s => s.transformation)]) {
      const working = of({ of: 'metric', which, step })
      const shown = number(working.total.value) / (working.total.value.includes('%') ? 100 : 1)
      if (which === 'atom-economy') {
        if (step === null) continue
        // Product over the sum of the reactants: rows below the fraction bar are added before they divide.
        const [product, ...reactants] = working.rows.map(row => number(row.value))
        const economy = product! / reactants.reduce((sum, mass) => sum + mass, 0)
        expect(Math.abs(economy - shown)).toBeLessThan(printed)
      } else expect(Math.abs(worked(working) / shown - 1), `${which} of ${step}`).toBeLessThan(printed)
      expect(working.sources).toHaveLength(1)
    }
  })
  it('of the EcoScale is 100 less every penalty; a route has none', () => {
    for (const { transformation } of evaluation.steps) {
      const working = of({ of: 'metric', which: 'eco-scale', step: transformation })
      const known = { ...working, rows: working.rows.filter(row => row.value !== 'unknown') }
      expect(working.total.value).toMatch(working.rows.length > known.rows.length ? /^at most / : /^\d/)
      expect(Math.abs(worked(known) - number(working.total.value.replace('at most ', '')))).toBeLessThan(0.3)
      expect(working.sources[0]!.citation).toMatch(/Beilstein/)
      expect(working.sources[0]!.checked).toBe(false)
    }
    expect(workingOf(library, plan, evaluation, { of: 'metric', which: 'eco-scale', step: null })).toBeNull()
  })
  it('stays that of the plan as it was once a run is logged', () => {
    const logged = { ...plan, log: [logEntry({ weighedG: 12 })] }
    const after = evaluated(logged)
    const before = of({ of: 'metric', which: 'e-factor', step: '1' })
    expect(workingOf(library, logged, after, { of: 'metric', which: 'e-factor', step: '1' })).toEqual(before)
  })
})

describe('the evaluation', () => {
  it('holds what other programs rely on', () => {
    expect(Object.keys(evaluation).sort()).toEqual(
      [
        'basket',
        'chanceAll',
        'coProducts',
        'days',
        'goals',
        'hazards',
        'longestLinearYield',
        'metrics',
        'notes',
        'overallYieldOnStart',
        'shopping',
        'start',
        'startNeeded',
        'steps',
      ].sort(),
    )
    expect(JSON.parse(JSON.stringify(evaluation))).toEqual(evaluation)
  })

  it('ends, with nothing reckoned, where a stop row meets the plan in any role', () => {
    const stop = [...traits].find(([, t]) => t.regulated.some(r => r.action === 'stop'))
    const poisoned = new Map(traits)
    const row = { ...[...traits.values()].flatMap(t => t.regulated)[0]!, action: 'stop' as const }
    poisoned.set('acetic-acid', { ...traits.get('acetic-acid')!, regulated: [row] })
    const result = evaluate({ library, tables, traits: poisoned, plan, solver: null })
    expect(result).toEqual({ stopped: [expect.objectContaining({ material: 'acetic-acid', action: 'stop' })] })
    // The bundled library itself holds nothing that stops.
    expect(stop).toBeUndefined()
  })

  it('moves goals, shopping and dates with a poor run', () => {
    const logged = { ...plan, log: [logEntry({ weighedG: 12 })] }
    const after = evaluated(logged)
    expect(after.goals[2]!.expectedG).toBeLessThan(evaluation.goals[2]!.expectedG / 2)
    const need = (e: Evaluation, id: string) => e.shopping.find(l => l.material === id)?.need.amount ?? 0
    expect(need(after, '1-3-diphenylacetone')).toBeLessThan(need(evaluation, '1-3-diphenylacetone'))
    expect(need(after, 'ammonium-nitrate')).toBe(0)
    expect(after.days.booked.some(b => b.step === '1' || b.step === 'benzil-copper-ammonium-nitrate')).toBe(false)
  })
})
