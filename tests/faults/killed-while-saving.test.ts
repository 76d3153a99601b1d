import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { openStore } from '../../server/store/store.ts'
import { root } from '../support/tree.ts'

const folder = mkdtempSync(join(tmpdir(), 'waybench-kill-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Lets the writer acknowledge some saves, kills it on the spot, and returns the last version it had acknowledged. */
function killAfter(acknowledged: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const writer = spawn(process.execPath, ['--import', 'tsx', join(root, 'tests/faults/killed-writer.ts'), folder], { cwd: root })
    let out = ''
    let faults = ''
    let seen = 0
    writer.stderr.on('data', chunk => {
      faults += chunk
    })
    writer.stdout.on('data', chunk => {
      out += chunk
      seen += String(chunk).split('\n').length - 1
      if (seen >= acknowledged) writer.kill('SIGKILL')
    })
    writer.on('exit', () => {
      const whole = out.split('\n').slice(0, -1)
      const last = whole.at(-1)
      if (last === undefined) reject(new Error(`the writer never saved: ${faults}`))
      else resolve(Number(last.slice('ack '.length)))
    })
  })
}

describe('a server killed while it saves', () => {
  it('has every acknowledged save, and the plan is one whole version', async () => {
    for (const acknowledged of [1, 40, 7]) {
      const last = await killAfter(acknowledged)
      const store = openStore(folder)
      const plan = store.get('p')
      expect(plan?.version).toBeGreaterThanOrEqual(last)
      expect(plan?.body).toBe(`body ${plan?.version}`)
      expect(store.versions('p').map(v => v.version)).toEqual(Array.from({ length: plan!.version }, (_, i) => i + 1))
      store.close()
    }
  })
})
