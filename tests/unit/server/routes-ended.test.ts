import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { request } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { performance } from 'node:perf_hooks'
import { setTimeout as later } from 'node:timers/promises'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { App } from '../../../server/app.ts'
import { openWorkshop } from '../../../server/library/workshop.ts'
import { testApp } from '../../support/app.ts'
import { generatedNetwork } from '../../support/networks/generated.ts'
import { libraryText } from '../../support/networks/library-text.ts'
import { waybench } from '../../support/terminal.ts'

/** A thousand routes of 150 steps and more, with every make-or-buy open: work for some ten seconds. */
const query = { from: 'c00001075', to: 'c00000625', make: ['all'], count: 1000 }

let app: App
let port = 0
let folder = ''
let library = ''
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'waybench-'))
  library = join(folder, 'generated.json')
  writeFileSync(library, libraryText(generatedNetwork(3000)))
  app = await testApp(':memory:', await openWorkshop([library]))
  await app.listen({ port: 0, host: '127.0.0.1' })
  port = (app.server.address() as AddressInfo).port
})
afterAll(async () => {
  await app.close()
  rmSync(folder, { recursive: true })
})

const post = (what: 'routes' | 'reach' = 'routes', body: object = query) => {
  const asking = request({ port, path: `/api/v1/${what}/stream`, method: 'POST', headers: { 'content-type': 'application/json' } })
  asking.on('error', () => {})
  asking.end(JSON.stringify(body))
  return asking
}

/** Share of a while in which this process worked instead of waiting, as Node's event loop counts it. */
async function busy(ms: number): Promise<number> {
  const before = performance.eventLoopUtilization()
  await later(ms)
  return performance.eventLoopUtilization(before).utilization
}

describe('a search of many long routes', () => {
  it('ends when the connection is dropped in the middle of it', async () => {
    const asking = post()
    await new Promise<void>((resolve, reject) => {
      asking.on('response', reply => {
        expect(reply.statusCode).toBe(200)
        let read = 0
        reply.on('error', () => {})
        reply.on('end', () => reject(new Error('it was over before it could be dropped')))
        reply.on('data', (chunk: Buffer) => {
          read += chunk.toString().split('\n').length
          if (read > 4) resolve()
        })
      })
    })
    expect(await busy(300)).toBeGreaterThan(0.5)
    asking.destroy()
    await later(300)
    expect(await busy(500)).toBeLessThan(0.2)
  })

  it('makes do with what it has when it is told to, and says what bound holds', async () => {
    const lines = await new Promise<Record<string, never>[]>((resolve, reject) => {
      post().on('response', reply => {
        let text = ''
        let told = false
        reply.on('error', reject)
        reply.on('data', (chunk: Buffer) => {
          text += chunk
          const rows = text.split('\n').filter(line => line.includes('"place"')).length
          if (told || rows < 5) return
          told = true
          const { search } = JSON.parse(text.split('\n')[0]!)
          app
            .inject({ method: 'DELETE', url: `/api/v1/routes/stream/${search}` })
            .then(answer => expect(answer.statusCode).toBe(204), reject)
        })
        reply.on('end', () =>
          resolve(
            text
              .trim()
              .split('\n')
              .map(line => JSON.parse(line)),
          ),
        )
      })
    })
    const { done } = lines.at(-1) as unknown as { done: { routes: { value: number }[]; complete: boolean; bound: number } }
    expect(done.complete).toBe(false)
    expect(done.routes.length).toBeGreaterThanOrEqual(5)
    expect(done.routes.length).toBeLessThan(1000)
    expect(done.bound).toBeGreaterThanOrEqual(done.routes.at(-1)!.value - 1e-9)
    const again = await app.inject({ method: 'DELETE', url: `/api/v1/routes/stream/${(lines[0] as unknown as { search: string }).search}` })
    expect(again.statusCode).toBe(404)
  })
})

/** From its best connected compound: to count the routes to all that it becomes is work for many seconds. */
const hub = { from: 'c00001380' }

describe('a search for everything that a compound can become', () => {
  it('tells what it confirms and how far it is, and ends when the connection is dropped', async () => {
    const asking = post('reach', hub)
    const read = await new Promise<string>((resolve, reject) => {
      asking.on('response', reply => {
        expect(reply.statusCode).toBe(200)
        let text = ''
        reply.on('error', () => {})
        reply.on('end', () => reject(new Error('it was over before it could be dropped')))
        reply.on('data', (chunk: Buffer) => {
          text += chunk
          if (text.split('"rows"').length > 3 && text.includes('"progress"')) resolve(text)
        })
      })
    })
    const lines = read
      .split('\n')
      .slice(0, -1)
      .map(line => JSON.parse(line))
    const rows = lines.flatMap(line => line.rows ?? [])
    expect(rows.length).toBeGreaterThan(20)
    expect(rows.every(row => row.proven && row.routes === 1 && !row.counted && row.route.length === row.steps)).toBe(true)
    const at = lines.findLast(line => line.progress?.of).progress
    expect(at.found).toBeLessThanOrEqual(rows.length)
    expect(at.of.all === 0 || at.of.done < at.of.all).toBe(true)
    expect(await busy(300)).toBeGreaterThan(0.5)
    asking.destroy()
    await later(300)
    expect(await busy(500)).toBeLessThan(0.2)
  })

  it('makes do with what it has when it is told to: the rest stands as not proven, or its routes as not counted', async () => {
    const text = await new Promise<string>((resolve, reject) => {
      post('reach', hub).on('response', reply => {
        let read = ''
        let told = false
        reply.on('error', reject)
        reply.on('data', (chunk: Buffer) => {
          read += chunk
          if (told || !read.includes('"rows"')) return
          told = true
          const { search } = JSON.parse(read.split('\n')[0]!)
          app
            .inject({ method: 'DELETE', url: `/api/v1/reach/stream/${search}` })
            .then(answer => expect(answer.statusCode).toBe(204), reject)
        })
        reply.on('end', () => resolve(read))
      })
    })
    const lines = text
      .trim()
      .split('\n')
      .map(line => JSON.parse(line))
    const { done } = lines.at(-1)
    expect(done.complete).toBe(false)
    const told = lines.flatMap(line => line.rows ?? []).map(row => row.compound)
    const proven = done.reach.filter((row: { proven: boolean }) => row.proven).map((row: { compound: string }) => row.compound)
    expect(proven.sort()).toEqual(told.sort())
    expect(done.reach.some((row: { counted: boolean }) => !row.counted)).toBe(true)
  })

  it('on the command line says how far it is, and an interruption ends it with what there is', async () => {
    const run = await waybench(['reach', '--from', hub.from, '--library', library, '--json'], new Map(), '', /found; .* of/)
    expect(run.code).toBe(0)
    const { reach, complete } = JSON.parse(run.out)
    expect(complete).toBe(false)
    expect(reach.filter((row: { proven: boolean }) => row.proven).length).toBeGreaterThan(0)
    expect(run.err).toMatch(
      /Still searching: \d+ compounds found; (looked at|routes counted for) \d+ of \d+\. Ctrl\+C ends it with what there is\./,
    )
  })
})
