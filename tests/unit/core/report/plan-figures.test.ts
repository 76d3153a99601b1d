import { describe, expect, it } from 'vitest'
import { isWanted, wantedMarks } from '../../../../core/library/mark.ts'
import { lineMark } from '../../../../core/plan/line-mark.ts'
import { legendText, markLetters } from '../../../../core/report/marks.ts'
import { planFigures } from '../../../../core/report/plan-figures.ts'
import { priceSentence, pricesOf } from '../../../../core/report/price-words.ts'
import { planText } from '../../../../core/report/text.ts'
import { packsFileSchema, priceFromOfPack } from '../../../../core/shopping/packs.ts'
import { weakPrices } from '../../../../core/shopping/weak-prices.ts'
import { reported } from './demo-plans.ts'

// What the records and the packs file say of themselves, held against what is told of a plan; no outside source: the words are our own.

const one = await reported('Benzoin downstream')
const { library, plan, evaluation } = one
const figures = planFigures(library, plan, evaluation)

describe('the figures that a plan rests on', () => {
  it('hold every charge that has an amount, every yield, temperature and time of its steps, and every price paid', () => {
    const of = (place: string, figure: string) => figures.filter(row => row.place === place && row.figure === figure)
    for (const step of evaluation.steps) {
      const place = `step ${step.number}`
      const amounts = step.charges.filter(line => line.basis !== 'open' && line.supply !== 'free')
      expect(of(place, 'charge').length, place).toBe(amounts.length)
      for (const figure of ['yield', 'range of the yield', 'times', 'temperature'])
        expect(of(place, figure).length, `${place} ${figure}`).toBe(1)
    }
    expect(of('prices', 'price').length).toBe(evaluation.shopping.flatMap(line => line.packs).length)
    for (const row of of('prices', 'price')) expect([row.mark, row.source]).toEqual(['invented', 'made up for the demonstration'])
    expect(of('this plan', 'in hand').map(row => [row.value.replace(/\s/g, ' '), row.mark])).toEqual([['24.0 g', 'typed']])
  })

  it('are kept to one mark, or to all that was not seen in a source', () => {
    const kept = (wanted: (typeof wantedMarks)[number]) => figures.filter(row => isWanted(wanted, row.mark))
    expect(kept('not seen').length + kept('seen').length).toBe(figures.length)
    expect(wantedMarks.filter(wanted => wanted !== 'not seen').reduce((sum, wanted) => sum + kept(wanted).length, 0)).toBe(figures.length)
    for (const wanted of ['seen', 'remembered', 'estimated', 'derived', 'planned', 'invented', 'typed', 'unknown'] as const)
      expect(kept(wanted).length, wanted).toBeGreaterThan(0)
  })

  it('stand with their letter in the text of the plan, which says what each letter means', () => {
    const text = planText(library, plan, evaluation)
    for (const step of evaluation.steps)
      for (const line of step.charges.filter(charge => charge.massG !== null)) {
        const letter = markLetters[lineMark(library, evaluation, step, line).mark]
        const row = text
          .split('\n')
          .find(at => at.includes(library.materials.get(line.material)!.name) && new RegExp(`[gL] +[${letter}]( |$)`).test(at))
        expect(row, `${step.number} ${line.material}`).toBeDefined()
      }
    expect(text.replace(/\s+/g, ' ')).toContain(legendText(['seen', 'remembered', 'typed', 'derived', 'planned', 'estimated']))
    expect(text).toMatch(/€\s\d+\.\d\d i$/m)
  })
})

describe('prices', () => {
  const demo = plan.packs!
  it('of the demo are all invented, and say so', () => {
    expect(priceSentence(evaluation)).toBe('All prices: i invented: made up for the demonstration.')
    expect(new Set(demo.packs.map(pack => priceFromOfPack(demo, pack).trust))).toEqual(new Set(['invented']))
    expect(weakPrices(library, demo).map(spot => spot.kind)).toEqual(demo.packs.map(() => 'invented price'))
  })

  it('without a statement are told as such, and count as weak', async () => {
    const { priceFrom: _stated, ...silent } = demo
    expect(packsFileSchema.safeParse(silent).success).toBe(true)
    const bare = await reported('Benzoin downstream', { with: was => ({ ...was, packs: silent }) })
    expect(pricesOf(bare.evaluation).every(price => price.mark === 'unknown' && price.source === null)).toBe(true)
    expect(priceSentence(bare.evaluation)).toBe('All prices: ? source not stated.')
    expect(weakPrices(library, silent).map(spot => spot.kind)).toEqual(silent.packs.map(() => 'price without source'))
    // What they cost is what it was: where a price was got changes no figure.
    expect(bare.evaluation.basket!.totalMinor).toBe(evaluation.basket!.totalMinor)
  })

  it('seen in a source are no weak spot; a source of which nobody says whether it was seen is none that was', () => {
    const { priceFrom: _stated, ...silent } = demo
    const first = { ...silent.packs[0]!, priceFrom: { source: 'list of November', trust: 'seen', date: '2026-11-03' } as const }
    const second = { ...silent.packs[1]!, priceFrom: { source: 'a page' } }
    expect(weakPrices(library, { ...silent, packs: [first, second] }).map(spot => spot.kind)).toEqual(['price without source'])
  })
})
