import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { testApp } from '../../support/app.ts'

const lines = readFileSync('docs/json.md', 'utf8').split('\n')
/** What the document says of an address, or under a heading. */
const said = (start: string): string => lines.filter(line => line.startsWith(start)).join(' ')
const under = (heading: string): string => {
  const from = lines.findIndex(line => line.startsWith(heading))
  return lines
    .slice(
      from,
      lines.findIndex((line, at) => at > from && line.startsWith('## ')),
    )
    .join(' ')
}

/** Their keys are those of the library format, of a drawing or of a Problem, described elsewhere, or ids. */
const elsewhere = new Set([
  'material',
  'withHazards',
  'transformation',
  'depiction',
  'contains',
  'problems',
  'refused',
  'warnings',
  'broken',
  'task',
  'before',
  'now',
])

function keysIn(value: unknown, isMap = false): readonly string[] {
  if (Array.isArray(value)) return value.flatMap(one => keysIn(one))
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inside]) => [
    ...(isMap ? [] : [key]),
    ...(elsewhere.has(key) ? [] : keysIn(inside, key === 'materials' && !Array.isArray(inside))),
  ])
}

const undescribed = (reply: object, text: string): readonly string[] =>
  [...new Set(keysIn(reply))].filter(key => !new RegExp(`\\b${key}\\b`).test(text))

let app: Awaited<ReturnType<typeof testApp>>
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())
const post = async (path: string, payload: object): Promise<object> => {
  const reply = await app.inject({ method: 'POST', url: `/api/v1/${path}`, payload })
  expect(reply.statusCode).toBe(200)
  return reply.json()
}

describe('the document of the JSON names every key that the doors of own chemistry hand out', () => {
  it('of a preparation read', async () => {
    // One that asks about a name, brings crystal water, does not balance, and names tasks and equipment.
    const texts = [
      'sodium acetate trihydrate {sodium-acetate-trihydrate} + hydrogen chloride -> acetic acid + sodium chloride + 3 water\n13.6 g sodium acetate trihydrate\n25 mL HCl\nreflux under a condenser for 2 h\nisolated 5 g',
      'sodium acetate + HCl -> acetic acid + NaCl\n5 g quizzaline\nthe colour is pretty',
      'benzoin -> benzil\n2 g benzoin\n10 mL nitric acid {nitric-acid-68}',
    ]
    for (const text of texts) {
      const reply = await post('read', { text })
      expect(undescribed(reply, said('| `POST /read` |') + under('## `waybench read --json`'))).toEqual([])
    }
    const [first] = await Promise.all(texts.map(text => post('read', { text })))
    expect(keysIn(first)).toEqual(expect.arrayContaining(['crystalWater', 'candidates', 'guessed', 'molarMass']))
  })

  it('a new material that cannot be read with a preparation is told by its key in the request', async () => {
    const one = { id: 'own-one', name: 'own one', kind: 'compound', formula: 'C2H6O', smiles: 'CC(', form: 'liquid', sources: [] }
    const reply = await app.inject({ method: 'POST', url: '/api/v1/read', payload: { text: 'own one -> water', materials: [one] } })
    expect([reply.statusCode, reply.json().problems[0].where]).toEqual([400, ['materials', 'own-one', 'smiles']])
  })

  it('of a new material, and of the structures of a file', async () => {
    const bottle = await post('new-material', { name: 'ethanol', smiles: 'CCO', cas: '64-17-5', form: 'liquid' })
    const row = said('| `POST /new-material` |')
    expect(keysIn(bottle)).toEqual(expect.arrayContaining(['named', 'record', 'groups']))
    expect(undescribed(bottle, row)).toEqual([])
    const fresh = await post('new-structures', { structures: [{ smiles: 'CCCCCO' }, { smiles: 'OCCCCC' }] })
    expect(undescribed(fresh, row + said('| `POST /new-structures` |'))).toEqual([])
  })

  it('of the reactions of a file', async () => {
    const text = 'CCO.CC(=O)O>>CCOC(C)=O.O'
    expect(undescribed(await post('read-reactions', { files: [{ name: 'a.smi', text }] }), said('| `POST /read-reactions` |'))).toEqual([])
    expect(undescribed(await post('read-reaction', { name: 'a.smi', text }), said('| `POST /read-reaction` |'))).toEqual([])
  })

  it('of the own library and what would become of it', async () => {
    const materials = [
      { id: 'own-one', name: 'own one', kind: 'compound', formula: 'C5H12O', form: 'liquid', sources: [{ citation: 'x', checked: true }] },
    ]
    const row = said('| `POST /own-library/check` |')
    expect(undescribed(await post('own-library/check', { materials }), row)).toEqual([])
    expect(
      undescribed(await post('own-library/check', { files: [{ name: 'a.csv', text: 'id,name,density\nacetone,acetone,0.5\n' }] }), row),
    ).toEqual([])
    const own = (await app.inject({ url: '/api/v1/own-library' })).json()
    expect(undescribed(own, said('| `GET /own-library` |'))).toEqual([])
    const forms = (await app.inject({ url: '/api/v1/own-library/forms' })).json()
    expect(undescribed(forms, said('| `GET /own-library/forms` |'))).toEqual([])
  })
})
