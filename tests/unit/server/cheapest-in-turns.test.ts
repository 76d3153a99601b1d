import { afterAll, beforeAll, expect, it } from 'vitest'
import type { App } from '../../../server/app.ts'
import { demoParts } from '../../../server/library/demo.ts'
import { testApp } from '../../support/app.ts'
import { waybench } from '../../support/terminal.ts'

let app: App
let body: object
beforeAll(async () => {
  app = await testApp()
  const { files } = await waybench([
    ...['plan', '--from', 'benzoin', '--have', '24 g', '--goal', 'lophine=3g', '--goal', '2-3-diphenylquinoxaline=3g'],
    ...['--goal', 'hexaphenylbenzene=rest', '--save', 'plan.json'],
  ])
  const { goals, title, seed, start } = JSON.parse(files.get('plan.json')!)
  const { shelf, packs, settings } = demoParts()
  body = { plan: { title, start, goals, shelf, packs, settings, log: [], seed } }
})
afterAll(() => app.close())

const ask = (path: string) => app.inject({ method: 'POST', url: `/api/v1/${path}`, payload: body })

it('the cheapest way runs in turns: whoever else asks is answered meanwhile', async () => {
  // The first search warms up what both need.
  expect((await ask('cheapest')).statusCode).toBe(200)
  const order: string[] = []
  const search = ask('cheapest').then(reply => order.push(`search ${reply.statusCode}`))
  await new Promise(resolve => setTimeout(resolve, 20))
  const others = [1, 2, 3].map(async n => {
    const reply = await app.inject({ method: 'GET', url: '/api/v1/materials?q=ethanol' })
    order.push(`other ${n} ${reply.statusCode}`)
  })
  await Promise.all([search, ...others])
  expect(order.at(-1)).toBe('search 200')
})

it('as lines of JSON it names the search and ends with the same reply', async () => {
  const [whole, lines] = [await ask('cheapest'), await ask('cheapest/stream')]
  const told = lines.body
    .trim()
    .split('\n')
    .map(line => JSON.parse(line))
  expect(told[0].search).toMatch(/\w/)
  expect(told.at(-1).done).toEqual(whole.json())
  expect(told.at(-1).done).toMatchObject({ proven: true, reckoned: expect.any(Number), boundMinor: expect.any(Number) })
  const gone = await app.inject({ method: 'DELETE', url: `/api/v1/cheapest/stream/${told[0].search}` })
  expect([gone.statusCode, gone.json().problems[0].code]).toEqual([404, 'search-unknown'])
})

it('the new materials of a file come in turns too, and none of them is drawn that no row holds', async () => {
  const structures = Array.from({ length: 20 }, (_, at) => ({ smiles: `${'C'.repeat(60 + at)}O` }))
  const order: string[] = []
  const asked = app.inject({ method: 'POST', url: '/api/v1/new-structures', payload: { structures } }).then(reply => {
    order.push(`list ${reply.statusCode}`)
    return reply.json().materials as { material: { formula: string }; depiction: { kind: string } }[]
  })
  await new Promise(resolve => setTimeout(resolve, 20))
  const others = [1, 2, 3].map(async n => {
    const reply = await app.inject({ method: 'GET', url: '/api/v1/materials?q=ethanol' })
    order.push(`other ${n} ${reply.statusCode}`)
  })
  const [materials] = await Promise.all([asked, ...others])
  expect(order.at(-1)).toBe('list 200')
  // An alkanol is CnH(2n+2)O.
  expect(materials.map(one => one.material.formula)).toEqual(structures.map((_, at) => `C${60 + at}H${2 * (60 + at) + 2}O`))
  expect(new Set(materials.map(one => one.depiction.kind))).toEqual(new Set(['formula']))
})
