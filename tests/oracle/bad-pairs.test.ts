import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { Meeting } from '../../core/hazards/hazard-list.ts'
import { stepMeetings } from '../../core/hazards/step-meetings.ts'
import { traitsOf } from '../../core/hazards/traits.ts'
import { wasteMeetings } from '../../core/hazards/waste-meetings.ts'
import { bundled } from '../../server/library/bundled.ts'
import { chargedStep } from '../support/charged-steps.ts'
import { bundledTables, materialWith, toolkit } from '../support/hazards.ts'
import { material, smallLibrary, transformation } from '../support/small-library.ts'
import { root } from '../support/tree.ts'

type Pair = readonly [one: string, other: string, source: string]

/** Pairs as printed lists of the trade give them, and pairs that stand together on every bench; sources stand in the file. */
const pairs: {
  readonly sources: Readonly<Record<string, string>>
  readonly extra: readonly Parameters<typeof materialWith>[0][]
  readonly bad: readonly Pair[]
  readonly harmless: readonly Pair[]
} = JSON.parse(readFileSync(join(root, 'tests/support/pairs.json'), 'utf8'))

const tables = bundledTables()
const { library: bench } = bundled()
const ids = new Set([...pairs.bad, ...pairs.harmless].flat())
const bottles = [
  ...[...bench.materials.values()].filter(
    one => ids.has(one.id) || [...ids].some(id => bench.materials.get(id)?.contains?.compound === one.id),
  ),
  ...pairs.extra.map(materialWith),
  material({ id: 'nothing-in-particular' }),
  material({ id: 'its-product' }),
]
const step = (one: string, other: string) =>
  transformation({
    id: 'together',
    reactants: [{ compound: 'nothing-in-particular', coefficient: 1 }],
    products: [{ compound: 'its-product', coefficient: 1 }],
    mainProduct: 'its-product',
    limiting: 'nothing-in-particular',
    charge: [one, other].map(id => ({ material: id, role: 'other' as const, amount: 10, unit: 'g' as const })),
  })
const plain = smallLibrary(bottles)
const traits = traitsOf(plain, tables, toolkit)

/** What is said of two bottles that are charged into one vessel, or poured into one waste container. */
function said(one: string, other: string): readonly Meeting[] {
  const library = smallLibrary(bottles, [step(one, other)])
  const residue = (id: string) => ({ step: id, what: 'liquor', massG: 1, volumeMl: 1, materials: [id] })
  const waste = {
    stream: 'any',
    name: 'any',
    container: 'any',
    massG: 2,
    volumeMl: 2,
    open: false,
    neverWith: [],
    byDay: [],
    from: [residue(one), residue(other)],
  }
  return [
    ...stepMeetings(library, tables, traits, [chargedStep({ transformation: 'together' })]),
    ...wasteMeetings(library, tables, traits, [waste]),
  ]
}
const warnings = (one: string, other: string) => said(one, other).filter(meeting => !meeting.general && meeting.severity !== 'note')

describe('well-known bad pairs', () => {
  it('are at least forty, each from a list that is named', () => {
    expect(pairs.bad.length).toBeGreaterThanOrEqual(40)
    for (const [, , source] of pairs.bad) expect(pairs.sources[source], source).toBeDefined()
  })
  it.each(pairs.bad)('%s with %s', (one, other) => {
    const found = warnings(one, other).filter(meeting => meeting.materials.includes(one) && meeting.materials.includes(other))
    expect(found.length).toBeGreaterThan(0)
    for (const meeting of found) {
      expect(meeting.do.length).toBeGreaterThan(10)
      expect(meeting.consequence.length).toBeGreaterThan(3)
      expect(meeting.sources.length).toBeGreaterThan(0)
    }
  })
})

describe('harmless pairs', () => {
  it('are at least forty, each from a source that is named', () => {
    expect(pairs.harmless.length).toBeGreaterThanOrEqual(40)
    for (const [, , source] of pairs.harmless) expect(pairs.sources[source], source).toBeDefined()
  })
  it.each(pairs.harmless)('%s with %s', (one, other) => {
    expect(warnings(one, other).map(meeting => `${meeting.where}: ${meeting.title}`)).toEqual([])
  })
})
