import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { waybench, waybenchJson } from '../../support/terminal.ts'
import { root } from '../../support/tree.ts'

/** The demo plan: three goals from 24 g of benzoin, on the invented workshop's shelf, packs and evenings. */
const three = [
  ...['plan', '--from', 'benzoin', '--have', '24 g', '--goal', 'lophine=5g', '--goal', '2-3-diphenylquinoxaline=5g'],
  ...['--goal', 'tetraphenylcyclopentadienone=rest', '--packs', 'demo', '--shelf', 'demo', '--settings', 'demo'],
]

interface Order {
  supplier: string
  totalMinor: number
}
const demo = (name: string) => readFileSync(join(root, 'routes-data', 'demo', name), 'utf8')

describe('three goals, one list', () => {
  it('has one order a supplier, a total that is their sum, and what is left over: in JSON', async () => {
    const { code, json } = await waybenchJson(three)
    expect(code).toBe(0)
    const { basket, shopping, leftOvers, otherBaskets, solvents } = json
    const suppliers = basket.orders.map((o: Order) => o.supplier)
    expect(new Set(suppliers).size).toBe(suppliers.length)
    expect(basket.totalMinor).toBe(basket.orders.reduce((sum: number, o: Order) => sum + o.totalMinor, 0))
    expect([basket.proven, basket.boundMinor]).toEqual([true, basket.totalMinor])
    // 1,3-Diphenylacetone has no pack in the demo: listed first, and the total says so.
    expect([shopping[0].material, basket.priceUnknown, basket.complete]).toEqual(['1-3-diphenylacetone', ['1-3-diphenylacetone'], false])
    for (const line of shopping) {
      if (line.packs.length === 0) continue
      const size = (p: { amount: number; unit: string; count: number }) =>
        p.count * p.amount * (p.unit === 'kg' || p.unit === 'L' ? 1000 : 1)
      const bought = line.packs.reduce((sum: number, p: Parameters<typeof size>[0]) => sum + size(p), 0)
      expect(bought, line.material).toBeGreaterThanOrEqual(line.buy.amount - 1e-9)
      expect(line.left.amount, line.material).toBeCloseTo(bought - line.buy.amount, 6)
    }
    expect(leftOvers.length).toBeGreaterThan(3)
    expect(leftOvers.some((one: { couldServe: unknown[] }) => one.couldServe.length > 0)).toBe(true)
    for (const other of otherBaskets) expect(other.totalMinor, other.kind).toBeGreaterThanOrEqual(basket.totalMinor)
    const fewest = otherBaskets.find((o: { kind: string }) => o.kind === 'fewest-suppliers')
    expect(fewest.orders.length).toBeLessThanOrEqual(basket.orders.length)
    expect(solvents.map((s: { material: string }) => s.material)).toContain('ethanol')
  })

  it.each(['.txt', '.csv', '.html'])('has them in print, %s', async ending => {
    const { code, files } = await waybench([...three, '--print', `pack${ending}`])
    expect(code).toBe(0)
    const pack = files.get(`pack${ending}`)!
    for (const word of [/Kiln Lane Chemicals/, /acetic acid/, /70\.40?\b/]) expect(pack).toMatch(word)
    expect(pack).toMatch(/left/i)
  })

  it('says by how much the start falls short, which goal is cut and what it allows', async () => {
    const { code, json } = await waybenchJson([
      ...['plan', '--from', 'benzoin', '--have', '24 g', '--goal', 'lophine=20g', '--goal', '2-3-diphenylquinoxaline=20g'],
    ])
    expect(code).toBe(0)
    const note = json.notes.find((n: { code: string }) => n.code === 'start-short')
    expect(note.what).toMatch(
      /does not reach for 20\.0 g of 2,3-diphenylquinoxaline: it allows [\d.]+ g\. [\d.]+ g more of it would be needed/,
    )
    expect(note.cure).toMatch(/Lower this goal to/)
  })

  it('keeps back what no goal may use', async () => {
    const { json } = await waybenchJson([...three, '--keep-back', 'benzoin=4g'])
    expect(json.start).toMatchObject({ keptBackG: 4 })
    expect(json.start.massG).toBeCloseTo(20, 6)
  })
})

describe('the cheapest way', () => {
  it('is proven, never dearer than the usual routes by the gram of the rest, and says why it wins', async () => {
    const [usual, cheapest] = [await waybenchJson(three), await waybenchJson([...three, '--cheapest'])]
    expect(cheapest.json.chosen).toMatchObject({ proven: true, ways: 20 })
    const perGram = (json: { basket: { totalMinor: number }; goals: { expectedG: number }[] }) =>
      json.basket.totalMinor / json.goals[2]!.expectedG
    expect(perGram(cheapest.json)).toBeLessThanOrEqual(perGram(usual.json) + 1e-9)
    expect(cheapest.json.chosen.reasons.join('\n')).toMatch(/Buying benzaldehyde rather than making it .*spares [\d.]+ h of hands/)
  })

  it('changes its routes and its basket when the budget is cut, and says what for', async () => {
    const [free, cut] = [await waybenchJson([...three, '--cheapest']), await waybenchJson([...three, '--budget', '70'])]
    const oxidation = (json: { steps: { makes: string; transformation: string }[] }) =>
      json.steps.find(s => s.makes === 'benzil')!.transformation
    expect([free.json.basket.totalMinor, oxidation(free.json)]).toEqual([7040, 'benzil-nitric-acid'])
    expect([cut.json.basket.totalMinor, oxidation(cut.json)]).toEqual([6840, 'benzil-copper-ammonium-nitrate'])
    expect(cut.json.chosen.changedByLimits).toMatch(
      /^Making benzil by .* saves €.2\.00.* but gives [\d.]+.g less tetraphenylcyclopentadienone\.$/,
    )
  })

  it('says how much a budget lacks, and what leaving a goal out would cost', async () => {
    const { code, problems } = await waybenchJson([...three, '--budget', '65'])
    expect(code).toBe(1)
    expect(problems[0].what).toMatch(/costs at least €.68\.40, €.3\.40 more than the budget of €.65\.00/)
    expect(problems[0].cure).toMatch(/Leave out lophine \(the others then cost €.52\.70\)/)
  })

  it('changes its routes when a hazard is forbidden, and says what that costs', async () => {
    const { json } = await waybenchJson([...three, '--cheapest', '--avoid-code', 'H330'])
    const codes = json.hazards.materials.flatMap((m: { codes: { code: string }[] }) => m.codes.map(({ code }) => code))
    expect(codes.length).toBeGreaterThan(5)
    expect(codes.filter((code: string) => code.startsWith('H330'))).toEqual([])
    expect(json.chosen.changedByLimits).toMatch(/spares nitrogen dioxide/)
  })

  it.each([
    ['--max-hands-on', '5', (json: { days: { handsOnH: number } }) => json.days.handsOnH <= 5],
    ['--finish-by', '2026-12-10', (json: { days: { finishDate: string } }) => json.days.finishDate <= '2026-12-10'],
  ] as const)('keeps %s', async (option, value, keeps) => {
    const { code, json } = await waybenchJson([...three, option, value])
    expect(code).toBe(0)
    expect(keeps(json)).toBe(true)
  })

  it('holds the rest at the least that is stated', async () => {
    const { json } = await waybenchJson([
      ...three.slice(0, 9),
      '--goal',
      'tetraphenylcyclopentadienone=rest >= 15 g',
      ...three.slice(11),
      '--cheapest',
    ])
    expect(json.goals[2].expectedG).toBeGreaterThanOrEqual(15)
    expect(json.chosen.figures.perGramMinor).toBeNull()
  })

  it.each([
    ['--budget', 'much'],
    ['--finish-by', '2026-02-30'],
    ['--max-hands-on', '-1'],
  ])('refuses %s %s', async (option, value) => {
    const { code, problems } = await waybenchJson([...three, option, value])
    expect([code, problems[0].code]).toEqual([2, 'limit'])
  })
})

describe('shelf and packs as tables', () => {
  it('written by a plan are read back as they were, by the next one', async () => {
    const { code, files } = await waybench([...three, '--save-shelf', 'shelf.csv', '--save-packs', 'packs.csv'])
    expect(code).toBe(0)
    const [first, again] = [
      await waybenchJson(three),
      await waybenchJson([...three.slice(0, 11), ...['--packs', 'packs.csv', '--shelf', 'shelf.csv', '--settings', 'demo']], files),
    ]
    expect(again.code).toBe(0)
    expect(again.json.shopping).toEqual(first.json.shopping)
    expect(again.json.basket).toEqual(first.json.basket)
    const shelf = JSON.parse(demo('shelf.json')).items.length
    // One line a bottle and the headings.
    expect(files.get('shelf.csv')!.trim().split(/\r?\n/).length).toBe(shelf + 1)
  })

  it('says so where there are no packs to write', async () => {
    const { code, problems } = await waybenchJson([
      ...['plan', '--from', 'benzoin', '--to', 'lophine', '--have', '10 g', '--save-packs', 'packs.csv'],
    ])
    expect([code, problems[0].code]).toEqual([2, 'no-packs'])
  })
})

describe('the rule for solvents', () => {
  it("is the plan's own, figure by figure", async () => {
    const of = async (...rule: string[]) =>
      (await waybenchJson([...three, ...rule.flatMap(text => ['--recovery', text])])).json.solvents.find(
        (s: { material: string }) => s.material === 'ethanol',
      )
    const [usual, half, never] = [await of(), await of('share=37.5', 'mlPerHour=100'), await of('worthPerHour=100000')]
    // Half of three quarters back, at half the pace: as long, but for the setting up which is the same.
    expect(half.recoverableMl).toBeCloseTo(usual.recoverableMl / 2, 9)
    expect(half.hours).toBeCloseTo(usual.hours, 9)
    expect(never.worthIt).toBe(false)
    const { code, problems } = await waybenchJson([...three, '--recovery', 'share=750'])
    expect([code, problems[0].code]).toEqual([2, 'recovery'])
  })
})

describe('a basket whose search is limited', () => {
  it('is the best found, with its gap', async () => {
    const { code, json } = await waybenchJson([...three, '--basket-limit', '0'])
    expect(code).toBe(0)
    // Easy programs are proven before the first node; then the bound is the total.
    if (json.basket !== null) expect(json.basket.boundMinor).toBeLessThanOrEqual(json.basket.totalMinor)
  })
})

describe('second products', () => {
  const fusion = [
    'plan',
    '--from',
    'castor-oil',
    '--have',
    '50 g',
    '--to',
    'sebacic-acid',
    '--steps',
    'sebacic-acid-fusion-cresol',
    '--packs',
    'demo',
  ]
  it('are gained, and go to the shelf of the plan when they are wanted there', async () => {
    const { json } = await waybenchJson(fusion)
    const gained = json.coProducts.find((c: { compound: string }) => c.compound === '2-octanol')
    expect(gained.expectedG).toBeGreaterThan(1)
    const ester = [
      'plan',
      '--from',
      'castor-oil',
      '--have',
      '50 g',
      '--packs',
      'demo',
      '--goal',
      'di-2-octyl-sebacate=5g',
      '--goal',
      'sebacic-acid=rest',
    ]
    const avoid = ['--avoid-step', 'sodium-ricinoleate-soap', '--avoid-step', 'sebacic-acid-fusion-mineral-oil']
    const [bought, shelved] = [await waybenchJson([...ester, ...avoid]), await waybenchJson([...ester, ...avoid, '--shelve', '2-octanol'])]
    const line = (json: { shopping: { material: string; shelf: { amount: number }; buy: { amount: number } }[] }) =>
      json.shopping.find(l => l.material === '2-octanol')!
    expect(line(bought.json).shelf.amount).toBe(0)
    expect(line(shelved.json).shelf.amount).toBeGreaterThan(0)
    expect(line(shelved.json).buy.amount).toBeLessThan(line(bought.json).buy.amount)
  })

  it('that the plan does not gain are refused', async () => {
    const { code, problems } = await waybenchJson([...fusion, '--shelve', 'benzil'])
    expect([code, problems[0].code]).toEqual([2, 'not-gained'])
  })
})

describe('tables', () => {
  const run = (files: Record<string, string>, options: readonly string[]) =>
    waybenchJson(
      ['plan', '--from', 'benzoin', '--to', 'lophine', '--have', '10 g', '--settings', 'demo', ...options],
      new Map(Object.entries(files)),
    )

  it('of a shelf and of packs serve as the files do', async () => {
    const shelf = 'material;amount;assay\r\nEthanol;0,5 L;\r\nbenzaldehyde;20 mL;98 %\r\n'
    const packs =
      'supplier;material;amount;price;carriage\nCorner Shop;ammonium acetate;50 g;4,20;2,50\nCorner Shop;acetic acid, glacial;1 L;9,00;\n'
    const { code, json } = await run({ 'shelf.csv': shelf, 'packs.csv': packs }, ['--shelf', 'shelf.csv', '--packs', 'packs.csv'])
    expect(code).toBe(0)
    const line = (id: string) => json.shopping.find((l: { material: string }) => l.material === id)
    expect(line('ethanol').buy.amount).toBe(0)
    expect(line('ammonium-acetate')).toMatchObject({ costMinor: 420 })
    expect(json.basket.orders).toMatchObject([{ supplier: 'corner-shop', carriageMinor: 250 }])
  })

  it('with faults are answered line by line, each line whole, and nothing is taken', async () => {
    const text = [
      'material;amount;unit',
      'ethanol;500;mL',
      'benzaldehyyde;20;mL',
      'acetic-acid-glacial;plenty;mL',
      'ethanol;500;mL',
      'lophine;3;g;of Tuesday',
    ].join('\n')
    const { code, problems } = await run({ 'shelf.csv': text }, ['--shelf', 'shelf.csv'])
    expect(code).toBe(2)
    const at = (line: number) => problems.filter((p: { where: string[] }) => p.where.includes(`line ${line}`))
    expect(at(3)[0]).toMatchObject({ code: 'csv-material-unknown', what: expect.stringMatching(/The line reads: benzaldehyyde;20;mL/) })
    expect(at(3)[0].cure).toMatch(/benzaldehyde/)
    expect(at(4)[0].what).toMatch(/The line reads: acetic-acid-glacial;plenty;mL/)
    expect(at(5)[0].code).toBe('csv-row-repeated')
    expect(at(6)[0].code).toBe('csv-row-too-long')
    expect(at(2)).toEqual([])
  })

  it('with a wrong column say which, and how many lines were not read', async () => {
    const { code, problems } = await run({ 'packs.csv': 'supplier;material;ammount;price\nShop;ethanol;1 L;3,00\n' }, [
      '--packs',
      'packs.csv',
    ])
    expect(code).toBe(2)
    expect(problems.map((p: { code: string }) => p.code)).toEqual(['csv-column-unknown', 'csv-column-missing'])
    expect(problems[0].cure).toMatch(/amount/)
    expect(problems[0].why).toMatch(/One line was therefore not read/)
  })

  it('leave demo files as they were', () => {
    expect(JSON.parse(demo('packs.json')).note).toMatch(/invented/i)
  })
})
