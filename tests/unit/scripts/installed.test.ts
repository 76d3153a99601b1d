import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it } from 'vitest'
// @ts-expect-error plain JavaScript that runs before anything is installed
import { isInstalled } from '../../../scripts/installed.js'

it('accepts packages that somebody else installed, and misses one that lacks or is another version', () => {
  const root = mkdtempSync(join(tmpdir(), 'installed-'))
  mkdirSync(join(root, 'node_modules'))
  const write = (path: string, packages: object) => writeFileSync(join(root, path), JSON.stringify({ packages }))
  const wanted = { '': {}, 'node_modules/a': { version: '1.0.0' }, 'node_modules/b': { version: '2.0.0', optional: true } }
  write('package-lock.json', wanted)
  expect(isInstalled(root)).toBe(false)
  write('node_modules/.package-lock.json', { 'node_modules/a': { version: '1.0.0' } })
  expect(isInstalled(root)).toBe(true)
  write('node_modules/.package-lock.json', { 'node_modules/a': { version: '1.0.1' } })
  expect(isInstalled(root)).toBe(false)
  rmSync(root, { recursive: true })
})
