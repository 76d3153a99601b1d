import { expect, it } from 'vitest'
import { planFileName, planTitle } from '../../../../web/state/plan-title.ts'

it('a plan is named by its start and its day, and its files by its name', () => {
  const title = planTitle('benzoin', '2026-12-03')
  expect(title.replace(/\u00a0/g, ' ')).toBe('Benzoin downstream, 3 Dec 2026')
  expect(planFileName(title, 'json')).toBe('benzoin-downstream-3-dec-2026.json')
  expect(planFileName('Äther / 2: "x"', 'csv')).toBe('ather-2-x.csv')
  expect(planFileName('水', 'txt')).toBe('waybench-plan.txt')
})
