import { describe, expect, it } from 'vitest'
import { loadLibrary } from '../../core/library/load.ts'
import { bundledFiles, bundledTables, keysOf } from '../../server/library/bundled.ts'
import { filesBelow, textOf } from '../support/tree.ts'

const readme = textOf('routes-data/README.md')

/** Hosts of every address in a JSON value. */
function hostsIn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(hostsIn)
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'url' && typeof inner === 'string' ? [/^https?:\/\/([^/]+)/.exec(inner)?.[1] ?? `unreadable: ${inner}`] : hostsIn(inner),
  )
}

describe('the README of the data', () => {
  const origins = readme.slice(readme.indexOf('## Where the data come from'))
  const named = new Set([...origins.matchAll(/`([^`\s]+\.[^`\s]+)`/g)].map(match => match[1]!))
  const cited = new Set(filesBelow('routes-data', /\.json$/).flatMap(path => hostsIn(JSON.parse(textOf(path)))))

  it('names the host of every citation', () => {
    expect(cited.size).toBeGreaterThanOrEqual(290)
    expect([...cited].filter(host => !named.has(host))).toEqual([])
  })
  it('names none that is no longer cited', () => {
    expect([...named].filter(host => !cited.has(host))).toEqual([])
  })
  it('tells every file and how many records it holds', () => {
    for (const { name, text } of bundledFiles()) {
      const { materials, transformations, title } = JSON.parse(text)
      expect(readme).toContain(`| \`${name.split('/')[1]}\` | ${materials.length + transformations.length} | ${title} |`)
    }
  })
  it('shows an example that the loader takes beside the bundled library', () => {
    const example = /```json\n(.*?)```/s.exec(readme)?.[1] ?? ''
    const loaded = loadLibrary([...bundledFiles(), { name: 'README.md', text: example }], { tables: keysOf(bundledTables()) })
    expect(loaded.ok ? loaded.warnings.filter(warning => warning.where[0] === 'README.md') : loaded.problems).toEqual([])
    expect(loaded.ok && loaded.value.transformations.has('sodium-benzoate-bicarbonate')).toBe(true)
  })
})
