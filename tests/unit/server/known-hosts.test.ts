import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type App, buildApp } from '../../../server/app.ts'
import { openStore } from '../../../server/store/store.ts'
import { bundledWorkshop, testApp } from '../../support/app.ts'

let app: App
let elsewhere: App
beforeAll(async () => {
  app = await testApp()
  const store = openStore(':memory:')
  elsewhere = await buildApp(
    { workshop: await bundledWorkshop(), store, now: () => '2026-12-03T20:00:00.000Z', newId: () => 'plan' },
    { rateLimit: null, pageFolder: null, host: '0.0.0.0', knownAs: ['bench.lan', 'fd00::7'] },
    false,
  )
  elsewhere.addHook('onClose', () => store.close())
})
afterAll(async () => {
  await app.close()
  await elsewhere.close()
})

const asked = async (of: App, headers: Record<string, string>, method: 'GET' | 'DELETE' = 'GET') => {
  const reply = await of.inject({ method, url: method === 'GET' ? '/api/v1/plans' : '/api/v1/plans/none', headers })
  return [reply.statusCode, reply.statusCode === 200 ? null : reply.json().problems[0].code]
}

// A host with its port, and an address of version 6 in brackets: RFC 9110, 7.2, and RFC 3986, 3.2.2.
describe('by what name the server is asked', () => {
  it.each(['localhost', 'localhost:4780', 'LOCALHOST:80', '127.0.0.1:4780', '[::1]:4780'])('%s is its own', async host => {
    expect(await asked(app, { host })).toEqual([200, null])
  })
  it.each([
    'evil.example',
    'evil.example:4780',
    'localhost.evil.example',
    '127.0.0.1.evil.example',
    '192.168.1.5:4780',
    '[::2]:4780',
    'bench.lan',
  ])('"%s" is refused, so that no page of another name reads what is kept here', async host => {
    expect(await asked(app, { host })).toEqual([403, 'host-unknown'])
  })
  it('names that its keeper gives are its own too, and no others', async () => {
    expect(await asked(elsewhere, { host: 'bench.lan:4780' })).toEqual([200, null])
    expect(await asked(elsewhere, { host: '[fd00::7]:4780' })).toEqual([200, null])
    expect(await asked(elsewhere, { host: 'localhost:4780' })).toEqual([200, null])
    expect(await asked(elsewhere, { host: '0.0.0.0:4780' })).toEqual([403, 'host-unknown'])
    expect(await asked(elsewhere, { host: 'other.lan' })).toEqual([403, 'host-unknown'])
  })
})

describe('who may write', () => {
  const host = 'localhost:4780'
  it('the page of this server, and programs', async () => {
    expect(await asked(app, { host, origin: 'http://localhost:4780' }, 'DELETE')).toEqual([404, expect.any(String)])
    expect(await asked(app, { host }, 'DELETE')).toEqual([404, expect.any(String)])
  })
  it.each([{ origin: 'http://evil.example' }, { origin: 'null' }, { origin: 'http://localhost:3000' }, { 'sec-fetch-site': 'cross-site' }])(
    'no page of another: %o',
    async headers => {
      expect(await asked(app, { host, ...headers } as Record<string, string>, 'DELETE')).toEqual([403, 'origin-unknown'])
    },
  )
})
