import { describe, expect, it } from 'vitest'
import { answersOf, costText, hurtAnswer } from '../../../../core/report/answers.ts'
import { dateAndTime, longDate, shortDate } from '../../../../core/report/dates.ts'
import { capital, counted, listed, sentence } from '../../../../core/report/words.ts'
import { allReported, reported } from './demo-plans.ts'

const plans = await allReported()

describe.each(plans)('the seven answers of $title', ({ library, plan, evaluation }) => {
  const answers = answersOf(library, plan, evaluation, { compounds: 12, steps: 3 })

  it('are seven, numbered, none empty', () => {
    expect(answers.map(one => one.no)).toEqual([1, 2, 3, 4, 5, 6, 7])
    expect(answers.every(one => one.clauses.join('').length > 3)).toBe(true)
  })

  it('tell every goal with its median and its range', () => {
    const told = answers[3]!.clauses.join(' ')
    for (const goal of evaluation.goals) expect(told).toContain(library.materials.get(goal.target)!.name)
    expect(told.match(/\d–\d/g)?.length).toBe(evaluation.goals.length)
  })

  it('never tell a total without what it lacks', () => {
    const told = answers[4]!.clauses.join(' ')
    const { priceUnknown, amountUnknown } = evaluation.basket!
    expect(/unknown/.test(told)).toBe(priceUnknown.length > 0)
    expect(/left open/.test(told)).toBe(amountUnknown.length > 0)
  })

  it('never call it harmless while something is unknown', () => {
    const told = answers[5]!.clauses.join(' ')
    if (evaluation.hazards.unknown.length > 0) expect(told).toContain('without hazard data')
    else expect(told).not.toContain('without hazard data')
  })
})

describe('the answer to what can hurt', () => {
  const { hazards } = plans[0]!.evaluation
  const nameOf = (id: string): string => id
  const only = (wanted: string) => ({
    ...hazards,
    materials: hazards.materials.filter(one => one.class === wanted),
    unknown: wanted === 'unknown' ? hazards.unknown : [],
  })

  it('is the count alone where nothing is known', () => {
    expect(hurtAnswer(only('unknown'), nameOf)).toEqual([capital(`${counted(hazards.unknown.length, 'material')} without hazard data`)])
  })

  it('says "none assigned" only with a source', () => {
    expect(hurtAnswer(only('none'), nameOf).join(' ')).toContain('with a source')
    expect(hurtAnswer(only('warning'), nameOf)).toEqual(['Nothing above a warning'])
  })
})

describe('the answer to what is needed', () => {
  it('never shows a cost of nothing beside a price that nobody knows', async () => {
    const { evaluation } = await reported('Benzoin downstream', { with: plan => ({ ...plan, packs: null }) })
    expect(evaluation.basket!.priceUnknown.length).toBeGreaterThan(1)
    expect(costText(evaluation)).toMatch(/price/)
    expect(costText(evaluation)).not.toMatch(/nothing to (pay|buy)|0\.00/i)
  })
})

describe('dates', () => {
  // Against the platform's own calendar, in UTC.
  it('carry the right day of the week', () => {
    const names = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat']
    for (let day = 0; day < 1500; day += 37) {
      const at = new Date(Date.UTC(2026, 0, 1 + day))
      const iso = at.toISOString().slice(0, 10)
      expect(shortDate(iso, true).slice(0, 3)).toBe(names[at.getUTCDay()])
      expect(longDate(iso)).toContain(String(at.getUTCFullYear()))
    }
  })

  it('leave what is no date as it stands', () => {
    expect(shortDate('2026-02-30')).toBe('2026-02-30')
    expect(dateAndTime('2026-12-01T18:30')).toBe('Tue\u00a01\u00a0Dec, 18:30')
  })
})

describe('words', () => {
  it('keep locants small and end sentences once', () => {
    expect(capital('o-phenylenediamine')).toBe('o-Phenylenediamine')
    expect(sentence('warms and fumes')).toBe('Warms and fumes.')
    expect(sentence('Is it so?')).toBe('Is it so?')
    expect(listed(['a', 'b', 'c'])).toBe('a, b and c')
  })
})

describe('what the public cannot have', () => {
  // Regulation (EU) 2019/1148, Annex I: ammonium nitrate above 16 % nitrogen and nitric acid above 3 % are not for the public.
  const asked = async (buyer: 'public' | 'professional') => {
    const { library, plan, evaluation } = await reported('Benzoin downstream', {
      with: plan => ({ ...plan, settings: { ...plan.settings, region: 'EU', buyer } }),
    })
    const hits = evaluation.hazards.regulated.filter(hit => hit.barred).map(hit => library.materials.get(hit.material)!.name)
    return { hits, answers: answersOf(library, plan, evaluation) }
  }
  it('stands first in the answers on the way, on what to buy and on what can hurt', async () => {
    const { hits, answers } = await asked('public')
    expect(hits.join(' ')).toMatch(/nitric acid|ammonium nitrate/)
    for (const no of [3, 5, 6]) expect(answers[no - 1]!.clauses[0]).toMatch(/^The public cannot have .*(nitric acid|ammonium nitrate)/)
  })
  it('is not said to a school', async () => {
    const { answers } = await asked('professional')
    for (const { clauses } of answers) expect(clauses.join(' ')).not.toMatch(/cannot have/)
  })
})

describe('the answer to what can hurt leads with what is handled', () => {
  it.each(plans)('in $title', ({ library, evaluation }) => {
    const nameOf = (id: string): string => library.materials.get(id)!.name.replace(/, .*$/, '')
    const told = hurtAnswer(evaluation.hazards, nameOf)[0]!.toLowerCase()
    const worst = evaluation.hazards.materials.filter(one => one.class === 'gravest' || one.class === 'danger')
    const handled = worst.filter(one => one.as.includes('charged') || one.as.includes('start'))
    expect(handled.some(one => told.startsWith(nameOf(one.material).toLowerCase()))).toBe(true)
  })
})
