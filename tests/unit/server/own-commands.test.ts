import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { bundled } from '../../../server/library/bundled.ts'
import { demoParts } from '../../../server/library/demo.ts'
import { plainStep } from '../../support/plain-step.ts'
import { waybench, waybenchJson } from '../../support/terminal.ts'

const source = [{ citation: 'own bench', checked: true }]
const compound = (id: string, formula: string, smiles: string) => ({
  id,
  name: id,
  kind: 'compound',
  formula,
  smiles,
  form: 'solid',
  sources: source,
})
const own = JSON.stringify({
  format: 'waybench-library',
  version: 1,
  title: 'own',
  materials: [
    compound('own-bromobenzil', 'C14H9BrO2', 'O=C(c1ccccc1)C(=O)c1ccc(Br)cc1'),
    compound('own-quinoxaline', 'C20H13BrN2', 'Brc1ccc(cc1)-c1nc2ccccc2nc1-c1ccccc1'),
  ],
  transformations: [
    {
      id: 'own-step',
      name: 'own step',
      ...plainStep,
      reactants: [
        { compound: 'own-bromobenzil', coefficient: 1 },
        { compound: 'o-phenylenediamine', coefficient: 1 },
      ],
      products: [
        { compound: 'own-quinoxaline', coefficient: 1 },
        { compound: 'water', coefficient: 2 },
      ],
      mainProduct: 'own-quinoxaline',
      limiting: 'own-bromobenzil',
      charge: [
        { material: 'own-bromobenzil', role: 'substrate', amount: 2.89, unit: 'g' },
        { material: 'o-phenylenediamine', role: 'reagent', amount: 1.1, unit: 'g' },
      ],
      yieldPercent: { low: 70, typical: 80, high: 90 },
      elapsedHours: 2,
      sources: source,
    },
  ],
})

describe('the command line on own records', () => {
  it('tells where the bundled library is weak', async () => {
    const { code, json } = await waybenchJson(['check', 'bundled', '--weak'])
    expect(code).toBe(0)
    const kinds = new Set(json.weak.map((spot: { kind: string }) => spot.kind))
    expect([...kinds].sort()).toEqual([
      'estimated times',
      'hazards unknown',
      'no density',
      'reckoned charges',
      'remembered charges',
      'remembered hazards',
      'remembered properties',
      'remembered yield',
      'single-source yield',
    ])
    for (const spot of json.weak) expect(spot.cure).not.toBe('')
    expect((await waybench(['check', 'bundled', '--weak'])).out).toMatch(
      /weak spots; what was never run here is told with --data: \d+ hazards unknown/,
    )
    // The demo's suppliers ask prices that were made up, all of them.
    const { packs } = demoParts().packs
    const priced = await waybenchJson(['check', 'bundled', '--weak', '--packs', 'demo', '--trust', 'invented'])
    expect(priced.json.weak.map((spot: { kind: string }) => spot.kind)).toEqual(packs.map(() => 'invented price'))
  })

  it("lays the lab's own records over the library, from a file or a data folder, and leaves what is beneath", async () => {
    const folder = mkdtempSync(join(tmpdir(), 'waybench-layer-'))
    try {
      const { lophine } = Object.fromEntries(bundled().library.transformations)
      const mine = {
        ...lophine,
        yieldPercent: { low: 10, typical: 20, high: 30 },
        sources: [{ citation: 'own bench, page 3', for: 'yield', checked: true }, ...lophine!.sources],
      }
      const file = join(folder, 'mine.json')
      const { transformations, ...others } = JSON.parse(own)
      // Benzaldehyde, Annex VI of Regulation (EC) 1272/2008: H302, H332.
      const aldehyde = bundled().library.materials.get('benzaldehyde')!
      const fewer = { codes: ['H302'], signalWord: 'Warning', from: 'label of the bottle' }
      const materials = [...others.materials, { ...aldehyde, hazards: fewer }]
      writeFileSync(
        file,
        JSON.stringify({ format: 'waybench-library', version: 1, title: 'mine', materials, transformations: [...transformations, mine] }),
      )
      const yieldOf = async (...words: string[]): Promise<number> =>
        (await waybenchJson(['plan', '--from', 'benzil', '--to', 'lophine', '--have', '5 g', '--steps', 'lophine', ...words])).json.steps[0]
          .yieldFraction.typical
      const beneath = await yieldOf()
      expect(beneath).toBeCloseTo(lophine!.yieldPercent.typical / 100, 9)
      expect(await yieldOf('--own', file)).toBeCloseTo(0.2, 9)
      expect(await yieldOf()).toBe(beneath)
      // What it stands in place of is told by the text, by the printed pack and to programs alike; nothing of it without --own.
      const words = ['plan', '--from', 'benzil', '--to', 'lophine', '--have', '5 g', '--steps', 'lophine']
      const over = `own bench, in place of ${lophine!.yieldPercent.typical}\u00a0%`
      const told = await waybench([...words, '--own', file, '--print', 'pack.html'])
      const line = told.out.replace(/\s*\n\s*/g, ' ')
      expect(line).toContain(over)
      expect(told.files.get('pack.html')!.match(new RegExp(over, 'g'))!.length).toBeGreaterThan(1)
      expect((await waybenchJson([...words, '--own', file])).json.beneath).toMatchObject({
        yields: { lophine: lophine!.yieldPercent.typical },
        materials: { benzaldehyde: [expect.stringMatching(/^hazards: H302, H332, .*→ H302, W/)] },
      })
      expect(line).toContain('Own record, in place of the bundled one: hazards: ')
      expect(told.files.get('pack.html')).toContain('Own record, in place of the bundled one: hazards: ')
      expect((await waybench(words)).out).not.toContain('in place of')
      // What is new leads on from what the library holds.
      const routes = await waybenchJson(['routes', '--from', 'own-bromobenzil', '--to', 'own-quinoxaline', '--own', file])
      expect(routes.json.routes[0].steps).toEqual(['own-step'])
      const checked = await waybenchJson(['check', file, '--over'])
      expect(checked.json.rows.map((row: { id: string; change: string }) => `${row.id} ${row.change}`)).toEqual([
        'benzaldehyde overrides',
        'own-bromobenzil added',
        'own-quinoxaline added',
        'lophine overrides',
        'own-step added',
      ])
      expect(checked.json.warnings.map((one: { what: string }) => one.what)).toContain(
        'benzaldehyde: fewer hazards than the record it stands in place of: H332 is gone.',
      )
      expect((await waybench(['check', file, '--over'])).out).toMatch(
        /in place of the one beneath: .*yield: .*typically 90 .*→ 10–30\u00a0%, typically 20 \(own bench\)/,
      )
      // Saved through the page, and read by the command line out of its folder.
      const { testApp } = await import('../../support/app.ts')
      const data = join(folder, 'data')
      const app = await testApp(data)
      const saved = await app.inject({ method: 'POST', url: '/api/v1/own-library', payload: { onVersion: 0, transformations: [mine] } })
      expect(saved.statusCode).toBe(201)
      await app.close()
      expect(await yieldOf('--own', data)).toBeCloseTo(0.2, 9)
      // A stop is one by this door too.
      const agent = { ...materials[0], id: 'own-agent', name: 'own agent', formula: 'C4H8Cl2S', smiles: 'ClCCSCCCl' }
      writeFileSync(
        file,
        JSON.stringify({ format: 'waybench-library', version: 1, title: 'mine', materials: [agent], transformations: [] }),
      )
      expect((await waybench(['reach', '--from', 'benzoin', '--own', file])).code).toBe(1)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })

  it('filters weak spots by how sure they are', async () => {
    const all = (await waybenchJson(['check', 'bundled', '--weak'])).json.weak as { trust: string }[]
    const unseen = (await waybenchJson(['check', 'bundled', '--weak', '--trust', 'not seen'])).json.weak
    expect(unseen).toEqual(all.filter(spot => spot.trust !== 'seen'))
    for (const trust of ['unknown', 'remembered', 'seen']) {
      const { json } = await waybenchJson(['check', 'bundled', '--weak', '--trust', trust])
      expect(json.weak.length, trust).toBeGreaterThan(0)
      expect(json.weak).toEqual(all.filter(spot => spot.trust === trust))
    }
    const refused = await waybenchJson(['check', 'bundled', '--weak', '--trust', 'sure'])
    expect([refused.code, refused.problems[0].where[1]]).toEqual([2, '--trust'])
  })

  it('tells how sure each figure of a plan is, in JSON and in print', async () => {
    const files = new Map<string, string>()
    const { json } = await waybenchJson(['plan', '--from', 'benzoin', '--to', 'lophine', '--have', '5 g', '--print', 'plan.txt'], files)
    expect(json.trust.steps.map((step: { transformation: string }) => step.transformation)).toEqual(
      json.steps.map((step: { transformation: string }) => step.transformation),
    )
    for (const { figures } of [...json.trust.steps, ...json.trust.materials])
      for (const { trust } of figures) expect(['seen', 'remembered', 'own bench', 'unknown']).toContain(trust)
    // The hazard list knows the same three states by its own rules; what common practice assigns is told as remembered.
    const told = ({ known, from }: { known: string; from: string | null }): string =>
      known === 'seen' && from?.startsWith('common practice') === true ? 'remembered' : known
    type Listed = { material: string; known: string; from: string | null }
    const known = new Map(json.hazards.materials.map((one: Listed) => [one.material, told(one)]))
    let compared = 0
    for (const { material, figures } of json.trust.materials) {
      const { trust } = figures.find((one: { figure: string }) => one.figure === 'hazards')
      if (!known.has(material)) continue
      expect(trust, material).toBe(known.get(material))
      compared++
    }
    expect(compared).toBeGreaterThanOrEqual(5)
    for (const [at, { charges }] of json.trust.steps.entries())
      expect(charges.map((one: { material: string }) => one.material)).toEqual(
        json.steps[at].charges.map((one: { material: string }) => one.material),
      )
    expect(files.get('plan.txt')).toMatch(/how sure: Charges, yield, [a-z ,]+: seen\./)
    expect(files.get('plan.txt')).toMatch(/Times: estimated\./)
  })

  it('lists the figures that a plan rests on, and counts prices without a source', async () => {
    const files = new Map<string, string>()
    const words = ['plan', '--from', 'benzoin', '--to', 'lophine', '--have', '5 g', '--packs', 'demo']
    const { json } = await waybenchJson([...words, '--figures', 'not seen', '--save', 'plan.json'], files)
    expect(json.figures.length).toBeGreaterThan(10)
    for (const { mark } of json.figures) expect(mark).not.toBe('seen')
    expect(
      json.shopping.flatMap((line: { packs: { priceFrom: { trust: string } }[] }) => line.packs.map(pack => pack.priceFrom.trust)),
    ).toContain('invented')
    expect((await waybench([...words, '--figures', 'estimated'])).out).toMatch(/What the figures rest on[\s\S]*times .*h: estimated/)
    const refused = await waybenchJson([...words, '--figures', 'sure'])
    expect([refused.code, refused.problems[0].where[1]]).toEqual([2, '--figures'])
    const { priceFrom: _stated, ...silent } = demoParts().packs
    files.set('packs.json', JSON.stringify(silent))
    files.set('odd.json', JSON.stringify({ ...silent, priceFrom: { trust: 'certain' } }))
    const checked = await waybenchJson(['check', 'packs.json', 'plan.json'], files)
    expect(checked.json.errors).toEqual([])
    expect(checked.json.warnings.map((one: { what: string }) => one.what)).toContain(
      `${silent.packs.length} of ${silent.packs.length} prices do not say where they were got.`,
    )
    expect((await waybenchJson(['check', 'odd.json'], files)).code).toBe(2)
  })

  it('lists only ways whose yields were seen, where that is asked for', async () => {
    const { library } = bundled()
    const routesOf = async (...words: string[]): Promise<string[][]> =>
      (await waybenchJson(['routes', '--from', 'cyclohexanol', '--to', 'cyclopentanone', '--count', '100', ...words])).json.routes.map(
        (route: { steps: string[] }) => route.steps,
      )
    const isSeen = (steps: string[]): boolean =>
      steps.map(id => library.transformations.get(id)!).every(one => one.confidence === 'checked' && one.yieldPercent.from !== 'memory')
    const all = await routesOf()
    const seen = await routesOf('--seen-only')
    expect(seen).toEqual(all.filter(isSeen))
    expect(seen.length).toBeGreaterThan(0)
    expect(seen.length).toBeLessThan(all.length)
  })

  it('gives the library away in other forms and says what each cannot hold; charges as a table', async () => {
    const all = await waybench(['library', '--form', 'smi'])
    expect(all.code).toBe(0)
    expect(all.out).toMatch(/^O=Cc1ccccc1\.O=Cc1ccccc1>.*>OC\(C\(=O\)c1ccccc1\)c1ccccc1 /m)
    expect(all.err).toMatch(/^Not in it: Of the transformations, ids, kinds, .*charges but for the compounds over the arrow, yields/)
    expect((await waybench(['library', '--form', 'json'])).err).toBe('')
    const table = await waybench(['library', '--charges', 'benzoin-thiamine'])
    // The record: 60 mL of benzaldehyde and the rest of its page.
    expect(table.out).toMatch(/^step,id,material,amount,unit,per gram of product,role,at,derived,from\n/)
    expect(table.out).toMatch(/^benzoin-thiamine,benzaldehyde,benzaldehyde,60,mL,,substrate,,,$/m)
    expect(table.err).toMatch(/^Not in it: Of the transformations, names, .*, tasks, .*all of these stay there as they are\.$/m)
    expect((await waybench(['library', '--charges', 'benzoin-thiamine', '--form', 'tsv'])).out).toMatch(
      /^benzoin-thiamine\tbenzaldehyde\tbenzaldehyde\t60\tmL\t\tsubstrate\t\t\t$/m,
    )
    // Read back, it changes what was changed in it, and all else of the step stays.
    const folder = mkdtempSync(join(tmpdir(), 'waybench-charges-'))
    writeFileSync(join(folder, 'charges.csv'), table.out.replace(',60,mL,', ',30,mL,').replace('substrate,,', 'substrate,vessel,yes'))
    const over = await waybenchJson(['check', join(folder, 'charges.csv'), '--over'])
    expect(over.json.rows).toMatchObject([{ id: 'benzoin-thiamine', change: 'overrides', fields: [{ key: 'charge' }] }])
    expect(over.json.rows[0].fields).toHaveLength(1)
    expect(over.json.rows[0].fields[0].now[0]).toEqual({
      ...{ material: 'benzaldehyde', role: 'substrate', amount: 30, unit: 'mL' },
      ...{ at: 'vessel', derived: true },
    })
    rmSync(folder, { recursive: true })
    for (const [words, where] of [
      [['--form', 'xls'], '--form'],
      [['--charges', 'benzoin-thiamin'], '--charges'],
      [['--charges', 'benzoin-thiamine', '--form', 'rxn'], '--form'],
    ] as const) {
      const refused = await waybenchJson(['library', ...words])
      expect([refused.code, refused.problems[0].where[1]], words.join(' ')).toEqual([2, where])
    }
  })

  it('own: shows what files would change, saves all of it or nothing, and takes it back', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'waybench-own-'))
    const data = join(folder, 'data')
    try {
      const table = 'id,name,kind,form,smiles,sources\nown-ester,own ester,compound,liquid,CCCCCCOC(=O)CCC,notebook\n'
      const bad = table.replace('liquid', 'runny')
      const run = (words: readonly string[], text = table) => waybenchJson(['own', ...words, '--data', data], new Map([['mine.csv', text]]))
      const shown = await run(['mine.csv'])
      expect([shown.code, shown.json.saved, shown.json.rows[0].change]).toEqual([0, null, 'added'])
      expect(existsSync(data)).toBe(false)
      const refused = await run(['mine.csv', '--save'], bad)
      expect([refused.code, refused.json.saved, refused.json.refused[0].where.at(-1)]).toEqual([2, null, 'form'])
      // Equations alone are no records, in whatever form: what to do with them is said, not what a table would want.
      for (const text of ['[CH3][CH2]O>>CC=O mapped\n', 'CCO>>CC=O one\nCCO>>C=C.O two\n', '$RXN\n\n\n\n  0  0\n'])
        expect((await run(['mine.csv'], text)).problems.map((one: { code: string }) => one.code)).toEqual(['file-of-equations'])
      expect((await run(['mine.csv', '--save'])).json.saved).toMatchObject({ version: 1 })
      // Another program on the same folder has it.
      const found = await waybenchJson(['library', '--own', data])
      expect(found.json.materials.filter((one: { id: string }) => one.id === 'own-ester')).toHaveLength(1)
      expect((await run(['mine.csv'])).json.rows[0].change).toBe('same')
      expect((await run(['--undo'])).json.saved).toMatchObject({ version: 2, undoes: 1 })
      expect((await run(['mine.csv'])).json.rows[0].change).toBe('added')
      expect((await run(['--undo'])).problems[0].code).toBe('nothing-to-undo')
      expect((await run(['--undo', 'mine.csv'])).problems[0].where).toContain('--undo')
    } finally {
      rmSync(folder, { recursive: true })
    }
  })

  it('read: tells every reaction of a file, the bad ones with their numbers', async () => {
    // C4H8O2 + H2O from ethanol and acetic acid; the salt is held together by its group.
    const text = 'CCO.CC(=O)O>>CCOC(C)=O.O ester\nC(>>CC bad\n[Na+].[Cl-].O>>O.[Na+].[Cl-] |f:0.1,4.5| salt\n'
    const { code, json } = await waybenchJson(['read', 'some.smi'], new Map([['some.smi', text]]))
    expect(code).toBe(2)
    expect(json.reactions.map((one: { balanced: boolean; problems: unknown[] }) => [one.balanced, one.problems.length])).toEqual([
      [true, 0],
      [false, 1],
      [true, 0],
    ])
    expect(json.reactions[2].read.equation).toBe('sodium chloride + water -> water + sodium chloride')
  })

  it('keeps what a reaction SMILES has over its arrow as charges to be completed', async () => {
    const over = 'O=Cc1ccccc1.O=Cc1ccccc1>CCO.C1CCOC1CCCN>OC(C(=O)c1ccccc1)c1ccccc1'
    const told = async (text: string) => JSON.parse((await waybench(['read', '-', '--json'], new Map(), text)).out)
    const read = await told(`${over}\n60 mL benzaldehyde`)
    expect(read.transformation.charge).toContainEqual({ material: 'ethanol', role: 'other', amount: null, unit: 'mL' })
    expect(read.notes.join(' ')).toMatch(/ethanol stands over the arrow: its amount is still to be given/)
    // What the library does not hold is kept as it stands.
    expect(read.unread).toContain('C1CCOC1CCCN')
    // A line that gives the amount is that charge; it is not counted twice.
    const given = await told(`${over}\n60 mL benzaldehyde\n120 mL ethanol {ethanol}`)
    expect(given.lines.filter((line: { material: string }) => line.material === 'ethanol')).toHaveLength(1)
    expect(given.transformation.charge).toContainEqual({ material: 'ethanol', role: 'solvent', amount: 120, unit: 'mL' })
  })

  it('takes an id in braces as exact', async () => {
    const text =
      'benzoin + acetic anhydride -> benzoin acetate + acetic acid\n21.2 g benzoin\n20 mL acetic anhydride\n1 mL HCl {hydrochloric-acid-conc}'
    const { code, out } = await waybench(['read', '-', '--json'], new Map(), text)
    expect(code).toBe(0)
    const read = JSON.parse(out)
    expect(read.problems).toEqual([])
    expect(read.lines[2]).toMatchObject({ text: '1 mL HCl {hydrochloric-acid-conc}', material: 'hydrochloric-acid-conc' })
  })

  it('reckons a plan whose records the library does not hold with those it brings, and says so', async () => {
    // The loader reads real files; here the records are handed in through a plan that was saved where they were known.
    const { testApp } = await import('../../support/app.ts')
    const app = await testApp()
    const { materials, transformations } = JSON.parse(own)
    const post = async (path: string, payload: object) => (await app.inject({ method: 'POST', url: `/api/v1/${path}`, payload })).json()
    await post('own-library', { onVersion: 0, materials, transformations })
    const { library, hash } = await post('slice', { routes: [['own-step']], materials: [] })
    const files = new Map<string, string>()
    // A plan made at the command line gives the settings; its route and start are then the own ones.
    await waybench(['plan', '--from', 'benzoin', '--to', 'benzil', '--have', '5 g', '--save', 'plan.json'], files)
    const plan = JSON.parse(files.get('plan.json')!)
    const route = { start: 'own-bromobenzil', target: 'own-quinoxaline', steps: [{ transformation: 'own-step', makes: 'own-quinoxaline' }] }
    const moved = {
      ...plan,
      start: { material: 'own-bromobenzil', massG: 2.89 },
      goals: [{ target: 'own-quinoxaline', amount: { kind: 'rest' }, route }],
      library: { title: library.title, hash },
      slice: library,
    }
    files.set('moved.json', JSON.stringify(moved))
    const { code, json } = await waybenchJson(['plan', 'moved.json'], files)
    expect(code).toBe(0)
    // 2.89 g / 289.13 g/mol x 0.80 x 361.24 g/mol = 2.889 g.
    expect(json.goals[0].expectedG).toBeCloseTo(2.889, 2)
    expect(json.changes.map((one: { code: string }) => one.code)).toContain('record-gone')

    // Its bench log and the ways on know the same records; a run at 60 % leaves 0.60 x 3.611 g = 2.167 g.
    const logged = await waybenchJson(['log', 'moved.json', '--step', 'own-step', '--weighed', '2.167 g'], files)
    expect(logged.problems).toBeNull()
    expect(logged.json.compared.yieldFraction).toBeCloseTo(0.6, 3)
    expect(logged.json.changes.map((one: { code: string }) => one.code)).toContain('record-gone')
    const ways = await waybenchJson(['replan', 'moved.json'], files)
    expect(ways.code).toBe(0)
    expect(ways.json.ways.find((way: { way: string }) => way.way === 'repeat').evaluation.goals[0].expectedG).toBeGreaterThan(0)
    expect(ways.json.changes.map((one: { code: string }) => one.code)).toContain('record-gone')
    expect((await waybenchJson(['check', 'moved.json'], files)).json.errors).toEqual([])
    await app.close()
  })

  it('goes by the records a plan was saved with where it is told to, and remembers it', async () => {
    const files = new Map<string, string>()
    await waybench(['plan', '--from', 'benzoin', '--to', 'benzil', '--have', '5 g', '--save', 'plan.json'], files)
    const plan = JSON.parse(files.get('plan.json')!)
    // The library of then: the same step at other yields.
    const [step] = plan.slice.transformations
    const typical = step.yieldPercent.typical
    step.yieldPercent = { low: 10, typical: 20, high: 30 }
    files.set('then.json', JSON.stringify({ ...plan, library: { title: 'then', hash: '0'.repeat(64) } }))
    const expectedG = async (...words: string[]): Promise<number> => {
      const { json, problems } = await waybenchJson(['plan', ...words], files)
      expect(problems).toBeNull()
      expect(json.changes).toEqual([expect.objectContaining({ code: 'record-changed', where: ['transformations', step.id] })])
      return json.goals[0].expectedG
    }
    const now = await expectedG('then.json')
    const then = await expectedG('then.json', '--records', 'old', '--save', 'kept.json')
    // One step: what comes out is in the ratio of its yields.
    expect(then / now).toBeCloseTo(20 / typical, 6)
    expect(await expectedG('kept.json')).toBe(then)
    expect((await waybench(['plan', 'kept.json', '--print', 'kept.txt'], files)).out).toMatch(/keeps the record it was saved with/)
    expect(files.get('kept.txt')).toMatch(/keeps the record it was saved with/)
    await waybench(['plan', 'then.json', '--print', 'then.html'], files)
    expect(files.get('then.html')).toMatch(
      /The library here differs from what this plan was saved with, and the figures here are the new ones/,
    )
    expect(await expectedG('kept.json', '--records', 'new')).toBe(now)
    for (const words of [
      ['kept.json', '--records', 'mine'],
      ['--from', 'benzoin', '--to', 'benzil', '--have', '5 g', '--records', 'old'],
    ]) {
      const refused = await waybenchJson(['plan', ...words], files)
      expect([refused.code, refused.problems[0].where[1]]).toEqual([2, '--records'])
    }
  })

  it('refuses a seed that no draw can have, and says which will do', async () => {
    const files = new Map<string, string>()
    await waybench(['plan', '--from', 'benzoin', '--to', 'benzil', '--have', '5 g', '--save', 'plan.json'], files)
    for (const [seed, cure] of [
      [-1, /not below 0/],
      [1.5, /whole number/],
      [2 ** 32, /not above 4294967295/],
    ] as const) {
      files.set('odd.json', JSON.stringify({ ...JSON.parse(files.get('plan.json')!), seed }))
      const { code, problems } = await waybenchJson(['plan', 'odd.json'], files)
      expect(code).toBe(2)
      expect(problems[0].where).toEqual(['odd.json', 'seed'])
      expect(problems[0].cure).toMatch(cure)
    }
  })

  it.each([
    ['serve', '--port', '0'],
    ['check', 'bundled', '--weak'],
  ])('%s: a data folder that cannot be used is refused in words', async (...words) => {
    for (const folder of ['', '/proc/none', 'package.json', '/proc/version/data']) {
      const { code, problems } = await waybenchJson([...words, '--data', folder])
      expect([code, problems?.[0]?.where[1]], folder).toEqual([2, '--data'])
      expect(problems[0].what).not.toMatch(/\bE[A-Z]{3,}\b/)
      expect(problems[0].cure).toMatch(/[Nn]ame/)
    }
  })
})
