import { describe, expect, it } from 'vitest'
import { comparedRuns } from '../../../../core/logbook/compare.ts'
import { logCsv } from '../../../../core/logbook/log-csv.ts'
import { wayRow, waysOn } from '../../../../core/logbook/replan.ts'
import { type RunNote, withRun } from '../../../../core/logbook/run.ts'
import type { Plan } from '../../../../core/plan/plan.ts'
import { reckoned } from '../../../../core/plan/reckoned.ts'
import { workingOrder } from '../../../../core/route/working-order.ts'
import { openWorkshop } from '../../../../server/library/workshop.ts'
import { benzoinGoal, benzoinPlan, logEntry, mass, rest } from '../../../support/benzoin-plans.ts'

const workshop = await openWorkshop([])
const { library, tables } = workshop
const traits = workshop.traits()
const copper = 'benzil-copper-ammonium-nitrate'
const plan = benzoinPlan([benzoinGoal(library, 'lophine', mass(5)), benzoinGoal(library, 'tetraphenylcyclopentadienone', rest)])
const run = (to: Plan, note: RunNote): Plan => {
  const next = withRun(library, to, note)
  if (!next.ok) throw new Error(next.problems.map(p => p.what).join())
  return next.value
}
const codes = (note: Partial<RunNote>): string[] => {
  const next = withRun(library, plan, { step: copper, weighedG: 20, ...note })
  return next.ok ? [] : next.problems.map(p => p.code)
}

describe('writing down a run', () => {
  it('appends, with usual values for what was left out', () => {
    const next = run(plan, { step: copper, weighedG: 20 })
    expect(next.log).toEqual([logEntry({ weighedG: 20, chargedG: 24, chargedAs: 'planned' })])
    expect(plan.log).toEqual([])
  })
  it('keeps what a correction replaces', () => {
    const first = run(plan, { step: copper, weighedG: 20 })
    const second = run(first, { step: copper, weighedG: 18, replaces: 'run-1', note: 'dried' })
    expect(second.log.map(e => [e.id, e.weighedG, e.batch, e.replaces])).toEqual([
      ['run-1', 20, 1, null],
      ['run-2', 18, 1, 'run-1'],
    ])
    expect(reckoned(library, second).steps[0]!.expectedG).toBe(18)
    const again = withRun(library, second, { step: copper, weighedG: 17, replaces: 'run-1' })
    expect(again.ok ? [] : again.problems.map(p => p.code)).toEqual(['log-replaces'])
  })
  it('counts batches up', () => {
    const next = run(run(plan, { step: copper, weighedG: 10 }), { step: copper, weighedG: 9 })
    expect(next.log.map(e => e.batch)).toEqual([1, 2])
  })
  it.each([
    [{ step: 'hexaphenylbenzene' }, ['log-step-unknown']],
    [{ weighedG: -1 }, ['log-number']],
    [{ weighedG: Number.NaN }, ['log-number']],
    [{ dampPercent: 100 }, ['log-number']],
    [{ purity: 1.2 }, ['log-number']],
    [{ chargedG: 0 }, ['log-number']],
    [{ batch: 0 }, ['log-number']],
    [{ batch: 1.5 }, ['log-number']],
    [{ date: '3 Dec' }, ['log-date']],
    [{ replaces: 'run-9' }, ['log-replaces']],
    [{ weighedG: -1, dampPercent: -3, date: 'x' }, ['log-number', 'log-number', 'log-date']],
  ] as const)('refuses %j with all its reasons', (note, expected) => {
    expect(codes(note)).toEqual(expected)
  })
})

describe('a run beside plan and theory', () => {
  const compared = (note: Omit<RunNote, 'step'>) => comparedRuns(library, run(plan, { step: copper, ...note }))[0]!
  it('is dry and pure mass over theory', () => {
    // 24 g of benzoin can give 23.772 g of benzil.
    const found = compared({ weighedG: 20, dampPercent: 10, purity: 0.95 })
    expect(found.isolatedG).toBeCloseTo(17.1, 9)
    expect(found.theoryG).toBeCloseTo(23.772, 3)
    expect(found.plannedG).toBeCloseTo(21.633, 3)
    expect(found.yieldFraction).toBeCloseTo(17.1 / 23.772, 4)
    expect(found.verdict).toBe('below')
  })
  it.each([
    [21.6, false, 'as-planned'],
    [23.5, false, 'above'],
    [25, false, 'above-theory'],
    [5, true, 'failed'],
  ] as const)('%d g, failed %s: %s', (weighedG, failed, verdict) => {
    expect(compared({ weighedG, failed }).verdict).toBe(verdict)
  })
  it('is reckoned on what was really charged', () => {
    expect(compared({ weighedG: 9, chargedG: 10 }).yieldFraction).toBeCloseTo(9 / 9.905, 4)
  })
})

describe('what a run changes', () => {
  const yieldAfter = (note: Omit<RunNote, 'step'>) =>
    reckoned(library, run(plan, { step: copper, ...note })).steps[0]!.yieldFraction.typical
  const before = reckoned(library, plan).steps[0]!.yieldFraction.typical
  it('moves the belief, but not where it failed or weighed more than theory', () => {
    expect(yieldAfter({ weighedG: 12 })).toBeLessThan(before)
    expect(yieldAfter({ weighedG: 23 })).toBeGreaterThan(before)
    expect(yieldAfter({ weighedG: 12, failed: true })).toBe(before)
    expect(yieldAfter({ weighedG: 30 })).toBe(before)
  })
  it('puts the weighing in place of the estimate downstream, mass goals served first', () => {
    const after = reckoned(library, run(plan, { step: copper, weighedG: 12 }))
    expect(after.goals[0]!.expectedG).toBeCloseTo(5, 9)
    expect(after.steps.find(s => s.transformation === 'tetraphenylcyclopentadienone-koh')!.limiting.massG).toBeCloseTo(12 - 3.9408, 3)
    expect(after.steps[0]).toMatchObject({
      expectedG: 12,
      p10G: 12,
      medianG: 12,
      p90G: 12,
      done: { isolatedG: 12, leftToRun: 0, ownRuns: 1 },
    })
    expect(after.toRun.map(s => s.transformation)).not.toContain(copper)
  })
  it('leaves the other batches to run, with the updated belief', () => {
    const two = { ...plan, settings: { ...plan.settings, batches: { [copper]: 2 } } }
    const [step] = reckoned(library, run(two, { step: copper, weighedG: 6 })).steps
    expect(step!.done).toEqual({ isolatedG: 6, leftToRun: 1, ownRuns: 1 })
    expect(step!.charges[0]!.massG).toBeCloseTo(12, 9)
    expect(step!.expectedG).toBeGreaterThan(6 + 9)
    expect(step!.expectedG).toBeLessThan(6 + 10.9)
  })
})

describe('what a plan states and does not use', () => {
  const stated = (own: Partial<Plan>) => evaluateNotes({ ...plan, ...own })
  const evaluateNotes = (of: Plan) => reckoned(library, of).notes.filter(n => n.code !== 'not-to-be-bought')
  it('is told, each with its place and a cure; nothing is passed over', () => {
    const entry = { ...run(plan, { step: copper, weighedG: 20 }).log[0]!, step: 'benzil-coper-ammonium-nitrate' }
    const low = { low: 10, typical: 20, high: 30 }
    const notes = stated({
      log: [entry],
      settings: { ...plan.settings, yields: { lofine: low }, batches: { 'no-such-step': 2 } },
      topUps: [{ compound: 'benzil', massG: 3 }],
      repeats: [{ step: copper, limitingG: 5 }],
    })
    expect(notes.map(n => n.code)).toEqual([
      'log-not-in-plan',
      'settings-step-unknown',
      'settings-step-unknown',
      'top-up-unused',
      'repeat-unused',
    ])
    expect(notes[0]!.cure).toContain(`Did you mean "${copper}"`)
    expect(notes.map(n => n.where[0])).toEqual(['log', 'settings', 'settings', 'topUps', 'repeats'])
    // None of it moves a figure.
    expect(reckoned(library, { ...plan, log: [entry] }).goals).toEqual(reckoned(library, plan).goals)
  })
  it('is none where the settings serve another plan too, or a top-up follows its run', () => {
    const low = { low: 10, typical: 20, high: 30 }
    expect(stated({ settings: { ...plan.settings, yields: { 'nylon-6-10-interfacial': low } } })).toEqual([])
    expect(stated({ log: run(plan, { step: copper, weighedG: 12 }).log, topUps: [{ compound: 'benzil', massG: 3 }] })).toEqual([])
  })
})

describe('four ways on', () => {
  const poor = run(plan, { step: copper, weighedG: 12 })
  const other = { start: 'benzil', target: 'lophine', steps: workingOrder(library, 'benzil', ['lophine']) }
  const ways = (given: Plan, routes = (_s: string, _t: string) => [other]) =>
    waysOn({ library, tables, traits, plan: given, solver: null, routes })

  it('need a log', () => {
    expect(ways(plan).map(w => w.reason)).toEqual(new Array(4).fill('Nothing has been logged yet.'))
  })
  it('stand side by side, each a whole plan or a reason', () => {
    const [down, up, again, route] = ways(poor)
    expect([down, up, again, route].map(w => w!.way)).toEqual(['scale-down', 'top-up', 'repeat', 'another-route'])
    const planned = reckoned(library, plan).goals[1]!.expectedG
    expect(down!.evaluation!.goals[1]!.expectedG).toBeLessThan(planned / 1.9)
    // Topped up with what is missing, the plan is as before.
    expect(up!.added).toMatchObject({ compound: 'benzil', medianG: expect.closeTo(21.6326 - 12, 3) })
    expect(up!.evaluation!.goals[1]!.expectedG).toBeCloseTo(planned, 6)
    expect(up!.evaluation!.shopping.find(l => l.material === 'benzil')!.need.amount).toBeCloseTo((21.6326 - 12) * 1.1, 2)
    // Repeated for what is missing, at the updated belief, and so from more than typical yields would ask.
    expect(again!.added!.compound).toBe('benzoin')
    expect(again!.added!.medianG).toBeGreaterThan(((21.6326 - 12) / 21.6326) * 24)
    expect(again!.added!.p10G).toBeGreaterThan(again!.added!.medianG)
    expect(again!.evaluation!.goals[1]!.expectedG).toBeCloseTo(planned, 6)
    expect(again!.evaluation!.start.haveG).toBeCloseTo(24 + again!.added!.medianG, 6)
    expect(route!.reason).toContain('no other way')
  })
  it('need no top-up and no repeat after a good run', () => {
    const [down, up, again] = ways(run(plan, { step: copper, weighedG: 22 }))
    expect([down!.reason, up!.plan, again!.plan]).toEqual([null, null, null])
  })
  it('do not buy what is not for sale', () => {
    const goal = benzoinGoal(library, 'hexaphenylbenzene', rest)
    const logged = run(benzoinPlan([goal]), { step: 'benzil-dihydrazone', weighedG: 1 })
    expect(ways(logged, () => [])[1]!.reason).toContain('cannot be bought')
  })
  it('take another route where the search has one, from what is in hand', () => {
    const bought = benzoinGoal(library, 'hexaphenylbenzene', rest, [copper, 'tetraphenylcyclopentadienone-koh', 'hexaphenylbenzene'])
    const target = 'hexaphenylbenzene'
    const ids = benzoinGoal(library, target, rest)
      .route.steps.slice(1)
      .map(s => s.transformation)
    const made = { start: 'benzil', target, steps: workingOrder(library, 'benzil', ids) }
    const way = ways(run(benzoinPlan([bought]), { step: copper, weighedG: 12 }), () => [made])[3]!
    expect(way.reason).toBeNull()
    expect(way.plan!.start).toEqual({ material: 'benzil', massG: 12 })
    // The run that led here stays in the log of the new plan, which says that it has no such step.
    expect(way.plan!.log.map(e => [e.step, e.weighedG])).toEqual([[copper, 12]])
    expect(way.evaluation!.notes.map(n => n.code)).toEqual(['log-not-in-plan'])
    const [old] = comparedRuns(library, way.plan!)
    expect(old).toMatchObject({ verdict: 'not-in-plan', isolatedG: 12, plannedG: null })
    expect([old!.chargedG, old!.yieldFraction]).toEqual([expect.closeTo(24, 9), expect.closeTo(12 / 23.772, 4)])
    expect(logCsv(library, way.plan!)).toMatch(/\r\nrun-1,[^\r]*,benzil,1,24,planned,12,/)
    expect(ways(way.plan!, () => []).map(w => w.reason)).toEqual(new Array(4).fill('No step of this plan has been logged yet.'))
    // By hand: 11.147 g came of 21.6326 g of benzil.
    expect(way.evaluation!.goals[0]!.expectedG).toBeCloseTo((11.147 / 21.6326) * 12, 2)
  })
  it('take none where no route leads on', () => {
    expect(ways(poor, () => [])[3]!.reason).toContain('No route leads from benzil')
  })
  it('read as rows', () => {
    const rows = ways(poor).map(wayRow)
    expect(rows.map(r => r.goals.length)).toEqual([2, 2, 2, 0])
    expect(rows[3]!.reason).not.toBeNull()
  })
})
