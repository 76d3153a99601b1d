import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { testApp } from '../support/app.ts'
import { waybench } from '../support/terminal.ts'
import { root } from '../support/tree.ts'

let folder: string
let app: Awaited<ReturnType<typeof testApp>>
let plan: Record<string, unknown>
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'waybench-attack-'))
  app = await testApp()
  const { files } = await waybench(['plan', '--from', 'benzoin', '--to', 'lophine', '--have', '24 g', '--save', 'plan.json'])
  plan = JSON.parse(files.get('plan.json')!)
})
afterAll(async () => {
  await app.close()
  rmSync(folder, { recursive: true, force: true })
})

const started = (...words: string[]) =>
  spawn(process.execPath, ['--import', 'tsx', join(root, 'server/main.ts'), ...words], { cwd: root, stdio: ['ignore', 'pipe', 'pipe'] })

describe('the server', () => {
  it('cut a title at a NUL when it listed the plan', async () => {
    const title = 'lophine \u0000 and \ud800 more'
    const made = await app.inject({ method: 'POST', url: '/api/v1/plans', payload: { plan: { ...plan, title } } })
    expect(made.statusCode).toBe(201)
    const { plans } = (await app.inject('/api/v1/plans')).json()
    expect(plans[0].title).toBe('lophine   and   more')
    expect((await app.inject(`/api/v1/plans/${made.json().id}`)).json().plan.title).toBe(title)
  })

  it.each(['/nope', '/api/v1/nope', `/api/v1/plans/${'a'.repeat(300)}`, '/%c0%ae%c0%ae/', '/..%2f..%2fpackage.json'])(
    'answered %s in the words of its framework',
    async url => {
      const reply = await app.inject(url)
      expect([400, 404, 414]).toContain(reply.statusCode)
      expect(reply.json().problems[0]).toMatchObject({ code: expect.any(String), what: expect.any(String), cure: expect.any(String) })
    },
  )

  it('ran for minutes on amounts that no vessel holds', async () => {
    const settings = { ...(plan.settings as object), vessels: [{ kind: 'flask', volumeMl: 100, count: 1 }] }
    const heavy = { ...plan, settings, start: { material: 'benzoin', massG: 1e8 } }
    const reply = await app.inject({ method: 'POST', url: '/api/v1/evaluations', payload: { plan: heavy } })
    expect(reply.statusCode).toBe(422)
    expect(reply.json().problems[0].code).toBe('batches-too-many')
  })

  it('shut the door on a file that is too large before its sender could hear why', async () => {
    const port = Number(new URL(await app.listen({ port: 0, host: '127.0.0.1' })).port)
    const megabytes = 48
    const size = megabytes * 1024 * 1024
    const sender = connect(port, '127.0.0.1')
    let heard = ''
    // Writes all of it before it listens, as plain clients do; a closed door shows as EPIPE or ECONNRESET.
    await new Promise<void>((resolve, reject) => {
      sender.on('error', reject)
      sender.write(
        `POST /api/v1/own-library/check HTTP/1.1\r\nhost: 127.0.0.1:${port}\r\ncontent-type: application/json\r\ncontent-length: ${size}\r\n\r\n`,
      )
      const piece = Buffer.alloc(1024 * 1024, 32)
      const next = (left: number): void => {
        if (left === 0) resolve()
        else sender.write(piece, fault => (fault ? reject(fault) : next(left - 1)))
      }
      next(megabytes)
    })
    await new Promise<void>(resolve => {
      sender.on('data', chunk => {
        heard += chunk
        if (heard.includes('too-large')) resolve()
      })
      sender.on('close', () => resolve())
    })
    sender.destroy()
    expect(heard).toMatch(/^HTTP\/1\.1 413 /)
    expect(heard).toMatch(/"cure":"Split the file\."/)
  })

  it('never stopped while a connection stood open that asked for nothing', async () => {
    const server = started('serve', '--port', '0', '--data', folder)
    const address = await new Promise<string>((resolve, reject) => {
      let out = ''
      server.stdout.on('data', chunk => {
        out += chunk
        const found = /http:\/\/[\d.]+:(\d+)/.exec(out)
        if (found) resolve(found[1]!)
      })
      server.on('exit', () => reject(new Error('the server never began')))
    })
    const silent = connect(Number(address), '127.0.0.1')
    silent.on('error', () => {})
    await new Promise(resolve => silent.on('connect', resolve))
    const ended = new Promise<number | null>(resolve => server.on('exit', resolve))
    server.kill('SIGTERM')
    expect(await ended).toBe(0)
    silent.destroy()
  })

  it.skipIf(!existsSync('/dev/full'))(
    'printed its own source where standard output was full',
    async () => {
      const command = spawn('bash', ['-c', `"${process.execPath}" --import tsx server/main.ts --help > /dev/full`], { cwd: root })
      let err = ''
      command.stderr.on('data', chunk => {
        err += chunk
      })
      expect(await new Promise(resolve => command.on('exit', resolve))).toBe(2)
      expect(err).toMatch(/^Standard output cannot be written/)
      expect(err).not.toMatch(/\n\s+at /)
    },
    20_000,
  )
})
