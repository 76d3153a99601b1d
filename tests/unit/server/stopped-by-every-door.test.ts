import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { LibraryFile } from '../../../core/library/library.ts'
import { planFileOf } from '../../../core/plan/file.ts'
import type { Plan } from '../../../core/plan/plan.ts'
import { defaultSettings, settingsSchema } from '../../../core/plan/settings.ts'
import type { App } from '../../../server/app.ts'
import { openWorkshop, type Workshop } from '../../../server/library/workshop.ts'
import { loadSolver } from '../../../server/solver/highs.ts'
import { type LibraryHere, libraryHere, type SearchAsked, searchHere } from '../../../web/state/library-here.ts'
import { testApp } from '../../support/app.ts'
import { logEntry } from '../../support/benzoin-plans.ts'
import { harmless, listedLibrary, listedMaterials, listedRoles } from '../../support/listed-steps.ts'
import { waybench } from '../../support/terminal.ts'

type Case = (typeof listedRoles)[number]
/** What a door says, and whether it let a plan through. */
interface Said {
  readonly through: boolean
  readonly text: string
}

const folder = mkdtempSync(join(tmpdir(), 'listed-'))
const file = join(folder, 'listed.json')
let here: Workshop
let app: App
let plain: App
let page: LibraryHere
beforeAll(async () => {
  writeFileSync(file, JSON.stringify(listedLibrary))
  here = await openWorkshop([file])
  app = await testApp(':memory:', here)
  plain = await testApp()
  page = libraryHere((await app.inject({ url: '/api/v1/library' })).json())!
})
afterAll(async () => {
  await app?.close()
  await plain?.close()
  rmSync(folder, { recursive: true, force: true })
})

function planFileFor(one: Case): object {
  return planFileOf(here.library, planOf(one) as Plan)
}
function planOf({ from, to, made }: Case): object {
  const goal = { target: to, amount: { kind: 'rest' }, route: { start: from, target: to, steps: [{ transformation: made.id, makes: to }] } }
  const log = [logEntry({ step: made.id, chargedG: 4, weighedG: 2 })]
  return {
    title: 'A plan',
    start: { material: from, massG: 5 },
    goals: [goal],
    shelf: [],
    packs: null,
    settings: defaultSettings,
    log,
    seed: 1,
  }
}
const cli = async (words: readonly string[], case_: Case): Promise<Said> => {
  const files = new Map([
    ['plan.json', JSON.stringify(planFileFor(case_))],
    ['own.json', JSON.stringify(listedLibrary)],
    ['preparation.txt', preparation(case_)],
  ])
  const { code, out, err } = await waybench(words, files)
  return { through: code === 0, text: out + err }
}
const api = async (on: App, url: string, payload: object): Promise<Said> => {
  const reply = await on.inject({ method: 'POST', url: `/api/v1/${url}`, payload })
  return { through: reply.statusCode < 300 && !reply.body.includes('"problems":[{'), text: reply.body }
}
const read = async (url: string): Promise<Said> => {
  const reply = await app.inject(`/api/v1/${url}`)
  return { through: reply.statusCode === 200, text: reply.body }
}
const preparation = ({ made }: Case): string =>
  [
    `${made.reactants.map(one => one.compound).join(' + ')} -> ${made.products.map(one => one.compound).join(' + ')}`,
    ...made.charge.map(line => `${line.amount} g ${line.material}`),
    'isolated 0.5 g',
  ].join('\n')
const inPage = async (asked: SearchAsked): Promise<Said> => {
  const turns = { pause: () => null, check: () => {}, solve: async (model: never) => (await loadSolver())(model) }
  const search = searchHere(page, asked, () => false, turns as never)
  for (let step = await search.next(); ; step = await search.next())
    if (step.done) return { through: step.value.ok, text: JSON.stringify(step.value) }
}
/** Everything reachable is listed: a target that is not among it was not let through. */
const reached = (said: Said, { to, made }: Case): Said => ({
  through: said.through && (said.text.includes(`"${to}"`) || said.text.includes(made.id)),
  text: said.text,
})

const settings = settingsSchema.parse({})
const query = {
  by: 'start',
  avoid: [],
  avoidStep: [],
  mustPass: [],
  avoidCode: [],
  avoidList: [],
  ownedOnly: false,
  seenOnly: false,
  make: [],
}
/** Doors that tell the list by its full name. */
const doors: Readonly<Record<string, (one: Case) => Promise<Said>>> = {
  'waybench routes': one => cli(['routes', '--from', one.from, '--to', one.to, '--library', file], one),
  'waybench plan': one => cli(['plan', '--from', one.from, '--to', one.to, '--have', '5 g', '--library', file], one),
  'waybench plan --steps': one =>
    cli(['plan', '--from', one.from, '--to', one.to, '--have', '5 g', '--steps', one.made.id, '--library', file], one),
  'waybench plan --print': one =>
    cli(['plan', '--from', one.from, '--to', one.to, '--have', '5 g', '--print', 'pack.txt', '--library', file], one),
  'waybench plan --cheapest': one =>
    cli(['plan', '--from', one.from, '--goal', `${one.to}=rest`, '--have', '5 g', '--cheapest', '--library', file], one),
  'waybench plan FILE': one => cli(['plan', 'plan.json', '--library', file], one),
  'waybench plan FILE, on the bundled library': one => cli(['plan', 'plan.json'], one),
  'waybench replan FILE': one => cli(['replan', 'plan.json', '--library', file], one),
  'waybench log FILE': one => cli(['log', 'plan.json', '--step', one.made.id, '--weighed', '1 g', '--library', file], one),
  'waybench check FILE': one => cli(['check', 'plan.json', '--library', file], one),
  'waybench plan --own': one => cli(['plan', '--from', one.from, '--to', one.to, '--have', '5 g', '--own', file], one),
  'POST routes': one => api(app, 'routes', { from: one.from, to: one.to }),
  'POST routes/stream': one => api(app, 'routes/stream', { from: one.from, to: one.to }),
  'POST evaluations': one => api(app, 'evaluations', { plan: planFileFor(one) }),
  'POST plans': one => api(app, 'plans', { plan: planFileFor(one) }),
  'POST cheapest': one => api(app, 'cheapest', { plan: planOf(one) }),
  'POST cheapest/stream': one => api(app, 'cheapest/stream', { plan: planOf(one) }),
  'POST evaluations, on the bundled library': one => api(plain, 'evaluations', { plan: planFileFor(one) }),
  'POST plans, on the bundled library': one => api(plain, 'plans', { plan: planFileFor(one) }),
  'POST own-library': one => api(plain, 'own-library', { onVersion: 0, materials: listedMaterials, transformations: [one.made] }),
  'POST own-library, as a file': one => {
    const text = JSON.stringify({ ...listedLibrary, transformations: [one.made] })
    return api(plain, 'own-library', { onVersion: 0, files: [{ name: 'own.json', text }] })
  },
  'POST slice': one => api(app, 'slice', { routes: [[one.made.id]] }),
  'GET transformations/ID': one => read(`transformations/${one.made.id}`),
  'GET transformations/ID/charges': one => read(`transformations/${one.made.id}/charges`),
  'waybench library --charges': one => cli(['library', '--charges', one.made.id, '--library', file], one),
  'the search in the page': one =>
    inPage({
      what: 'routes',
      query: { ...query, apart: 1, prove: false, count: 24, settings, packs: null, from: one.from, to: one.to } as never,
    }),
}
/** Doors that list what can be had: what cannot is not in the list. */
const lists: Readonly<Record<string, (one: Case) => Promise<Said>>> = {
  'waybench reach': async one => reached(await cli(['reach', '--from', one.from, '--json', '--library', file], one), one),
  'GET reach': async one => {
    const reply = await app.inject({ url: `/api/v1/reach?from=${one.from}` })
    return reached({ through: reply.statusCode === 200, text: reply.body }, one)
  },
  'POST reach/stream': async one => {
    const reply = await app.inject({ method: 'POST', url: '/api/v1/reach/stream', payload: { from: one.from } })
    return reached({ through: reply.statusCode === 200 && !reply.body.includes('"problems"'), text: reply.body }, one)
  },
  'GET transformations': async one => reached(await read('transformations?q=arithmetic&most=1000'), one),
  'the reach in the page': async one => reached(await inPage({ what: 'reach', query: { from: one.from } }), one),
}
/** A preparation names what is charged, used up and made; what it gives off as gas is one of its products. */
const readers: Readonly<Record<string, (one: Case) => Promise<Said>>> = {
  'waybench read': one => cli(['read', 'preparation.txt', '--library', file], one),
  'POST read': one => api(app, 'read', { text: preparation(one) }),
}

describe('a plan to a substance under a stop row cannot be had', () => {
  for (const [door, through] of Object.entries({ ...doors, ...readers })) {
    it(`by ${door}, in any role, and is told with the full name of the list`, async () => {
      for (const one of listedRoles) {
        const said = await through(one)
        expect(said.through, one.role).toBe(false)
        expect(said.text, one.role).toContain(one.list)
        expect(said.text, one.role).not.toMatch(/expectedG|theoreticalG|medianG/)
      }
    })
  }
  for (const [door, through] of Object.entries(lists)) {
    it(`by ${door}: it is in no list`, async () => {
      for (const one of listedRoles) expect((await through(one)).through, one.role).toBe(false)
    })
  }
  it('nor is how it is done handed out with the library, nor with what else is asked for', async () => {
    const listed = new Set(listedRoles.map(one => one.made.id))
    const { library } = (await app.inject('/api/v1/library')).json() as { library: LibraryFile }
    const handed = new Map(library.transformations.map(step => [step.id, step]))
    const routes = [[...listed, harmless.made.id]]
    const slice = (await app.inject({ method: 'POST', url: '/api/v1/slice', payload: { routes } })).json()
    expect(new Map(slice.library.transformations.map((step: { id: string }) => [step.id, step]))).toEqual(handed)
    expect(new Set(slice.problems.map((one: { where: string[] }) => one.where[1]))).toEqual(listed)
    const bare = [...listed].map(id => handed.get(id)!)
    for (const { id, operations, equipment, hazardNotes, sources } of bare)
      expect({ operations, equipment, hazardNotes, sources }, id).toEqual({ operations: [], equipment: [], hazardNotes: [], sources: [] })
    // Weights are reckoned on the limiting reactant: its amount alone stays, which says nothing of how.
    const others = bare.flatMap(step => step.charge.filter(line => line.material !== step.limiting))
    expect(others.length).toBe(5)
    for (const line of others) expect(line.amount).toBeNull()
    expect(handed.get(harmless.made.id)).toEqual(here.library.transformations.get(harmless.made.id))
  })
  it('nor written down from a file of reactions, where the library does not hold it; the others of the file are read', async () => {
    // Convention on the Prohibition of Chemical Weapons (1993), Schedule 1, A(4).
    const text = 'OCCSCCO.Cl.Cl>>ClCCSCCCl.O.O one\nCCO>>CC=O two\n'
    const reply = await plain.inject({
      method: 'POST',
      url: '/api/v1/read-reactions',
      payload: { files: [{ name: 'two.smi', text }] },
    })
    const { reactions } = reply.json()
    expect(reactions[0]).toMatchObject({ read: null, problems: [{ code: 'stopped', what: expect.stringContaining('Chemical Weapons') }] })
    expect(reactions[1].read.equation).toBe('ethanol {ethanol} -> acetaldehyde')
    const old = await plain.inject({ method: 'POST', url: '/api/v1/read-reaction', payload: { name: 'two.smi', text } })
    expect([old.statusCode, old.json().problems[0].code]).toEqual([422, 'stopped'])
    const said = await waybench(['read', 'two.smi', '--json'], new Map([['two.smi', text]]))
    expect([said.code, JSON.parse(said.out).reactions]).toEqual([1, reactions])
  })
  it('nor brought by a file of reactions as a new material, nor read with one', async () => {
    // Sarin, Schedule 1 A.1 of the Annex on Chemicals of the Chemical Weapons Convention.
    const smiles = 'CC(C)OP(C)(=O)F'
    const told = await plain.inject({ method: 'POST', url: '/api/v1/new-structures', payload: { structures: [{ smiles, name: 'own' }] } })
    expect(told.json().materials[0].problems.map((one: { code: string }) => one.code)).toContain('stopped')
    const [one] = told.json().materials
    const materials = [{ ...one.material, sources: [{ citation: 'own bench', checked: false }] }]
    const read = await plain.inject({
      method: 'POST',
      url: '/api/v1/read',
      payload: { text: `own {${one.material.id}} -> water`, materials },
    })
    expect(read.statusCode).toBe(422)
    expect(read.json().problems.map((problem: { code: string }) => problem.code)).toContain('stopped')
    const harmlessOne = await plain.inject({
      method: 'POST',
      url: '/api/v1/new-structures',
      payload: { structures: [{ smiles: 'CCCCCO' }] },
    })
    expect(harmlessOne.json().materials[0].problems).toEqual([])
  })

  it('though the same without it goes through each of these doors', async () => {
    for (const [door, through] of Object.entries({ ...doors, ...readers, ...lists })) {
      if (door.includes('own')) continue
      const said = await through(harmless)
      expect(said.through, `${door}: ${said.text.slice(0, 600)}`).toBe(true)
    }
  })
})
