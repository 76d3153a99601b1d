import { describe, expect, it } from 'vitest'
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
      kind: 'reaction',
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
      operations: [],
      equipment: [],
      atmosphere: 'air',
      needsHood: false,
      exotherm: 'none',
      gasEvolved: [],
      hazardNotes: [],
      sources: source,
      confidence: 'checked',
    },
  ],
})

describe('the command line on own records', () => {
  it('tells where the bundled library is weak', async () => {
    const { code, json } = await waybenchJson(['check', 'bundled', '--weak'])
    expect(code).toBe(0)
    const kinds = new Set(json.weak.map((spot: { kind: string }) => spot.kind))
    expect([...kinds].sort()).toEqual(['estimated times', 'hazards unknown', 'no density', 'remembered yield', 'single-source yield'])
    for (const spot of json.weak) expect(spot.cure).not.toBe('')
    expect((await waybench(['check', 'bundled', '--weak'])).out).toMatch(/weak spots; what was never run here is told with --data/)
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
    await app.close()
  })
})
