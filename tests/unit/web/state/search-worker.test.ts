import { afterAll, beforeAll, beforeEach, expect, it, vi } from 'vitest'
import type { SearchAnswer, SearchOrder } from '../../../../web/state/search-orders.ts'
import { testApp } from '../../../support/app.ts'

/** The worker itself, with the server of the test in place of the network. */
let app: Awaited<ReturnType<typeof testApp>>
let first: string
let second: string
beforeAll(async () => {
  app = await testApp()
  const library = async () => (await app.inject({ url: '/api/v1/library' })).body
  first = await library()
  const step = JSON.parse(first).library.transformations.find((one: { id: string }) => one.id === 'lophine')
  const transformations = [{ ...step, yieldPercent: { low: 10, typical: 20, high: 30 } }]
  await app.inject({ method: 'POST', url: '/api/v1/own-library', payload: { onVersion: 0, transformations } })
  second = await library()
})
afterAll(() => app.close())

let replies: (Response | 'silent')[]
let said: SearchAnswer[]
let order: (what: SearchOrder) => void
const editionOf = (text: string): string => JSON.parse(text).edition
const ok = (text: string) => new Response(text)
const failed = () => new Response('{}', { status: 429 })
const same = () => new Response(null, { status: 304 })

beforeEach(async () => {
  replies = []
  said = []
  vi.resetModules()
  vi.stubGlobal('addEventListener', (_: string, take: (event: { data: SearchOrder }) => void) => {
    order = data => take({ data })
  })
  vi.stubGlobal('postMessage', (answer: SearchAnswer) => said.push(answer))
  vi.stubGlobal('fetch', async () => {
    const reply = replies.shift()
    if (reply === undefined || reply === 'silent') throw new TypeError('no connection')
    return reply
  })
  await import('../../../../web/state/search-worker.ts')
  return () => vi.unstubAllGlobals()
})

const brought = async (...first: (Response | 'silent')[]) => {
  replies = first
  order({ kind: 'bring', address: 'http://localhost/api/v1/library' })
  await expect.poll(() => said.at(-1)?.kind).toBe('library')
}
const answerOf = async (id: number, ...then: (Response | 'silent')[]) => {
  replies = then
  order({ kind: 'search', id, asked: { what: 'reach', query: { from: 'benzoin', maxSteps: 3 } } })
  await expect.poll(() => said.some(one => (one.kind === 'found' || one.kind === 'elsewhere' ? one.id === id : false))).toBe(true)
  return said.find(one => (one.kind === 'found' || one.kind === 'elsewhere') && one.id === id)
}

it('a search under which the library changes is made anew in the newer one', async () => {
  await brought(ok(first))
  const found = await answerOf(1, same(), ok(second), same())
  expect(found).toMatchObject({ kind: 'found', edition: editionOf(second) })
  expect(editionOf(second)).not.toBe(editionOf(first))
  // As the server answers by now.
  const onServer = (await app.inject({ url: '/api/v1/reach?from=benzoin&maxSteps=3' })).json()
  expect(found?.kind === 'found' && found.answer.ok && JSON.parse(JSON.stringify(found.answer.value))).toEqual(onServer)
})

it('a server that fails once searches itself that time; the next search is made here again', async () => {
  await brought(ok(first))
  expect(await answerOf(1, failed())).toEqual({ kind: 'elsewhere', id: 1, tooLarge: false })
  expect(await answerOf(2, same(), same())).toMatchObject({ kind: 'found', edition: editionOf(first) })
  expect(await answerOf(3, 'silent', 'silent')).toMatchObject({ kind: 'found', edition: editionOf(first) })
})

it('a server that failed at the very first is asked again', async () => {
  await brought(failed())
  expect(said.at(-1)).toEqual({ kind: 'library', edition: null, tooLarge: false })
  expect(await answerOf(1, failed())).toMatchObject({ kind: 'elsewhere', tooLarge: false })
  expect(await answerOf(2, ok(first), same())).toMatchObject({ kind: 'found', edition: editionOf(first) })
})
