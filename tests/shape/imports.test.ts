import { describe, expect, it } from 'vitest'
import { filesBelow, importsOf, packagesOf, textOf } from '../support/tree.ts'

/** What each folder of the core may import, as drawn in DEVELOPERS.md; `problem` is open to all. */
const arrows: Readonly<Record<string, readonly string[]>> = {
  problem: [],
  quantity: [],
  chemistry: [],
  yields: [],
  library: ['quantity', 'chemistry'],
  reading: ['library', 'chemistry', 'quantity'],
  route: ['library', 'yields', 'chemistry', 'quantity'],
  network: ['library', 'route'],
  shopping: ['route', 'library', 'chemistry', 'quantity'],
  hazards: ['route', 'library', 'chemistry'],
  days: ['route', 'library'],
  plan: ['quantity', 'chemistry', 'yields', 'library', 'route', 'shopping', 'hazards', 'days'],
  choose: ['plan', 'network', 'shopping', 'hazards', 'route', 'library', 'quantity'],
  logbook: ['plan', 'yields', 'route', 'network', 'library', 'shopping'],
  report: ['plan', 'quantity', 'library', 'route', 'shopping', 'hazards', 'days'],
}
const core = filesBelow('core', /\.ts$/)
const folderOf = (path: string) => path.split('/')[1]!

describe('the core', () => {
  it('has the folders of the house and no other', () => {
    expect(core.length).toBeGreaterThan(50)
    const folders = new Set(core.filter(path => path.split('/').length > 2).map(folderOf))
    expect([...folders].filter(folder => !(folder in arrows))).toEqual([])
  })

  it('imports only along its arrows', () => {
    const astray = core.flatMap(path =>
      importsOf(path)
        .filter(target => {
          const to = folderOf(target)
          return !target.startsWith('core/') || (to !== folderOf(path) && to !== 'problem' && !arrows[folderOf(path)]?.includes(to))
        })
        .map(target => `${path} -> ${target}`),
    )
    expect(astray).toEqual([])
  })

  it('knows no clock, no chance, no machine', () => {
    const allowed = new Set(['zod', 'papaparse'])
    const packages = core.flatMap(path =>
      packagesOf(path)
        .filter(name => !allowed.has(name))
        .map(name => `${path} -> ${name}`),
    )
    expect(packages).toEqual([])
    const impure = core.filter(path => /\bMath\.random\b|\bDate\.now\b|\bnew Date\(\)|\bperformance\b/.test(textOf(path)))
    expect(impure).toEqual([])
  })
})

describe('the whole tree', () => {
  const sources = [...core, ...filesBelow('server', /\.ts$/), ...filesBelow('web', /\.tsx?$/)]

  it('keeps server and web apart', () => {
    const astray = sources.flatMap(path =>
      importsOf(path)
        .filter(
          target => (path.startsWith('server/') && target.startsWith('web/')) || (path.startsWith('web/') && target.startsWith('server/')),
        )
        .map(target => `${path} -> ${target}`),
    )
    // One exception, by name and reason: the printed pack is drawn by the page's own components, so that paper and screen cannot differ.
    expect(astray.filter(line => !/^server\/print\/.* -> web\/(print|map|parts)\//.test(line))).toEqual([])
  })

  it('has no circle', () => {
    const known = new Set(sources)
    const state = new Map<string, 'open' | 'done'>()
    const circles: string[] = []
    const visit = (path: string, trail: readonly string[]) => {
      if (state.get(path) === 'done') return
      if (state.get(path) === 'open') {
        circles.push([...trail.slice(trail.indexOf(path)), path].join(' -> '))
        return
      }
      state.set(path, 'open')
      for (const target of importsOf(path)) if (known.has(target)) visit(target, [...trail, path])
      state.set(path, 'done')
    }
    for (const path of sources) visit(path, [])
    expect(circles).toEqual([])
  })
})
