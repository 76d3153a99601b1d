import { describe, expect, it } from 'vitest'
import { planText } from '../../../../core/report/text.ts'
import { allReported, demoTitles, reported } from './demo-plans.ts'

const plans = await allReported()
/** Broken lines put together again, so that a name may stand over a line's end. */
const flat = (text: string): string => text.replace(/\s+/g, ' ')

describe.each(plans)('the text of $title', ({ library, plan, evaluation }) => {
  const text = planText(library, plan, evaluation)
  const read = flat(text)
  const nameOf = (id: string): string => flat(library.materials.get(id)!.name)

  it('names every material that is needed and every one that can hurt', () => {
    const ids = [...evaluation.shopping.map(line => line.material), ...evaluation.hazards.materials.map(one => one.material)]
    expect(ids.length).toBeGreaterThan(8)
    expect(ids.filter(id => !read.includes(nameOf(id)))).toEqual([])
  })

  it('holds every hazard code beside its statement', () => {
    const missing = evaluation.hazards.materials.flatMap(one =>
      one.codes.filter(({ code, statement }) => !read.includes(flat(`${code} ${statement}`))),
    )
    expect(missing).toEqual([])
  })

  it('tells the seven questions in their order', () => {
    const asked = [
      'What have I got?',
      'What can it become?',
      'Which way?',
      'How much?',
      'What do I need?',
      'What can hurt?',
      'What happened?',
    ]
    const places = asked.map(ask => text.indexOf(ask))
    expect(places.every(at => at >= 0)).toBe(true)
    expect(places).toEqual([...places].sort((a, b) => a - b))
  })

  it('ends with the caution block', () => {
    const tail = flat(text.slice(text.indexOf('CAUTION')))
    // Design 4: estimates, data sheets, local codes and licensed practice, not alone, who may do this, the lists' gap.
    for (const words of [
      'Quantities are estimates',
      'safety data sheet',
      'Local codes and licensed practice decide',
      'Do not work alone',
      'Who may do',
      'schedules of controlled drugs',
    ])
      expect(tail).toContain(words)
  })

  it('names what its two amounts of a goal are', () => {
    // Design 3.7: the draws' 50th percentile, and what comes out where every step gives its typical yield.
    expect(read).toMatch(/Median: half of the outcomes are above it\. At typical yields: every step gives just its usual yield/)
  })

  it('never says "no hazards"', () => {
    expect(read).not.toMatch(/\bno hazards\b/i)
    if (evaluation.hazards.unknown.length > 0) expect(read).not.toMatch(/nothing above a warning/i)
  })

  it('breaks its prose at a hundred characters', () => {
    const prose = text.split('\n').filter(line => /^ {0,6}([-!§]|\d\.) /.test(line))
    expect(prose.length).toBeGreaterThan(20)
    expect(prose.filter(line => line.length > 100)).toEqual([])
  })
})

describe('the text', () => {
  it('lists what has no price before any supplier, and the total says what it lacks', () => {
    const benzoin = plans.find(one => one.title === demoTitles[0])!
    const text = planText(benzoin.library, benzoin.plan, benzoin.evaluation)
    const unknown = benzoin.evaluation.basket!.priceUnknown
    expect(unknown.length).toBeGreaterThan(0)
    expect(text.indexOf('Price unknown')).toBeLessThan(text.indexOf(benzoin.evaluation.basket!.orders[0]!.name.replace(' (invented)', '')))
    expect(flat(text)).toContain(`At least: one price unknown (${benzoin.library.materials.get(unknown[0]!)!.name})`)
  })

  it('tells what is to be known of each line, of bought ones too', () => {
    for (const { library, plan, evaluation } of plans) {
      const text = flat(planText(library, plan, evaluation))
      for (const note of new Set(evaluation.shopping.flatMap(line => line.notes))) expect(text).toContain(flat(note))
    }
    const benzoin = plans.find(one => one.title === demoTitles[0])!
    const [line, ...others] = benzoin.evaluation.shopping.filter(one => one.packs.length > 0)
    const note = 'Own price of 1 kg from Kiln Lane, in place of € 2.00.'
    const shopping = [{ ...line!, notes: [note] }, ...others]
    expect(flat(planText(benzoin.library, benzoin.plan, { ...benzoin.evaluation, shopping }))).toContain(note)
  })

  it('stands without a basket', async () => {
    const bare = await reported('Copper scrap round its salts', { solved: false })
    const text = planText(bare.library, bare.plan, bare.evaluation)
    expect(text).toContain('To buy, supplier open')
    expect(text).not.toContain('All that has a price')
  })
})

it('tells no total in no currency where no packs are given', async () => {
  const { library, plan, evaluation } = await reported('Benzoin downstream', { with: plan => ({ ...plan, packs: null }) })
  const text = planText(library, plan, evaluation)
  // ISO 4217: XXX is "no currency".
  expect(text).not.toMatch(/XXX|All that has a price/)
  expect(flat(text)).toMatch(/prices unknown/)
})
