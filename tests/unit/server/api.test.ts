import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { planFileOf } from '../../../core/plan/file.ts'
import { defaultSettings } from '../../../core/plan/settings.ts'
import type { App } from '../../../server/app.ts'
import { planOf } from '../../../server/planning/request.ts'
import { bundledWorkshop, testApp } from '../../support/app.ts'
import { plainStep } from '../../support/plain-step.ts'

let app: App
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

const get = async (url: string) => {
  const reply = await app.inject({ method: 'GET', url: `/api/v1/${url}` })
  return { status: reply.statusCode, body: reply.json() }
}
const send = async (method: 'POST' | 'PUT' | 'DELETE', url: string, payload?: object) => {
  const reply = await app.inject({ method, url: `/api/v1/${url}`, ...(payload ? { payload } : {}) })
  return { status: reply.statusCode, body: reply.body === '' ? null : reply.json() }
}

async function demoPlanFile() {
  const workshop = await bundledWorkshop()
  const plan = planOf(workshop, {
    from: 'benzoin',
    haveG: 24,
    goals: [{ target: 'lophine', amount: { kind: 'rest' } }],
    steps: ['benzil-copper-ammonium-nitrate', 'lophine'],
    route: 1,
    choosing: {},
    side: { shelf: [], packs: null, settings: defaultSettings },
    seed: 1,
    title: 'Benzoin to lophine',
  })
  return planFileOf(workshop.library, plan)
}

describe('materials', () => {
  it.each([
    ['a name', 'benzoin', 'benzoin'],
    ['the beginning of a name', 'benzoi', 'benzoin'],
    ['a synonym', 'desyl alcohol', 'benzoin'],
    // CAS Registry Number as printed by suppliers; also in the European inventory.
    ['a CAS number', '119-53-9', 'benzoin'],
    ['a formula as the trade writes it', 'CuSO4·5H2O', 'copper-sulfate-pentahydrate'],
    ['another case', 'BENZOIN', 'benzoin'],
  ])('are found by %s', async (_what, words, id) => {
    const { status, body } = await get(`materials?q=${encodeURIComponent(words)}`)
    expect(status).toBe(200)
    expect(body.materials[0].id).toBe(id)
  })

  it('that can be a start come first, and water is never one', async () => {
    const { body } = await get('materials?q=benz&most=100')
    const starts = body.materials.map((m: { canStart: boolean }) => m.canStart)
    expect(starts).toContain(true)
    expect((await get('materials?q=water')).body.materials.find((m: { id: string }) => m.id === 'water').canStart).toBe(false)
  })

  it('are none for words that match nothing', async () => {
    expect((await get('materials?q=zzzz')).body.materials).toEqual([])
  })
})

describe('reach', () => {
  it('lists what benzoin can become, and the steps between, only among what it lists', async () => {
    const { status, body } = await get('reach?from=benzoin')
    expect(status).toBe(200)
    const ids: string[] = body.reach.map((row: { compound: string }) => row.compound)
    expect(ids).toEqual(
      expect.arrayContaining([
        'benzil',
        'lophine',
        '2-3-diphenylquinoxaline',
        'tetraphenylcyclopentadienone',
        'diphenylacetylene',
        'hexaphenylbenzene',
      ]),
    )
    const known = new Set([...ids, 'benzoin'])
    for (const edge of body.edges) for (const id of [...edge.from, edge.to]) expect(known).toContain(id)
    expect(body.edges.map((edge: { id: string }) => edge.id)).toContain('benzil-nitric-acid')
  })

  it('says what is wrong with a start that does not exist', async () => {
    const { status, body } = await get('reach?from=benzion')
    expect(status).toBe(400)
    expect(body.problems[0]).toMatchObject({ code: 'id-unknown', cure: expect.stringContaining('benzoin') })
  })
})

describe('routes', () => {
  it('are those of the command line', async () => {
    const { status, body } = await send('POST', 'routes', { from: 'benzoin', to: 'hexaphenylbenzene', make: ['all'], count: 100 })
    expect(status).toBe(200)
    expect(body.routes).toHaveLength(82)
    expect(body.complete).toBe(true)
    expect(body.routes[0].steps).toEqual(['benzil-nitric-acid', 'tetraphenylcyclopentadienone-koh', 'hexaphenylbenzene'])
  })

  it('are refused with the key that is not understood', async () => {
    const { status, body } = await send('POST', 'routes', { from: 'benzoin', to: 'lophine', sortBy: 'yield' })
    expect(status).toBe(400)
    expect(JSON.stringify(body.problems)).toContain('sortBy')
  })

  it('that do not exist are an answer with its reason', async () => {
    const { status, body } = await send('POST', 'routes', { from: 'benzoin', to: 'nylon-6-10' })
    expect(status).toBe(422)
    expect(body.problems.length).toBeGreaterThan(0)
    for (const problem of body.problems) for (const part of ['what', 'why', 'cure']) expect(problem[part]).not.toBe('')
  })
})

describe('a slice', () => {
  it('holds all that its routes charge, make and give off, drawn and screened', async () => {
    const { status, body } = await send('POST', 'slice', {
      routes: [['benzil-copper-ammonium-nitrate', 'lophine']],
      materials: ['benzoin'],
    })
    expect(status).toBe(200)
    const ids: string[] = body.library.materials.map((m: { id: string }) => m.id)
    expect(ids).toEqual(expect.arrayContaining(['benzoin', 'benzil', 'lophine', 'ammonium-nitrate', 'acetic-acid', 'nitrogen', 'water']))
    for (const id of ids) {
      expect(body.drawings[id].kind).toBeDefined()
      expect(body.traits[id]).toBeDefined()
    }
    expect(body.makeable).toContain('benzil')
  })

  it('with an unknown step is what there is of it, with the nearest one', async () => {
    const { status, body } = await send('POST', 'slice', { routes: [['benzil-nitric-acit'], ['lophine']], materials: ['benzoin'] })
    expect(status).toBe(200)
    expect(body.problems).toMatchObject([{ code: 'id-unknown', where: ['transformation', 'benzil-nitric-acit'] }])
    expect(body.problems[0].cure).toContain('benzil-nitric-acid')
    expect(body.library.transformations.map((t: { id: string }) => t.id)).toEqual(['lophine'])
  })
})

describe('saved plans', () => {
  it('are versions: each save is kept, and one on top of another hand is refused', async () => {
    const plan = await demoPlanFile()
    const first = await send('POST', 'plans', { plan })
    expect(first).toMatchObject({ status: 201, body: { title: 'Benzoin to lophine', version: 1 } })
    const { id } = first.body
    const second = await send('PUT', `plans/${id}`, { onVersion: 1, plan: { ...plan, title: 'Renamed' } })
    expect(second).toMatchObject({ status: 200, body: { version: 2, title: 'Renamed' } })
    const late = await send('PUT', `plans/${id}`, { onVersion: 1, plan })
    expect(late.status).toBe(409)
    expect((await get(`plans/${id}`)).body).toMatchObject({ version: 2, title: 'Renamed', changes: [] })
    expect((await get(`plans/${id}?version=1`)).body.plan.title).toBe('Benzoin to lophine')
    expect((await get(`plans/${id}/versions`)).body.versions).toHaveLength(2)
    expect((await get('plans')).body.plans.map((p: { id: string }) => p.id)).toContain(id)
    expect((await send('DELETE', `plans/${id}`)).status).toBe(204)
    expect((await get(`plans/${id}`)).status).toBe(404)
    expect((await send('DELETE', `plans/${id}`)).status).toBe(404)
  })

  it('are refused whole where something in them is wrong, every fault named', async () => {
    const plan = await demoPlanFile()
    const { status, body } = await send('POST', 'plans', {
      plan: { ...plan, seed: 'one', goals: [{ ...plan.goals[0], amount: { kind: 'mass', massG: -5 } }] },
    })
    expect(status).toBe(400)
    expect(body.problems.length).toBeGreaterThanOrEqual(2)
    expect((await get('plans')).body.plans).toEqual([])
  })

  it('bear a title of at most 500 characters', async () => {
    const plan = await demoPlanFile()
    expect((await send('POST', 'plans', { plan: { ...plan, title: 'a'.repeat(500) } })).status).toBe(201)
    expect((await send('POST', 'plans', { plan: { ...plan, title: 'a'.repeat(501) } })).status).toBe(400)
  })
})

describe('a plan whose own step was taken out of the library', () => {
  // The record is balanced by hand: 2 C14H12O2 + O2 = 2 C14H10O2 + 2 H2O.
  const ownStep = {
    id: 'own-quick',
    name: 'benzoin to benzil, air',
    ...plainStep,
    reactants: [
      { compound: 'benzoin', coefficient: 2 },
      { compound: 'oxygen', coefficient: 1 },
    ],
    products: [
      { compound: 'benzil', coefficient: 2 },
      { compound: 'water', coefficient: 2 },
    ],
    mainProduct: 'benzil',
    limiting: 'benzoin',
    charge: [
      { material: 'benzoin', role: 'substrate', amount: 10, unit: 'g' },
      { material: 'oxygen', role: 'oxidant', amount: 1, unit: 'g' },
    ],
    yieldPercent: { low: 98, typical: 99, high: 99.5 },
    elapsedHours: 1,
    sources: [{ citation: 'own bench', checked: true }],
  }

  it('is kept with its record and refused without; slices and searches go on with what the plan brings along, and it can be taken over', async () => {
    expect((await send('POST', 'own-library', { onVersion: 0, transformations: [ownStep] })).status).toBe(201)
    const brought = (await send('POST', 'slice', { routes: [['own-quick', 'lophine']], materials: ['benzoin'] })).body.library
    const plan = await demoPlanFile()
    const goals = [
      {
        ...plan.goals[0],
        route: {
          start: 'benzoin',
          target: 'lophine',
          steps: [{ transformation: 'own-quick', makes: 'benzil' }, plan.goals[0]!.route.steps[1]],
        },
      },
    ]
    const whole = { ...plan, goals, slice: brought }
    const { id } = (await send('POST', 'plans', { plan: whole })).body
    expect((await send('POST', 'own-library', { onVersion: 1, removeTransformations: ['own-quick'] })).status).toBe(201)

    const without = { ...whole, slice: plan.slice }
    for (const [method, path, body] of [
      ['POST', 'plans', { plan: without }],
      ['PUT', `plans/${id}`, { onVersion: 1, plan: without }],
    ] as const) {
      const refused = await send(method, path, body)
      expect(refused.status).toBe(422)
      expect(refused.body.problems).toMatchObject([{ code: 'step-missing', where: ['transformation', 'own-quick'] }])
    }
    expect((await send('PUT', `plans/${id}`, { onVersion: 1, plan: whole })).status).toBe(200)
    expect((await send('POST', 'evaluations', { plan: (await get(`plans/${id}`)).body.plan })).status).toBe(200)

    const carried = (await send('POST', 'slice', { routes: [['own-quick'], ['nowhere']], carried: brought })).body
    expect(carried.brought).toEqual(['own-quick'])
    expect(carried.problems.map((one: { where: string[] }) => one.where[1])).toEqual(['nowhere'])

    // Searches know it too where they are told: the best yield on start by one step is then its 99 %.
    const best = async (more: object) =>
      (await send('POST', 'routes', { from: 'benzoin', to: 'benzil', count: 1, by: 'start', ...more })).body.routes[0]
    expect((await best({})).steps).not.toEqual(['own-quick'])
    expect(await best({ carried: brought })).toMatchObject({ steps: ['own-quick'], overallYieldOnStart: expect.closeTo(0.99, 9) })
    const lines = async (path: string, body: object) =>
      (await app.inject({ method: 'POST', url: `/api/v1/${path}/stream`, payload: { ...body, carried: brought } })).body
    expect(await lines('reach', { from: 'benzoin', maxSteps: 1 })).toContain('own-quick')
    const { format: _format, version: _version, library: _library, slice: _slice, ...bare } = whole
    expect(await lines('cheapest', { plan: bare })).toContain('own-quick')

    // Taken over out of the plan file: what the library lacks, and nothing of what it holds.
    const files = [{ name: 'plan.json', text: JSON.stringify(whole) }]
    const { rows, refused } = (await send('POST', 'own-library/check', { files })).body
    expect(refused).toEqual([])
    expect(rows.map((row: { id: string; change: string }) => `${row.id} ${row.change}`)).toEqual(['own-quick added'])
  })
})

describe('an evaluation', () => {
  it('of a plan file is the figure of the command line', async () => {
    const { status, body } = await send('POST', 'evaluations', { plan: await demoPlanFile() })
    expect(status).toBe(200)
    expect(body.steps.map((s: { transformation: string }) => s.transformation)).toEqual(['benzil-copper-ammonium-nitrate', 'lophine'])
    // Both typical yields multiply: 0.91 x 0.90 on the benzoin.
    expect(body.overallYieldOnStart).toBeCloseTo(0.91 * 0.9, 2)
    expect(body.shopping.length).toBeGreaterThan(3)
  })
})

describe('the document of the API', () => {
  it('describes every address', async () => {
    const { status, body } = await get('openapi.json')
    expect(status).toBe(200)
    expect(body.openapi).toMatch(/^3\.1/)
    for (const path of [
      'materials',
      'reach',
      'routes',
      'slice',
      'tables',
      'demo',
      'evaluations',
      'plans',
      'plans/{id}',
      'plans/{id}/versions',
    ]) {
      expect(body.paths[`/api/v1/${path}`], path).toBeDefined()
    }
  })

  it('is named to whoever asks for an address that does not exist', async () => {
    const { status, body } = await get('nothing')
    expect(status).toBe(404)
    expect(body.problems[0].cure).toContain('openapi.json')
  })

  it('is not needed to learn which key is never taken, and where it stands', async () => {
    // RFC 8259 allows any name; JSON.parse keeps this one as a key, and an object it is assigned to would change its kind.
    const reply = await app.inject({
      method: 'POST',
      url: '/api/v1/own-library/check',
      headers: { 'content-type': 'application/json' },
      payload: '{"materials":[{"id":"x","\\u005f_proto__":{"name":"y"}}]}',
    })
    expect(reply.statusCode).toBe(400)
    expect(reply.json().problems).toMatchObject([{ code: 'json-key-forbidden', where: ['request', 'materials', '0', '__proto__'] }])
    expect(({} as { name?: string }).name).toBeUndefined()
  })

  it('is not needed to learn that JSON is broken', async () => {
    const reply = await app.inject({
      method: 'POST',
      url: '/api/v1/routes',
      headers: { 'content-type': 'application/json' },
      payload: '{"from":',
    })
    expect(reply.statusCode).toBe(400)
    expect(reply.json().problems).toHaveLength(1)
  })
})
