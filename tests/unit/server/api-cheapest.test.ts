import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { App } from '../../../server/app.ts'
import { demoParts } from '../../../server/library/demo.ts'
import { bundledWorkshop, testApp } from '../../support/app.ts'
import { benzoinGoal, benzoinPlan, mass, rest } from '../../support/benzoin-plans.ts'

let app: App
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())
const post = async (url: string, payload: object) => {
  const reply = await app.inject({ method: 'POST', url: `/api/v1/${url}`, payload })
  return { status: reply.statusCode, body: reply.json() }
}

describe('the cheapest way by the API', () => {
  it('gives routes for each goal, with reasons, and a budget that is too small as no answer', async () => {
    const { library } = await bundledWorkshop()
    const { shelf, packs, settings } = demoParts()
    const goals = [benzoinGoal(library, 'lophine', mass(5)), benzoinGoal(library, 'tetraphenylcyclopentadienone', rest)]
    const plan = { ...benzoinPlan(goals, { shelf, packs }), settings }
    const { status, body } = await post('cheapest', { plan })
    expect(status).toBe(200)
    expect(body.routes.map((r: { target: string }) => r.target)).toEqual(['lophine', 'tetraphenylcyclopentadienone'])
    expect(body.proven).toBe(true)
    expect(body.reasons.length).toBeGreaterThan(0)
    const poor = await post('cheapest', { plan, limits: { budgetMinor: 100 } })
    expect([poor.status, poor.body.problems[0].code]).toEqual([422, 'none-within-limits'])
  })
})

describe('tables by the API', () => {
  it('take the good lines and give every other back whole', async () => {
    const { status, body } = await post('stock/shelf', { name: 'shelf.csv', text: 'material;amount\nethanol;0,5 L\nnothing at all;3 g\n' })
    expect(status).toBe(200)
    expect(body.items).toEqual([{ material: 'ethanol', amount: 0.5, unit: 'L' }])
    expect(body.refused).toMatchObject([{ line: 3, text: 'nothing at all;3 g', problems: [{ code: 'csv-material-unknown' }] }])
    const { packs } = demoParts()
    const read = await post('stock/packs', {
      name: 'p.csv',
      text: 'supplier;material;amount;price\nCorner Shop;ethanol;1 L;x\n',
      before: packs,
    })
    expect([read.body.taken, read.body.packs.packs.length, read.body.refused.length]).toEqual([0, packs.packs.length, 1])
  })

  it('say what is left over could serve', async () => {
    const { body } = await post('stock/left-overs', {
      left: [{ material: 'benzaldehyde', left: { amount: 20, unit: 'mL' } }],
      compounds: ['benzil'],
    })
    expect(body.leftOvers[0].couldServe.length).toBe(3)
    expect(body.leftOvers[0].couldServe[0]).toMatchObject({ downstream: true })
  })
})
