import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { bundled } from '../../../server/library/bundled.ts'
import { testApp } from '../../support/app.ts'
import { plainStep } from '../../support/plain-step.ts'

const bromobenzil = {
  id: '4-bromobenzil',
  name: '4-bromobenzil',
  kind: 'compound',
  formula: 'C14H9BrO2',
  smiles: 'O=C(c1ccccc1)C(=O)c1ccc(Br)cc1',
  form: 'solid',
  sources: [{ citation: 'own bench', checked: true }],
}
const quinoxaline = {
  id: 'bromo-quinoxaline',
  name: '2-(4-bromophenyl)-3-phenylquinoxaline',
  kind: 'compound',
  formula: 'C20H13BrN2',
  smiles: 'Brc1ccc(cc1)-c1nc2ccccc2nc1-c1ccccc1',
  form: 'solid',
  sources: [{ citation: 'own bench', checked: true }],
}
const step = {
  id: 'bromo-quinoxaline-step',
  name: 'bromo quinoxaline in warm ethanol',
  ...plainStep,
  reactants: [
    { compound: '4-bromobenzil', coefficient: 1 },
    { compound: 'o-phenylenediamine', coefficient: 1 },
  ],
  products: [
    { compound: 'bromo-quinoxaline', coefficient: 1 },
    { compound: 'water', coefficient: 2 },
  ],
  mainProduct: 'bromo-quinoxaline',
  limiting: '4-bromobenzil',
  charge: [
    { material: '4-bromobenzil', role: 'substrate', amount: 2.89, unit: 'g' },
    { material: 'o-phenylenediamine', role: 'reagent', amount: 1.1, unit: 'g' },
  ],
  yieldPercent: { low: 70, typical: 85, high: 92 },
  elapsedHours: 2,
  sources: [{ citation: 'own bench, December', checked: true }],
}

let folder: string
let app: Awaited<ReturnType<typeof testApp>>
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'waybench-own-'))
})
beforeEach(async () => {
  app = await testApp()
  return () => app.close()
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const post = async (path: string, payload: object) => {
  const reply = await app.inject({ method: 'POST', url: `/api/v1/${path}`, payload })
  return { status: reply.statusCode, body: reply.json() }
}
const get = async (path: string) => (await app.inject({ url: `/api/v1/${path}` })).json()
const codes = (body: { problems?: { code: string }[]; refused?: { code: string }[] }) =>
  (body.problems ?? body.refused ?? []).map(p => p.code)

describe('the bench own library', () => {
  it('warns of a new material that would share its name with another, by every door', async () => {
    const named = async (name: string): Promise<string[]> =>
      (await post('own-library/check', { materials: [{ ...bromobenzil, name }] })).body.warnings.map((one: { code: string }) => one.code)
    expect(await named('Acetone')).toContain('name-taken')
    // A synonym of the same (IUPAC name of acetone).
    expect(await named('propanone')).toContain('name-taken')
    expect(await named('4-bromobenzil')).not.toContain('name-taken')
  })

  it('warns of other names, and of a new name for a record that is there, that another is called by', async () => {
    const told = async (...materials: object[]) =>
      (await post('own-library/check', { materials })).body.warnings
        .filter((one: { code: string }) => one.code === 'name-taken')
        .map((one: { where: string[] }) => one.where.slice(1))
    expect(await told({ ...bromobenzil, synonyms: ['PhCHO', 'Benzaldehyde', 'bromo benzil of ours'] })).toEqual([
      [bromobenzil.id, 'synonyms'],
      [bromobenzil.id, 'synonyms'],
    ])
    expect(await told({ ...bromobenzil, synonyms: ['shared'] }, { ...quinoxaline, synonyms: ['Shared'] })).toEqual([
      [quinoxaline.id, 'synonyms'],
    ])
    const table = { files: [{ name: 'mine.csv', text: 'id,name\nbenzaldehyde,acetone\n' }] }
    const renamed = (await post('own-library/check', table)).body.warnings
    expect(renamed).toMatchObject([{ code: 'name-taken', where: ['materials', 'benzaldehyde', 'name'] }])
    expect(
      (await post('own-library/check', { files: [{ name: 'm.csv', text: 'id,name\nbenzaldehyde,oil of ours\n' }] })).body.warnings,
    ).toEqual([])
  })

  it('warns of a structure that is another than before, and not of the same one written otherwise', async () => {
    const record = bundled().library.materials.get('carvone')!
    const text = record.smiles!
    expect(record.name).toBe('(R)-(-)-carvone')
    const told = async (smiles: string) =>
      (await post('own-library/check', { materials: [{ ...record, smiles }] })).body.warnings
        .filter((one: { code: string }) => one.code === 'structure-changed')
        .map((one: { what: string }) => one.what.replace(/^.*: /, ''))
    const mirrored = text.includes('@@') ? text.replace('@@', '@') : text.replace('@', '@@')
    expect(await told(mirrored)).toEqual(['the new one is its mirror image, the other hand.'])
    const flat = text.replace(/\[C@+H?\]/, 'C')
    expect(await told(flat)).toEqual(['the new one leaves open hands or double bonds that are stated in the old one.'])
    expect(await told('CC(=O)C')).toEqual(['other atoms.'])
    expect(await told(text)).toEqual([])
    // The mirror image is held by itself.
    const { warnings } = (await post('own-library/check', { materials: [{ ...record, smiles: mirrored }] })).body
    expect(warnings.find((one: { code: string }) => one.code === 'structure-twice').what).toMatch(
      /\(s-carvone\), which is there already\.$/,
    )
  })

  it('warns of two new materials of one name, or of one structure, in one file, with both ids', async () => {
    const told = async (...materials: object[]) =>
      (await post('own-library/check', { materials })).body.warnings
        .filter((one: { code: string }) => /^(name-taken|structure-twice)$/.test(one.code))
        .map(({ code, where, what }: { code: string; where: string[]; what: string }) => [
          code,
          where[1],
          /\(([a-z0-9-]+)\)[^(]*$/.exec(what)?.[1],
        ])
    // Two spellings of one name.
    expect(await told(bromobenzil, { ...quinoxaline, name: '4‑Bromobenzil' })).toEqual([['name-taken', quinoxaline.id, bromobenzil.id]])
    // 4-bromobenzil written from its other end; acetone (SMILES of CAS 67-64-1) is in the library.
    const again = { ...bromobenzil, id: 'again', name: 'another', smiles: 'c1cc(Br)ccc1C(=O)C(=O)c1ccccc1' }
    expect(await told(bromobenzil, again)).toEqual([['structure-twice', 'again', bromobenzil.id]])
    expect(await told({ ...again, formula: 'C3H6O', smiles: 'O=C(C)C' })).toEqual([['structure-twice', 'again', 'acetone']])
    // The isomer with the bromine at another place is another compound.
    expect(await told(bromobenzil, { ...again, smiles: 'O=C(c1ccccc1)C(=O)c1cccc(Br)c1' })).toEqual([])
  })

  it('warns of figures that change while their sources stay, by every door, and saves them as remembered', async () => {
    const benzoin = await get('transformations/benzoin-thiamine')
    const mine = { ...benzoin, yieldPercent: { ...benzoin.yieldPercent, typical: benzoin.yieldPercent.typical + 2 } }
    const { warnings, rows } = (await post('own-library/check', { transformations: [mine] })).body
    expect(warnings).toMatchObject([{ code: 'changed-without-source', where: ['transformations', benzoin.id, 'sources'] }])
    expect(rows[0].fields.map((one: { key: string }) => one.key).sort()).toEqual(['sources', 'yieldPercent'])
    expect((await post('own-library', { onVersion: 0, transformations: [mine] })).status).toBe(201)
    const kept = await get('transformations/benzoin-thiamine')
    expect(kept.yieldPercent).toMatchObject({ typical: mine.yieldPercent.typical, from: 'changed without a source that was read' })
    // As its cure says: with a source of its own it is seen.
    const sourced = { ...mine, sources: [{ citation: 'another book', for: 'yield', checked: true }, ...mine.sources] }
    expect((await post('own-library/check', { transformations: [sourced] })).body.warnings).toEqual([])
  })

  it('tells what would happen and changes nothing', async () => {
    const trial = await post('own-library/check', { materials: [bromobenzil, quinoxaline], transformations: [step] })
    expect(trial.body.refused).toEqual([])
    expect(trial.body.rows.map((row: { id: string; change: string }) => [row.id, row.change])).toEqual([
      ['4-bromobenzil', 'added'],
      ['bromo-quinoxaline', 'added'],
      ['bromo-quinoxaline-step', 'added'],
    ])
    expect((await get('own-library')).version).toBe(0)
    expect((await get('materials?q=4-bromobenzil')).materials).toEqual([])
  })

  it('warns before a record empties the hazards of the one beneath, and tells the difference in words', async () => {
    // Acetone, Annex VI of Regulation (EC) 1272/2008: H225, H319, H336, danger.
    const file = (text: string) => ({ files: [{ name: 'mine.csv', text }] })
    const emptied = await post('own-library/check', file('id,name,hazard codes\nacetone,acetone,\n'))
    expect(emptied.body.refused).toEqual([])
    expect(emptied.body.warnings[0]).toMatchObject({ code: 'hazards-become-unknown', where: ['materials', 'acetone'] })
    const told = emptied.body.rows[0].fields.find((field: { key: string }) => field.key === 'hazards').text
    expect(told).toMatch(/^hazards: H225, H336, H319, EUH066, Danger \(EU Annex VI\) → not stated$/)
    // Without those columns they stay.
    const kept = await post('own-library/check', file('id,name,density\nacetone,acetone,0.79\n'))
    expect(kept.body.warnings.filter((one: { code: string }) => one.code === 'hazards-become-unknown')).toEqual([])
  })

  it('is planned with once saved, and gone once taken back', async () => {
    const saved = await post('own-library', { onVersion: 0, what: 'three', materials: [bromobenzil, quinoxaline], transformations: [step] })
    expect(saved.status).toBe(201)
    const routes = await post('routes', { from: '4-bromobenzil', to: 'bromo-quinoxaline' })
    expect(routes.body.routes[0]).toMatchObject({ steps: ['bromo-quinoxaline-step'], overallYieldOnStart: 0.85 })
    const undone = await post('own-library/undo', { onVersion: 1 })
    expect(undone.body).toMatchObject({ version: 2, undoes: 1 })
    expect((await post('routes', { from: '4-bromobenzil', to: 'bromo-quinoxaline' })).status).toBe(400)
    expect((await get('own-library')).history).toHaveLength(2)
    expect((await post('own-library/undo', { onVersion: 2 })).status).toBe(404)
  })

  it('takes back save after save, newest first, to just what stood before', async () => {
    await post('own-library', { onVersion: 0, materials: [bromobenzil] })
    const before = await get('own-library')
    await post('own-library', { onVersion: 1, materials: [{ ...bromobenzil, meltingC: 87 }] })
    await post('own-library', { onVersion: 2, removeMaterials: ['4-bromobenzil'] })
    expect((await get('own-library')).materials).toEqual([])
    await post('own-library/undo', { onVersion: 3 })
    expect((await get('own-library')).materials[0].meltingC).toBe(87)
    await post('own-library/undo', { onVersion: 4 })
    expect((await get('own-library')).materials).toEqual(before.materials)
    await post('own-library/undo', { onVersion: 5 })
    expect((await get('own-library')).materials).toEqual([])
  })

  it('overrides a bundled yield without touching it, and shows the difference', async () => {
    const { library } = await post('slice', { routes: [['benzil-copper-ammonium-nitrate']] }).then(reply => reply.body)
    const bundled = library.transformations[0]
    const own = { ...bundled, yieldPercent: { low: 60, typical: 70, high: 80, from: 'own bench' } }
    const trial = await post('own-library/check', { transformations: [own] })
    expect(trial.body.rows).toEqual([
      {
        list: 'transformations',
        id: bundled.id,
        name: bundled.name,
        change: 'overrides',
        fields: [
          {
            key: 'yieldPercent',
            before: bundled.yieldPercent,
            now: own.yieldPercent,
            text: expect.stringMatching(/^yield: .*typically 91 .* → 60–80\u00a0%, typically 70 \(own bench\)$/),
          },
        ],
      },
    ])
    await post('own-library', { onVersion: 0, transformations: [own] })
    const routes = await post('routes', { from: 'benzoin', to: 'benzil', count: 20 })
    const row = routes.body.routes.find((one: { steps: string[] }) => one.steps[0] === bundled.id)
    expect(row.overallYieldOnStart).toBeCloseTo(0.7, 9)
    expect((await get('own-library')).overrides).toHaveLength(1)
    const { beneath } = (await post('slice', { routes: [[bundled.id, 'lophine']] })).body
    expect(beneath).toEqual({ [bundled.id]: bundled.yieldPercent.typical })
    await post('own-library/undo', { onVersion: 1 })
    const again = await post('routes', { from: 'benzoin', to: 'benzil', count: 20 })
    const typical = bundled.yieldPercent.typical / 100
    expect(again.body.routes.find((one: { steps: string[] }) => one.steps[0] === bundled.id).overallYieldOnStart).toBeCloseTo(typical, 9)
  })

  it('refuses all where one record is wrong, says why and how to mend it', async () => {
    const unbalanced = { ...step, products: [{ compound: 'bromo-quinoxaline', coefficient: 1 }] }
    const refused = await post('own-library', { onVersion: 0, materials: [bromobenzil, quinoxaline], transformations: [unbalanced] })
    expect(refused.status).toBe(400)
    expect(codes(refused.body)).toContain('equation-unbalanced')
    for (const problem of refused.body.problems) expect(problem.cure).not.toBe('')
    expect((await get('own-library')).version).toBe(0)
  })

  it('refuses a bundled material changed so that bundled equations no longer balance', async () => {
    const { library } = await post('slice', { routes: [], materials: ['benzil'] }).then(reply => reply.body)
    const { smiles: _smiles, ...benzil } = library.materials.find((one: { id: string }) => one.id === 'benzil')
    const trial = await post('own-library/check', { materials: [{ ...benzil, formula: 'C14H12O2' }] })
    expect(codes(trial.body)).toContain('equation-unbalanced')
  })

  it('refuses a formula that is not that of the structure', async () => {
    const trial = await post('own-library/check', { materials: [{ ...bromobenzil, formula: 'C14H10O2' }] })
    expect(codes(trial.body).length).toBeGreaterThan(0)
  })

  it('refuses a stop substance by structure, by CAS number and by name, and a step that holds one', async () => {
    // Convention on the Prohibition of Chemical Weapons (1993), Annex on Chemicals, Schedule 1, A(4): sulfur mustards.
    const mustard = { ...bromobenzil, id: 'my-own', name: 'my own', formula: 'C4H8Cl2S', smiles: 'ClCCSCCCl' }
    const { smiles: _smiles, ...withoutStructure } = mustard
    for (const material of [mustard, { ...withoutStructure, cas: '505-60-2' }, { ...withoutStructure, name: 'mustard gas' }]) {
      const reply = await post('own-library', { onVersion: 0, materials: [material] })
      expect(reply.status, material.name).toBe(400)
      expect(codes(reply.body)).toContain('stopped')
    }
    const givingOff = { ...step, gasEvolved: [{ compound: 'my-own', perMolLimiting: 1 }] }
    const trial = await post('own-library/check', { materials: [bromobenzil, quinoxaline, mustard], transformations: [givingOff] })
    expect(codes(trial.body)).toContain('stopped')
    expect((await get('own-library')).version).toBe(0)
  })

  it('warns of a material that no list can be searched for', async () => {
    const { smiles: _smiles, ...bare } = bromobenzil
    const trial = await post('own-library/check', { materials: [bare] })
    expect(trial.body.warnings.map((one: { code: string }) => one.code)).toContain('not-screened')
  })

  it('refuses a save on top of another hand', async () => {
    await post('own-library', { onVersion: 0, materials: [bromobenzil] })
    const late = await post('own-library', { onVersion: 0, materials: [quinoxaline] })
    expect(late.status).toBe(409)
    expect(codes(late.body)).toEqual(['own-library-changed'])
  })

  it('is there after a restart, and seen by another program on the same folder', async () => {
    const first = await testApp(folder)
    const second = await testApp(folder)
    const url = '/api/v1/own-library'
    await first.inject({ method: 'POST', url, payload: { onVersion: 0, materials: [bromobenzil] } })
    expect((await second.inject({ url: '/api/v1/materials?q=4-bromobenzil' })).json().materials).toHaveLength(1)
    await first.close()
    await second.close()
    const third = await testApp(folder)
    expect((await third.inject({ url })).json()).toMatchObject({ version: 1, materials: [bromobenzil] })
    await third.close()
  })
})
