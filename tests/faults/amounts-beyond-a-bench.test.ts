import { describe, expect, it } from 'vitest'
import { waybench, waybenchJson } from '../support/terminal.ts'

const demo = ['plan', '--from', 'benzoin', '--to', 'lophine', '--settings', 'demo'] as const

/** A saved plan with something in it changed. */
async function tampered(change: (plan: Outside) => void): Promise<Map<string, string>> {
  const { files, code } = await waybench([...demo, '--have', '24 g', '--save', 'plan.json'])
  expect(code).toBe(0)
  const plan = JSON.parse(files.get('plan.json')!)
  change(plan)
  return new Map([['plan.json', JSON.stringify(plan)]])
}

const codesOf = async (change: (plan: Outside) => void) => {
  const { code, problems } = await waybenchJson(['plan', 'plan.json'], await tampered(change))
  return { code, codes: problems?.map((p: { code: string }) => p.code), problems }
}

// biome-ignore lint/suspicious/noExplicitAny: a file from outside has any shape
type Outside = any

describe('amounts beyond a bench', () => {
  it('ran for minutes on a hundred kilograms in a half-litre flask, one draw for each of 15 000 batches', async () => {
    const { code, problems } = await waybenchJson([...demo, '--have', '100 kg'])
    expect(code).toBe(1)
    expect(problems[0]).toMatchObject({ code: 'batches-too-many' })
    expect(problems[0].what).toMatch(/batches in the vessels stated/)
    expect(problems[0].cure).toMatch(/larger vessels/)
  })

  it('never came back from a vessel of a billionth of a millilitre', async () => {
    const { code, codes } = await codesOf(plan => {
      plan.settings.vessels = [{ kind: 'flask', volumeMl: 1e-9, count: 1 }]
    })
    expect({ code, codes }).toEqual({ code: 2, codes: ['schema-value'] })
  })

  it('never came back from a confidence of 0.999999, since the search doubled the start past every vessel', async () => {
    const { code } = await waybench([...demo.slice(0, -2), '--settings', 'demo', '--want', '2 g', '--confidence', '0.999999'])
    expect([0, 1]).toContain(code)
  })

  it.each([
    ['0.0000001 g', 'start-amount'],
    ['1e9 kg', 'start-amount'],
  ])('took %s as an amount in hand and printed zeros or a calendar of ages', async (have, expected) => {
    const { code, problems } = await waybenchJson(['plan', '--from', 'benzoin', '--to', 'lophine', '--have', have])
    expect({ code, codes: problems?.map((p: { code: string }) => p.code) }).toEqual({ code: 2, codes: [expected] })
  })

  it('never came back from 1e300 g kept back', async () => {
    const { code, codes } = await codesOf(plan => {
      plan.settings.keptBack = [{ compound: 'benzil', massG: 1e300 }]
    })
    expect({ code, codes }).toEqual({ code: 2, codes: ['kept-back-amount'] })
  })

  it.each([
    ['a negative own yield', { low: -5, typical: -3, high: -1 }],
    ['an own yield of nothing', { low: 0, typical: 0, high: 0 }],
    ['own yields in falling order', { low: 90, typical: 50, high: 10 }],
    ['an own yield beyond theory', { low: 50, typical: 50, high: 1e300 }],
  ])('died of %s as if it were a fault of the program, or reckoned with it', async (_, yields) => {
    const { code, codes } = await codesOf(plan => {
      plan.settings.yields = { 'benzil-nitric-acid': yields }
    })
    expect(code).toBe(2)
    expect(new Set(codes)).toEqual(new Set(['schema-value']))
  })

  it.each([
    ['startDate', (plan: Outside) => (plan.settings.startDate = '2026-02-31')],
    ['daysOff', (plan: Outside) => (plan.settings.daysOff = ['2026-13-01'])],
    ['windows', (plan: Outside) => (plan.settings.windows = [{ weekday: 1, from: '99:99', hours: 2 }])],
  ])('took a day or an hour that no calendar has: %s', async (field, change) => {
    const { code, problems } = await codesOf(change)
    expect(code).toBe(2)
    expect(problems[0].where).toContain(field)
  })
})

describe('a bench log from outside', () => {
  const run = (own: object) => ({
    id: 'run-1',
    step: 'benzil-nitric-acid',
    date: null,
    batch: 1,
    chargedG: null,
    weighedG: 20,
    dampPercent: 0,
    purity: null,
    failed: false,
    note: '',
    replaces: null,
    ...own,
  })

  it.each([
    ['itself', [run({ replaces: 'run-1' })]],
    ['each other', [run({ replaces: 'run-2' }), run({ id: 'run-2', replaces: 'run-1' })]],
    ['one that is not there', [run({ replaces: 'run-9' })]],
  ])('lost what was weighed where entries replaced %s', async (_, log) => {
    const { code, codes } = await codesOf(plan => {
      plan.log = log
    })
    expect(code).toBe(2)
    expect(codes).toContain('log-replaces')
  })

  it('took a product heavier than a ship', async () => {
    const { code, problems } = await codesOf(plan => {
      plan.log = [run({ weighedG: 1e300 })]
    })
    expect(code).toBe(2)
    expect(problems[0].where).toEqual(['plan.json', 'log', '0', 'weighedG'])
  })

  it('died of a weighing that the plan file does not hold', async () => {
    const files = await tampered(() => {})
    const before = files.get('plan.json')
    const { code, problems } = await waybenchJson(['log', 'plan.json', '--step', 'benzil-nitric-acid', '--weighed', '1e9 kg'], files)
    expect({ code, first: problems[0].code }).toEqual({ code: 2, first: 'log-number' })
    expect(files.get('plan.json')).toBe(before)
  })

  it.each([
    ['a pack of nothing', ['packs', 'packs', 0, 'amount'], 1e-300],
    ['a sample of a world', ['settings', 'retainedSampleG'], 1e300],
    ['a bottle without a trace of what it says', ['shelf', 0, 'assay'], 1e-300],
    ['a bottle beyond weighing', ['shelf', 0, 'amount'], 1e300],
    ['a price beyond money', ['packs', 'packs', 0, 'priceMinor'], 1e300],
    ['a still that runs for ever', ['settings', 'recovery'], { mlPerHour: 1e-300 }],
    ['a step of an age', ['slice', 'transformations', 0, 'elapsedHours'], 1e300],
  ])('refuses %s, with a cure', async (_name, path, value) => {
    const { files } = await waybench([...demo, '--have', '24 g', '--packs', 'demo', '--shelf', 'demo', '--save', 'plan.json'])
    const plan: Outside = JSON.parse(files.get('plan.json')!)
    const holder = path.slice(0, -1).reduce((part: Outside, key) => part[key], plan)
    holder[path.at(-1)!] = value
    const { code, problems } = await waybenchJson(['plan', 'plan.json'], new Map([['plan.json', JSON.stringify(plan)]]))
    expect([code, problems[0].code]).toEqual([2, 'schema-value'])
    expect(problems[0].cure).toMatch(/\S/)
  })
})
