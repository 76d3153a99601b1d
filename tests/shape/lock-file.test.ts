import { describe, expect, it } from 'vitest'
import { textOf } from '../support/tree.ts'

interface Entry {
  readonly version?: string
  readonly resolved?: string
  readonly integrity?: string
  readonly link?: boolean
  readonly optionalDependencies?: Readonly<Record<string, string>>
  readonly engines?: { readonly node?: string }
  readonly dev?: boolean
}
const lock = JSON.parse(textOf('package-lock.json')) as { packages: Record<string, Entry> }
const entries = Object.entries(lock.packages).filter(([path]) => path !== '')

describe('the lock file', () => {
  it('holds no download address, so that it works with any registry', () => {
    expect(entries.length).toBeGreaterThan(100)
    expect(entries.filter(([, entry]) => entry.resolved !== undefined).map(([path]) => path)).toEqual([])
    expect(textOf('package-lock.json')).not.toMatch(/"resolved"|https?:\/\/[^"]*\.tgz/)
  })

  it('pins every package with a checksum', () => {
    expect(entries.filter(([, entry]) => !entry.version || !entry.integrity).map(([path]) => path)).toEqual([])
  })

  it('has an entry for every optional package of another platform', () => {
    const names = new Set(entries.map(([path]) => path.split('node_modules/').at(-1)))
    const missing = entries.flatMap(([, entry]) => Object.keys(entry.optionalDependencies ?? {}).filter(name => !names.has(name)))
    expect(missing).toEqual([])
  })

  it('asks for no later Node than the project does', () => {
    const later = entries.filter(([, entry]) => /^>=\s*2[1-9]|^\^2[1-9]/.test(entry.engines?.node ?? '')).map(([path]) => path)
    expect(later).toEqual([])
  })

  it('is pinned exactly in package.json', () => {
    const { dependencies, devDependencies } = JSON.parse(textOf('package.json')) as Record<
      'dependencies' | 'devDependencies',
      Record<string, string>
    >
    const loose = Object.entries({ ...dependencies, ...devDependencies }).filter(
      ([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version),
    )
    expect(loose).toEqual([])
  })
})
