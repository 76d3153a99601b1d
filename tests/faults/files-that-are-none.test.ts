import { execFile } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadLibrary } from '../../core/library/load.ts'
import { parseJson } from '../../core/problem/json.ts'
import { readText, writeText } from '../../server/files.ts'
import { Refusal } from '../../server/refusal.ts'
import { openStore } from '../../server/store/store.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'waybench-files-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const refusedIn = (act: () => unknown): string => {
  try {
    act()
  } catch (error) {
    if (error instanceof Refusal) return error.problems.map(p => p.what).join(' ')
    throw error
  }
  return 'nothing'
}

describe('reading', () => {
  it.skipIf(!existsSync('/dev/zero'))('went on for ever from a device without an end', () => {
    expect(refusedIn(() => readText('/dev/zero'))).toMatch(/larger than 200 MB/)
  })

  it('told UTF-16 as a misplaced bracket', () => {
    const path = join(folder, 'utf16.json')
    writeFileSync(path, Buffer.from('\ufeff{"format":"waybench-plan"}', 'utf16le'))
    expect(refusedIn(() => readText(path))).toMatch(/UTF-16; save it as UTF-8/)
  })

  it('replaced the letters of another encoding in silence', () => {
    const path = join(folder, 'latin.json')
    writeFileSync(path, Buffer.from([0x7b, 0x22, 0xe9, 0x22, 0x7d]))
    expect(refusedIn(() => readText(path))).toMatch(/no text in UTF-8/)
  })

  it('overflowed the stack on one long text in quotes', () => {
    const long = `"${'a'.repeat(20_000_000)}"`
    expect(parseJson('long.json', long).ok).toBe(true)
  })

  it('overflowed the stack on a library with a fault in each of 200 000 records', () => {
    const records = Array.from({ length: 200_000 }, (_, i) => `{"id":"m${i}"}`).join(',')
    const text = `{"format":"waybench-library","version":1,"title":"x","materials":[${records}],"transformations":[]}`
    const loaded = loadLibrary([{ name: 'faulty.json', text }])
    expect(loaded.ok).toBe(false)
    if (loaded.ok) return
    expect(loaded.problems.length).toBe(10_001)
    expect(loaded.problems.at(-1)?.code).toBe('problems-further')
  })
})

describe('writing', () => {
  it.skipIf(!existsSync('/dev/full'))('told a full disk by the name of a constant', () => {
    expect(refusedIn(() => writeText('/dev/full', 'text'))).toMatch(/no room left on the disk/)
  })

  it('told a missing folder as a missing file', () => {
    expect(refusedIn(() => writeText(join(folder, 'none', 'plan.json'), 'text'))).toMatch(/no such folder/)
  })

  it('replaces a file by one that was written whole, keeps its rights and leaves nothing beside it', () => {
    const path = join(folder, 'kept.json')
    writeFileSync(path, 'before', { mode: 0o640 })
    writeText(path, 'after')
    expect(readFileSync(path, 'utf8')).toBe('after')
    expect(statSync(path).mode & 0o777).toBe(0o640)
    expect(readdirSync(folder).filter(name => name.includes('.part'))).toEqual([])
  })

  // The limit on file sizes that a shell sets stands for a disk that fills up in the middle of a write.
  it.skipIf(process.platform === 'win32')(
    'emptied the saved plan where the disk filled up while a run was logged',
    async () => {
      const path = join(folder, 'plan.json')
      const before = 'x'.repeat(4000)
      writeFileSync(path, before)
      const program = `import { writeText } from ${JSON.stringify(join(import.meta.dirname, '../../server/files.ts'))}
      process.on('SIGXFSZ', () => {})
      try { writeText(${JSON.stringify(path)}, 'y'.repeat(1_000_000)) } catch (error) { console.log(error.problems[0].code) }`
      const script = join(folder, 'write.ts')
      writeFileSync(script, program)
      const command = `ulimit -f 16; exec "${process.execPath}" --import tsx "${script}"`
      const { stdout } = await promisify(execFile)('bash', ['-c', command], { cwd: join(import.meta.dirname, '../..') })
      expect(stdout.trim()).toBe('file-not-written')
      expect(readFileSync(path, 'utf8')).toBe(before)
    },
    30_000,
  )

  it.skipIf(!existsSync('/proc/self'))('never came back from a data folder that the system keeps from being made', () => {
    expect(() => openStore('/proc/none/data')).toThrow()
  })
})
