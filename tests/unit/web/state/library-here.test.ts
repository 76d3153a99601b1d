import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Turns } from '../../../../core/choose/in-turns.ts'
import { axes } from '../../../../core/plan/choosing.ts'
import { settingsSchema } from '../../../../core/plan/settings.ts'
import type { App } from '../../../../server/app.ts'
import { openWorkshop } from '../../../../server/library/workshop.ts'
import { loadSolver } from '../../../../server/solver/highs.ts'
import { type LibraryHere, libraryHere, type SearchAsked, searchHere } from '../../../../web/state/library-here.ts'
import { testApp } from '../../../support/app.ts'
import { sfc32 } from '../../../support/networks/sfc32.ts'

/** What the worker does with what the server hands out, without the worker. */
async function fetched(app: App): Promise<LibraryHere> {
  const here = libraryHere((await app.inject({ url: '/api/v1/library' })).json())
  if (here === null) throw new Error('the library was not handed out')
  return here
}

const turns: Turns = { pause: () => null, check: () => {}, solve: async model => (await loadSolver())(model) }

async function searched(here: LibraryHere, asked: SearchAsked, shouldStop = () => false) {
  const search = searchHere(here, asked, shouldStop, turns)
  for (let step = await search.next(); ; step = await search.next()) if (step.done) return JSON.parse(JSON.stringify(step.value))
}

type Query = Extract<SearchAsked, { what: 'routes' }>['query']
const onServer = async (app: App, query: Query) => (await app.inject({ method: 'POST', url: '/api/v1/routes', payload: query })).json()

/** The answer of the worker as the server words it. */
const inHere = async (here: LibraryHere, query: Query) => {
  const answer = await searched(here, { what: 'routes', query })
  return answer.ok ? answer.value : { problems: answer.problems }
}

const plain: Omit<Query, 'from' | 'to'> = {
  by: 'start',
  avoid: [],
  avoidStep: [],
  mustPass: [],
  avoidCode: [],
  avoidList: [],
  ownedOnly: false,
  seenOnly: false,
  make: [],
  apart: 1,
  prove: false,
  count: 24,
  settings: settingsSchema.parse({}),
  packs: null,
}

let app: App
let here: LibraryHere
beforeAll(async () => {
  app = await testApp()
  here = await fetched(app)
})
afterAll(() => app.close())

describe('the library that the page searches in', () => {
  it('answers each way in of the demo as the server does', async () => {
    const demo = (await app.inject({ url: '/api/v1/demo' })).json()
    const settings = settingsSchema.parse(demo.settings)
    let asked = 0
    for (const { start, goals = [] } of demo.waysIn) {
      for (const { target } of goals) {
        for (const more of [{}, { by: 'cost' }, { unbeaten: ['start', 'hands-on', 'hazard'] }, { make: ['all'], apart: 2 }] as const) {
          const query = { ...plain, from: start.material, to: target, settings, packs: demo.packs, ...more } as Query
          expect(await inHere(here, query)).toEqual(await onServer(app, query))
          asked++
        }
      }
      const reach = await searched(here, { what: 'reach', query: { from: start.material, maxSteps: 3 } })
      const url = `/api/v1/reach?from=${start.material}&maxSteps=3`
      expect(reach.value).toEqual((await app.inject({ url })).json())
    }
    expect(asked).toBeGreaterThanOrEqual(24)
  })

  // What the page offers is every list of the tables: none of them may be refused, also where no material of the library stands on it.
  it('avoids any list that is loaded, and refuses one that is not', async () => {
    const empty = { ...here.lists[0]!, name: 'house', fullName: 'Register that names nothing here' }
    const query: Query = { ...plain, from: 'benzoin', to: 'lophine', avoidList: [empty.fullName] }
    expect((await inHere(here, query)).problems[0].code).toBe('list-unknown')
    expect((await inHere({ ...here, lists: [...here.lists, empty] }, query)).routes.length).toBeGreaterThan(0)
    for (const avoid of [...here.lists.map(list => list.fullName), 'no such list']) {
      const avoiding = { ...query, avoidList: [avoid] }
      const answers = [await inHere(here, avoiding), await onServer(app, avoiding)]
      for (const answer of answers)
        expect((answer.problems ?? []).some((one: { code: string }) => one.code === 'list-unknown')).toBe(avoid === 'no such list')
    }
  })

  it('answers 200 seeded questions as the server does, refusals included', async () => {
    const draw = sfc32(20)
    const pick = <T>(of: readonly T[]): T => of[Math.floor(draw() * of.length)]!
    const some = <T>(of: readonly T[], chance: number): T[] => (draw() < chance ? [pick(of)] : [])
    const starts = [...here.library.users.keys()].filter(id => id !== 'water' && id !== 'oxygen')
    const materials = [...here.library.materials.keys()]
    const steps = [...here.library.transformations.keys()]
    const lists = here.lists.map(list => list.fullName)
    let withRoutes = 0
    let refused = 0
    for (let i = 0; i < 200; i++) {
      const from = pick(starts)
      const reach = await searched(here, { what: 'reach', query: { from, maxSteps: 4 } })
      const reached: string[] = reach.value?.reach.map((row: { compound: string }) => row.compound) ?? []
      const query: Query = {
        ...plain,
        from,
        to: reached.length > 0 && draw() < 0.95 ? pick(reached) : pick(materials),
        by: pick(axes),
        avoid: some(materials, 0.3),
        avoidStep: some(steps, 0.3),
        avoidCode: some(['H350', 'H314', 'H225', 'H302'], 0.25),
        avoidList: some(lists, 0.15),
        mustPass: reached.length > 0 ? some(reached, 0.15) : [],
        ownedOnly: draw() < 0.1,
        make: some(['all'], 0.3),
        ...(draw() < 0.2 ? { maxSteps: 1 + Math.floor(draw() * 4) } : {}),
        ...(draw() < 0.25 ? { unbeaten: [...new Set([pick(axes), pick(axes), 'start' as const])].slice(0, 4) } : {}),
        apart: draw() < 0.2 ? 2 : 1,
        prove: draw() < 0.05,
        count: 1 + Math.floor(draw() * 30),
      }
      const there = await onServer(app, query)
      expect(await inHere(here, query), JSON.stringify(query)).toEqual(there)
      if (there.routes) withRoutes++
      else refused++
    }
    // Neither kind by luck alone.
    expect(withRoutes).toBeGreaterThan(80)
    expect(refused).toBeGreaterThan(20)
  })

  it('comes with the lists that end planning: by that substance in any role, here as on the server', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'lists-'))
    const proof = { confidence: 'a test', sources: [{ citation: 'a list made up for this test', checked: false }] }
    const list = { kind: 'regulatedList', name: 'house', fullName: 'House list of the keeper', regions: ['UN', 'EU', 'UK', 'US'] }
    const benzil = { kind: 'regulatedEntry', name: 'benzil', smiles: 'O=C(C(=O)c1ccccc1)c1ccccc1', action: 'stop', list: 'house' }
    const rows = [
      { ...list, coversGivenOff: true, ...proof },
      { ...benzil, category: 'all', legal: 'not in this house', ...proof },
    ]
    const table = { format: 'waybench-table', version: 1, title: 'House list', about: 'Made up for a test.', rows }
    writeFileSync(join(folder, 'house.json'), JSON.stringify(table))
    const strict = await testApp(':memory:', await openWorkshop([], [folder]))
    rmSync(folder, { recursive: true })
    const strictHere = await fetched(strict)
    expect(strictHere.edition).not.toBe(here.edition)
    for (const [to, code] of [
      ['benzil', 'stopped'],
      ['lophine', 'stopped-by-list'],
    ] as const) {
      const query = { ...plain, from: 'benzoin', to }
      expect((await inHere(here, query)).routes.length).toBeGreaterThan(0)
      const answer = await inHere(strictHere, query)
      expect(answer).toEqual(await onServer(strict, query))
      expect(answer.problems[0].code).toBe(code)
      expect(JSON.stringify(answer.problems)).toContain('House list of the keeper')
    }
    const reach = await searched(strictHere, { what: 'reach', query: { from: 'benzoin' } })
    expect(reach.value.reach.map((row: { compound: string }) => row.compound)).not.toContain('benzil')
    await strict.close()
  })

  it('ends a search that is told to, with what it has and no claim beyond', async () => {
    let pauses = 0
    const query = { ...plain, from: 'benzoin', to: 'hexaphenylbenzene', make: ['all'], by: 'hazard' as const }
    const answer = await searched(here, { what: 'routes', query }, () => ++pauses > 12)
    expect(answer.ok).toBe(true)
    expect(answer.value.complete).toBe(false)
    expect(answer.value.proven).toBe(false)
    expect(answer.value.routes.length).toBeGreaterThan(0)
  })
})

describe('the edition of the library', () => {
  it('is told by the server while it stands, and is another after each change of the own library', async () => {
    const first = await app.inject({ url: '/api/v1/library' })
    const tag = String(first.headers.etag)
    expect(tag).toBe(`"${first.json().edition}"`)
    const again = { url: '/api/v1/library', headers: { 'if-none-match': tag } }
    expect((await app.inject(again)).statusCode).toBe(304)
    // RFC 9110, sections 13.1.2 and 8.8.3.2: a list, compared weakly; * is any.
    const asking = async (value: string) => (await app.inject({ ...again, headers: { 'if-none-match': value } })).statusCode
    for (const value of [`W/${tag}`, `"another", ${tag}`, `"a",W/${tag} , "b"`, '*']) expect(await asking(value), value).toBe(304)
    for (const value of ['"another"', `W/"another"`, tag.replaceAll('"', ''), `"*"`]) expect(await asking(value), value).toBe(200)

    const benzoin = here.library.materials.get('benzoin')
    const own = { ...benzoin, name: 'benzoin of this bench' }
    const payload = { onVersion: 0, what: 'renamed', materials: [own], transformations: [], removeMaterials: [], removeTransformations: [] }
    const saved = await app.inject({ method: 'POST', url: '/api/v1/own-library', payload })
    expect(saved.statusCode).toBe(201)
    const changed = await app.inject(again)
    expect(changed.statusCode).toBe(200)
    expect(libraryHere(changed.json())?.library.materials.get('benzoin')?.name).toBe('benzoin of this bench')
    await app.inject({ method: 'POST', url: '/api/v1/own-library/undo', payload: { onVersion: saved.json().version } })
    expect((await app.inject(again)).statusCode).toBe(304)
  })

  // What is unpacked by Node's own zlib is the same text.
  it('comes as tightly packed as whoever asks can read', async () => {
    const ask = (encoding: string) => app.inject({ url: '/api/v1/library', headers: { 'accept-encoding': encoding } })
    const [plainly, br, gz] = await Promise.all([ask('identity'), ask('gzip, deflate, br'), ask('br;q=0, gzip')])
    expect(br.headers['content-encoding']).toBe('br')
    expect(gz.headers['content-encoding']).toBe('gzip')
    expect(brotliDecompressSync(br.rawPayload).equals(plainly.rawPayload)).toBe(true)
    expect(gunzipSync(gz.rawPayload).equals(plainly.rawPayload)).toBe(true)
    expect(br.rawPayload.length).toBeLessThan(plainly.rawPayload.length / 6)
  })
})
