import Papa from 'papaparse'
import { describe, expect, it } from 'vitest'
import { demoParts } from '../../../server/library/demo.ts'
import { waybench, waybenchJson } from '../../support/terminal.ts'

/** The workshop with whole days, so that a step of eight hours has its day. */
const wholeDays = { ...demoParts().settings, windows: [1, 2, 3, 4, 5].map(weekday => ({ weekday, from: '08:00', hours: 11 })) }
const benzoin = [
  ...['plan', '--from', 'benzoin', '--have', '24 g', '--goal', 'lophine=5g', '--goal', '2-3-diphenylquinoxaline=5g'],
  ...['--goal', 'tetraphenylcyclopentadienone=rest', '--avoid-step', 'benzil-nitric-acid'],
]
const plans = [
  ['the demo plan', benzoin],
  ['a route with an isolation', ['plan', '--from', 'cinnamon-bark', '--to', 'cinnamyl-alcohol', '--have', '200 g']],
  ['a route to a polymer', ['plan', '--from', 'castor-oil', '--to', 'nylon-6-10', '--have', '50 g']],
  ['a route with a two-product step', ['plan', '--from', 'corn-cobs', '--to', 'furfuryl-alcohol', '--have', '300 g']],
] as const
const bench = ['--settings', 'bench.json', '--packs', 'demo', '--shelf', 'demo']
const files = () => new Map([['bench.json', JSON.stringify(wholeDays)]])

/** Rows of a CSV file by the names of its head. */
const rowsOf = (text: string): Record<string, string>[] =>
  Papa.parse<Record<string, string>>(text.replace(/^\ufeff/, ''), { header: true, skipEmptyLines: true }).data

describe.each(plans)('%s', (_name, words) => {
  const run = () => waybenchJson([...words, ...bench, '--save', 'plan.json'], files())

  it('has its spread, both hands, batches, days and metrics', async () => {
    const { code, json } = await run()
    expect(code).toBe(0)
    for (const goal of json.goals) {
      expect(goal.p10G).toBeLessThan(goal.medianG)
      expect(goal.medianG).toBeLessThan(goal.p90G)
      // First attempts get less than a practised hand.
      expect(goal.otherHandG).toBeLessThan(goal.expectedG)
      expect(goal.stairs.length).toBeGreaterThan(0)
      for (const tread of goal.stairs) expect(tread.p10).toBeLessThan(tread.p90)
    }
    for (const step of json.steps) {
      expect(step.batches).toBeGreaterThanOrEqual(1)
      expect(step.volumeMl.perBatch).toBeGreaterThan(0)
    }
    expect(json.days.finishDate).toMatch(/^2026-12-|^2027-/)
    expect(json.days.windowsUsed).toBeGreaterThan(0)
    expect(json.days.longestChain.length).toBeGreaterThan(0)
    const { route, steps } = json.metrics
    expect(route.processMassIntensity - route.eFactor).toBeGreaterThan(0)
    for (const { metrics, ecoScale } of steps) {
      // An isolation has neither equation nor EcoScale; a reaction has both.
      expect(ecoScale === null).toBe(metrics.atomEconomy === null)
      if (ecoScale !== null)
        expect(ecoScale.score).toBeCloseTo(100 - ecoScale.rows.reduce((s: number, r: { points: number }) => s + (r.points ?? 0), 0), 9)
    }
  })

  it('says on paper what it says in JSON', async () => {
    const { json, files: written } = await run()
    const { code } = await waybench(['plan', 'plan.json', '--print', 'pack.html'], written)
    expect(code).toBe(0)
    await waybench(['plan', 'plan.json', '--print', 'pack.txt'], written)
    await waybench(['plan', 'plan.json', '--print', 'days.ics'], written)
    const text = written.get('pack.txt')!
    for (const title of ['How much', 'Mass metrics', 'Days']) expect(text).toContain(title)
    expect(text).toContain('first attempts')
    for (const step of json.steps) expect(written.get('pack.html')!.replace(/<[^>]*>/g, '')).toContain(`Step ${step.number}`)
    const calendar = written.get('days.ics')!
    // RFC 5545: one event for each booked task that takes time.
    const booked = json.days.booked.filter((b: { start: string; end: string }) => b.start !== b.end)
    expect(calendar.match(/BEGIN:VEVENT/g)).toHaveLength(booked.length)
    expect(Math.max(...calendar.split('\r\n').map(line => new TextEncoder().encode(line).length))).toBeLessThanOrEqual(75)
  })

  it('moves goals, shopping list and dates with a logged poor run, and goes four ways on', async () => {
    const { json, files: written } = await run()
    const first = json.steps[0]
    const half = `${(first.expectedG / first.batches / 2).toFixed(2)} g`
    for (let batch = 1; batch <= first.batches; batch++) {
      const logged = await waybench(
        ['log', 'plan.json', '--step', first.transformation, '--weighed', half, '--note', `batch ${batch}`],
        written,
      )
      expect(logged.code).toBe(0)
    }
    const after = await waybenchJson(['plan', 'plan.json'], written)
    const last = json.goals.length - 1
    expect(after.json.goals[last].medianG).toBeLessThan(0.75 * json.goals[last].medianG)
    expect(after.json.shopping).not.toEqual(json.shopping)
    expect(after.json.days.finishDate).not.toBe(json.days.finishDate)
    expect(after.json.steps[0].done.leftToRun).toBe(0)
    const ways = await waybenchJson(['replan', 'plan.json', '--take', 'scale-down', '--save', 'next.json'], written)
    expect(ways.json.ways.map((w: { way: string }) => w.way)).toEqual(['scale-down', 'top-up', 'repeat', 'another-route'])
    for (const way of ways.json.ways) expect(way.evaluation === null).toBe(way.reason !== null)
    // What is not made by another route goes on with as much as was planned.
    const repeat = ways.json.ways[2]
    expect(repeat.evaluation.goals[last].expectedG).toBeGreaterThan(after.json.goals[last].expectedG)
    // The print says which version it is and what changed.
    const printed = await waybench(['plan', 'plan.json'], written)
    expect(printed.out).toContain(`Version ${1 + first.batches}.`)
    expect(printed.out.replace(/\s+/g, ' ')).toContain('Changed since the one before: Logged:')
  })
})

describe('the bench log', () => {
  const step = 'benzil-copper-ammonium-nitrate'
  it('goes out as CSV, corrections and all', async () => {
    const { files: written } = await waybench([...benzoin, '--save', 'plan.json'])
    const log = (...words: string[]) => waybench(['log', 'plan.json', '--step', step, ...words], written)
    await log('--weighed', '20 g', '--damp', '10', '--melting', '92-94', '--note', '=cmd, "damp"')
    await log('--weighed', '17.9 g', '--melting', '94 to 95 °C', '--purity', '98', '--replaces', 'run-1')
    const { code } = await waybench(['log', 'plan.json', '--csv', 'log.csv'], written)
    expect(code).toBe(0)
    const rows = rowsOf(written.get('log.csv')!)
    expect(rows.map(r => [r.run, r.weighed_g, r.stands, r.replaces, r.melting_from_c, r.melting_to_c])).toEqual([
      ['run-1', '20', 'no', '', '92', '94'],
      ['run-2', '17.9', 'yes', 'run-1', '94', '95'],
    ])
    expect(rows[0]!.note).toBe('\'=cmd, "damp"')
    // Dry and pure over theory, by hand: 23.772 g of benzil from 24 g of benzoin.
    expect(Number(rows[1]!.isolated_g)).toBeCloseTo(17.9 * 0.98, 9)
    expect(Number(rows[1]!.yield)).toBeCloseTo((17.9 * 0.98) / 23.772, 4)
    // Nothing was added by exporting, and an entry keeps what was written.
    expect(JSON.parse(written.get('plan.json')!).log).toHaveLength(2)
  })
  it('takes a weighing above theory as it is, warns, and leaves the yields alone', async () => {
    const before = await waybenchJson([...benzoin, '--save', 'plan.json'])
    const logged = await waybench(['log', 'plan.json', '--step', step, '--weighed', '25 g'], before.files)
    expect(logged.code).toBe(0)
    // 24 g of benzoin can give 23.772 g: 105.2 %.
    expect(logged.out.replace(/\s+/g, ' ')).toMatch(/weighed 105 % of theory.*wet, impure or mis-weighed.*in place of run-1/)
    const after = await waybenchJson(['plan', 'plan.json'], before.files)
    expect(after.json.steps[0]).toMatchObject({ yieldFraction: before.json.steps[0].yieldFraction, done: { isolatedG: 25, ownRuns: 0 } })
    expect((await waybench(['plan', 'plan.json'], before.files)).out).toContain('Spilt, lost and failed runs are outside these ranges.')
  })
  it.each(['95-94', 'about 95', '94-'])('refuses a melting range of "%s"', async text => {
    const { files: written } = await waybench([...benzoin, '--save', 'plan.json'])
    const { code, err } = await waybench(['log', 'plan.json', '--step', step, '--weighed', '20 g', '--melting', text], written)
    expect(code).toBe(2)
    expect(err).toMatch(/melting/i)
  })
})

describe('class multiples', () => {
  const words = ['plan', '--from', 'benzoin', '--to', 'lophine', '--want', '12 x 0.5 g']
  it('are twelve runs of the last step, or one lot to divide, as the user says', async () => {
    const runs = (await waybenchJson([...words, '--groups', 'runs'])).json
    const lot = (await waybenchJson([...words, '--groups', 'lot'])).json
    const one = (await waybenchJson(['plan', '--from', 'benzoin', '--to', 'lophine', '--want', '6 g'])).json
    const batchesOf = (json: { steps: { batches: number }[] }) => json.steps.map(s => s.batches)
    expect(batchesOf(runs)).toEqual([1, 12])
    expect(batchesOf(lot)).toEqual([1, 1])
    expect(lot.steps).toEqual(one.steps)
    expect(runs.goals[0].expectedG).toBeCloseTo(6, 9)
    expect(runs.goals[0].groups).toMatchObject({ count: 12, as: 'runs' })
    expect(runs.goals[0].groups.eachG).toBeCloseTo(runs.goals[0].medianG / 12, 12)
    // Groups work side by side: the calendar is that of one.
    expect(runs.days.handsOnH).toBeCloseTo(lot.days.handsOnH, 9)
    // Twelve runs average out what one run may do.
    expect(runs.goals[0].p10G).toBeGreaterThan(lot.goals[0].p10G)
  })
  it('are never guessed', async () => {
    const { code, problems } = await waybenchJson(words)
    expect(code).toBe(2)
    expect(problems[0].code).toBe('groups')
    expect((await waybenchJson([...words, '--groups', 'pairs'])).code).toBe(2)
  })
})

describe('settings on the command line', () => {
  const words = [
    'plan',
    '--from',
    'benzoin',
    '--to',
    'lophine',
    '--have',
    '24 g',
    '--packs',
    'demo',
    '--steps',
    'benzil-copper-ammonium-nitrate,lophine',
  ]
  it('put own yields, batches, a repeat and a sample in place of the usual', async () => {
    const plain = (await waybenchJson(words)).json
    const id = plain.steps[0].transformation
    const own = (
      await waybenchJson([...words, '--yield', `${id}=40,50,60`, '--batches', `${id}=2`, '--repeat-riskiest', '--retained-sample', '0.1 g'])
    ).json
    expect(own.steps[0]).toMatchObject({ batches: 2, yieldFraction: { low: 0.4, typical: 0.5, high: 0.6 } })
    expect(own.goals[0].expectedG).toBeCloseTo((plain.goals[0].expectedG * 0.5) / plain.steps[0].yieldFraction.typical, 9)
    const need = (json: typeof plain, material: string) =>
      json.shopping.find((l: { material: string }) => l.material === material).need.amount
    // The riskiest step is bought for twice.
    const bought = own.shopping.find((l: { uses: { step: string }[] }) => l.uses.length === 1)!.material
    const again = (await waybenchJson([...words, '--yield', `${id}=40,50,60`, '--batches', `${id}=2`])).json
    expect(need(own, bought)).toBeGreaterThan(need(again, bought))
  })
  it.each([
    ['--yield', 'nowhere=1,2,3'],
    ['--yield', 'benzil-copper-ammonium-nitrate=60,50,70'],
    ['--batches', 'benzil-copper-ammonium-nitrate=0'],
    ['--reserve', '-5'],
    ['--retained-sample', '0.1 mL'],
  ])('refuse %s %s', async (option, value) => {
    expect((await waybench([...words, `${option}=${value}`])).code).toBe(2)
  })
  it('say what to start from, nine times in ten', async () => {
    const { json } = await waybenchJson(['plan', '--from', 'benzoin', '--to', 'lophine', '--want', '5 g'])
    const { startG, confidence } = json.startNeeded
    expect(confidence).toBe(0.9)
    // Started from that, nine draws in ten reach the 5 g.
    const sure = (await waybenchJson(['plan', '--from', 'benzoin', '--to', 'lophine', '--have', `${startG} g`])).json
    expect(sure.goals[0].p10G).toBeCloseTo(5, 2)
    const { out } = await waybench(['plan', '--from', 'benzoin', '--to', 'lophine', '--want', '5 g'])
    expect(out.replace(/\s+/g, ' ')).toMatch(/To have 5\.00 g of lophine nine times in ten, start from \d/)
  })
  it('offers to run twice and combine where the scale is flagged', async () => {
    const { json } = await waybenchJson([
      'plan',
      '--from',
      'benzoin',
      '--to',
      'lophine',
      '--have',
      '24 g',
      '--avoid-step',
      'benzil-nitric-acid',
    ])
    const { combine, notes, transformation, batches } = json.steps[0]
    expect(batches).toBe(1)
    // 24 g against 3.72 g published: more than three times; 24 / (3 x 3.72) = 2.15, so three.
    expect(combine).toBe(3)
    expect(notes.join(' ')).toContain('run it 3 times and combine')
    const split = (
      await waybenchJson([
        'plan',
        '--from',
        'benzoin',
        '--to',
        'lophine',
        '--have',
        '24 g',
        '--avoid-step',
        'benzil-nitric-acid',
        '--batches',
        `${transformation}=3`,
      ])
    ).json
    expect(split.steps[0].combine).toBeUndefined()
  })
})

describe('an earlier version', () => {
  it('is what the pack tells its changes against', async () => {
    const { files: written } = await waybench([...benzoin, '--save', 'first.json'])
    await waybench([...benzoin.map(w => (w === '24 g' ? '30 g' : w)), '--confidence', '0.8', '--save', 'second.json'], written)
    const { out } = await waybench(['plan', 'second.json', '--since', 'first.json'], written)
    const flat = out.replace(/[\s\u00a0\u202f]+/g, ' ')
    expect(flat).toContain('Version 2.')
    expect(flat).toContain('Changed since the one before: benzoin in hand: 30.0 g, was 24.0 g. Changed in the settings: the confidence.')
  })
})
