import { expect, it } from 'vitest'
import type { Plan } from '../../../../core/plan/plan.ts'
import { massText, numberText } from '../../../../core/quantity/print.ts'
import { answersOf } from '../../../../core/report/answers.ts'
import { planText } from '../../../../core/report/text.ts'
import { packHtml } from '../../../../server/print/pack.ts'
import { reported } from './demo-plans.ts'

const of = (massG: number | null) => (plan: Plan) => ({
  ...plan,
  start: { ...plan.start, massG },
  goals: massG === null ? plan.goals.filter(goal => goal.amount.kind === 'mass') : plan.goals,
})
const short = await reported('Benzoin downstream', { with: of(6), solved: false })
// Reckoned the other way, from the masses wanted to the start: what the heading must name as needed.
const backwards = await reported('Benzoin downstream', { with: of(null), solved: false })
const needed = `${massText(backwards.evaluation.start.massG)} of benzoin needed`

it('says in the heading that the start does not suffice, for what it does, and how much would', () => {
  const { library, plan, evaluation } = short
  const told = answersOf(library, plan, evaluation)[3]!.clauses.join(' ')
  expect(told).toMatch(/^Enough for lophine only;/)
  expect(told).toContain(needed)
  expect(told).toMatch(/\d\.\d\d\u00a0g of the \d\.\d\d\u00a0g 2,3-diphenylquinoxaline/)
  expect(told).not.toMatch(/tetraphenyl|0\.00/)
})

it('says it on top of the first page and in the text, with the goal to cut and what the start allows', () => {
  const { library, plan, evaluation, drawings } = short
  const page = packHtml({ library, plan, evaluation, drawings, today: '2026-12-01' })
    .split('<section class="leaf')[1]!
    .replace(/<svg[\s\S]*$/, '')
    .replace(/<[^>]+>/g, '')
  const text = planText(library, plan, evaluation)
  const flat = (of: string) => of.replace(/\s+/g, ' ').replaceAll('\u00ad', '')
  for (const read of [flat(page), flat(text)]) {
    expect(read).toContain('Enough for lophine only;')
    expect(read).toContain(flat(needed))
    expect(read).toContain(`${numberText(backwards.evaluation.start.massG - 6)} g more of it would be needed.`)
    expect(read).toMatch(/Lower this goal to \d\.\d\d g/)
  }
  expect(flat(page)).not.toMatch(/becomes[^.]*tetraphenylcyclopentadienone/)
})

it('says nothing of the kind where the start suffices', async () => {
  const { library, plan, evaluation } = await reported('Benzoin downstream', { solved: false })
  expect(answersOf(library, plan, evaluation)[3]!.clauses.join(' ')).not.toMatch(/enough|needed/i)
})
