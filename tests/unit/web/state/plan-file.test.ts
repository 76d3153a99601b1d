import { expect, it } from 'vitest'
import { bundled } from '../../../../server/library/bundled.ts'
import { libraryOf, noFacts } from '../../../../web/state/facts.ts'
import { fileOfPlan, planOfFile, stateOfPlan } from '../../../../web/state/plan-file.ts'
import { emptyState } from '../../../../web/state/sheet-state.ts'
import { benzoinGoal, benzoinPlan, rest } from '../../../support/benzoin-plans.ts'

it('a plan takes how its routes were looked for to another browser', () => {
  const { library } = bundled()
  const facts = { ...noFacts, library }
  const { choosing } = emptyState(1)
  const state = {
    plan: benzoinPlan([benzoinGoal(library, 'lophine', rest)]),
    choosing: { ...choosing, by: 'hazard' as const, avoid: ['nitric-acid-70'], make: ['benzaldehyde'] },
  }
  const opened = planOfFile(fileOfPlan(state, facts))
  if (!opened.ok) throw new Error(opened.problems.map(p => p.what).join(' '))
  expect(stateOfPlan(opened.value.plan)).toEqual(state)
  expect(libraryOf(JSON.parse(JSON.stringify(fileOfPlan(state, facts))).slice).transformations.has('lophine')).toBe(true)
})
