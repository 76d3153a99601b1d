import { setTimeout as later } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Search } from '../../../core/choose/searching.ts'
import type { App } from '../../../server/app.ts'
import { inTurns, SearchCancelled, searched } from '../../../server/planning/searching.ts'
import { solvedInThread } from '../../../server/solver/in-thread.ts'
import { testApp } from '../../support/app.ts'

let app: App
beforeAll(async () => {
  app = await testApp()
})
afterAll(() => app.close())

const query = { from: 'benzoin', to: 'hexaphenylbenzene', make: ['all'], count: 12 }
const ask = (url: string, payload: object) => app.inject({ method: 'POST', url: `/api/v1/${url}`, payload })
const linesOf = (body: string) =>
  body
    .trim()
    .split('\n')
    .map(line => JSON.parse(line))

describe('routes as they are found', () => {
  it('come as lines, one a route in order, and the whole reply last', async () => {
    const whole = (await ask('routes', query)).json()
    const reply = await ask('routes/stream', query)
    expect(reply.statusCode).toBe(200)
    expect(reply.headers['content-type']).toBe('application/x-ndjson')
    const lines = linesOf(reply.body)
    const rows = lines.filter(line => 'row' in line)
    expect(rows.map(line => line.place)).toEqual(Array.from({ length: 12 }, (_, i) => i + 1))
    expect(rows.map(line => line.row.steps)).toEqual(whole.routes.map((row: { steps: string[] }) => row.steps))
    expect(lines.at(-1)).toEqual({ done: whole })
  })

  it('are refused as everywhere else where there are none', async () => {
    for (const [payload, status] of [
      [{ ...query, from: 'benzion' }, 400],
      [{ ...query, unbeaten: ['start'] }, 400],
      [{ ...query, to: 'nylon-6-6', make: [] }, 422],
    ] as const) {
      const reply = await ask('routes/stream', payload)
      expect(reply.statusCode).toBe(status)
      expect(reply.json().problems[0].code).toBe((await ask('routes', payload)).json().problems[0].code)
    }
  })

  it('carry what is asked beyond the order: unbeaten, apart, proven', async () => {
    const unbeaten = (await ask('routes', { ...query, unbeaten: ['yield', 'hazard'] })).json()
    expect(unbeaten.unbeaten).toEqual({ axes: ['yield', 'hazard'], exact: true })
    expect(unbeaten.routes[0].values.yield).toBe(unbeaten.routes[0].overallYieldOnStart)
    expect((await ask('routes', { ...query, apart: 3 })).json().apart).toBe(3)
    expect((await ask('routes', { ...query, by: 'hands-on', prove: true })).json().best).toEqual({ proven: true, atMostAbovePercent: 0 })
  })
})

/** A search that would work for seconds. */
function* long(pauses: number): Search<string> {
  for (let i = 0; i < pauses; i++) {
    const until = performance.now() + 2
    while (performance.now() < until);
    yield { kind: 'progress', found: 0, work: i, bound: null }
  }
  return 'done'
}

describe('a long search', () => {
  it('lets the server answer others meanwhile', async () => {
    let over = false
    const search = searched(long(400)).then(() => {
      over = true
    })
    const reply = await app.inject({ method: 'GET', url: '/api/v1/materials?q=benzoin' })
    expect(reply.statusCode).toBe(200)
    expect(over).toBe(false)
    await search
  })

  it('ends at its next pause once whoever asked has gone', async () => {
    const gone = new AbortController()
    let last = 0
    const search = searched(long(100_000), gone.signal, event => {
      if (event.kind === 'progress') last = event.work
    })
    await later(40)
    gone.abort()
    await expect(search).rejects.toThrow(SearchCancelled)
    expect(last).toBeLessThan(1000)
  })

  it('goes on only as fast as its events are taken', async () => {
    const turns = inTurns(long(100_000))
    await turns.next()
    await later(30)
    const second = await turns.next()
    expect(second.value).toMatchObject({ work: 1 })
    await turns.return('left')
  })
})

describe('the integer solver in a thread', () => {
  // 3x + 2y with x + y >= 1.5 in whole numbers: by hand, y = 2 costs 4, x = y = 1 costs 5.
  it('gives what it gives here, and blocks nobody', async () => {
    const model = 'Minimize\n obj: 3 x + 2 y\nSubject To\n r0: x + y >= 1.5\nGeneral\n x y\nEnd'
    const { status, columns } = await solvedInThread(model)
    expect(status).toBe('optimal')
    expect([columns.get('x'), columns.get('y')]).toEqual([0, 2])
  })

  it('that is ended, or handed nonsense, has no answer', async () => {
    const gone = new AbortController()
    const solving = solvedInThread('Minimize\n obj: x\nSubject To\n r0: x >= 1\nEnd', gone.signal)
    gone.abort()
    expect((await solving).status).toBe('failed')
    expect((await solvedInThread('garbage')).status).toBe('failed')
  })
})
