import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { differenceText } from '../../../../core/library/difference-text.ts'
import { fieldDifferences } from '../../../../core/library/differences.ts'
import { materialSchema } from '../../../../core/library/material.ts'
import type { Source } from '../../../../core/library/source.ts'
import { transformationSchema } from '../../../../core/library/transformation.ts'
import { anyMaterial, anyTransformation } from '../../../support/any-record.ts'
import { library } from '../../../support/reader.ts'

// How a unit is written: SI brochure, 9th edition, 5.4; the figures are those of the records themselves.

const nameOf = (id: string): string => library.materials.get(id)?.name ?? id
const benzil = library.transformations.get('benzil-nitric-acid')!
const told = (before: object, now: object, key: string): string => differenceText(before, now, key, nameOf).replaceAll('\u00a0', ' ')
const source = (citation: string, more: Partial<Source> = {}): Source => ({ citation, checked: true, ...more })

describe('how a field differs', () => {
  it('tells a yield as a range with where it is from, one of the own bench too where only the sources say so', () => {
    const before = { ...benzil, yieldPercent: { low: 80, typical: 90, high: 98, from: 'several sources' } }
    const one = { low: 61, typical: 61, high: 61 }
    expect(told(before, { ...before, yieldPercent: { ...one, from: 'own bench' } }, 'yieldPercent')).toBe(
      'yield: 80–98 %, typically 90 (several sources) → 61 % (own bench)',
    )
    const own = { ...before, yieldPercent: one, sources: [source('own bench, 2026-11-20')] }
    expect(told(before, own, 'yieldPercent')).toMatch(/→ 61 % \(own bench\)$/)
    expect(told({ ...before, kind: 'isolation' }, { ...before, kind: 'isolation', yieldPercent: one }, 'yieldPercent')).toMatch(
      /80–98 g per 100 g/,
    )
  })

  it('tells of charges only what became of them, by the names of materials', () => {
    const [first, ...others] = benzil.charge
    const line = { ...first!, amount: 12.5, unit: 'g' as const }
    const name = nameOf(first!.material)
    const changed = told({ ...benzil, charge: [line, ...others] }, { ...benzil, charge: [{ ...line, amount: 20 }, ...others] }, 'charge')
    expect(changed).toBe(`charge: ${name} 12.5 g (${line.role}) → 20 g (${line.role})`)
    expect(told({ ...benzil, charge: [line, ...others] }, { ...benzil, charge: others }, 'charge')).toMatch(
      `charge: no longer ${name} 12.5 g`,
    )
    expect(told({ ...benzil, charge: [line, line] }, { ...benzil, charge: [line] }, 'charge')).toMatch(`charge: no longer ${name} 12.5 g`)
    expect(told({ charge: [line, others[0]] }, { charge: [others[0], line] }, 'charge')).toBe('charge: in another order')
  })

  it('tells hazards, properties and what is not stated', () => {
    const acetone = library.materials.get('acetone')!
    const { hazards: _, ...bare } = acetone
    expect(told(acetone, bare, 'hazards')).toMatch(/^hazards: .*H225.*Danger.* → not stated$/)
    expect(told({ ...acetone, meltingC: -94 }, { ...acetone, meltingC: -95 }, 'meltingC')).toBe('melting point: −94 °C → −95 °C')
    expect(told({ ...acetone, synonyms: ['a', 'b'] }, { ...acetone, synonyms: ['b', 'c'] }, 'synonyms')).toBe(
      'other names: no longer a; now also c',
    )
    expect(told({ ...acetone, synonyms: ['a'] }, { ...acetone, synonyms: [] }, 'synonyms')).toBe('other names: a → none')
    expect(told({}, { buyable: false }, 'buyable')).toBe('can be bought: not stated → no')
  })

  it('tells a citation once, whatever it speaks for', () => {
    const before = { ...benzil, sources: [] }
    const now = { ...benzil, sources: [source('Book, p. 12', { for: 'charges' }), source('Book, p. 12', { for: 'yield' })] }
    expect(told(before, now, 'sources')).toBe('sources: none → Book, p. 12 (for charges; yield)')
  })

  it.each([
    ['material', anyMaterial, materialSchema],
    ['transformation', anyTransformation, transformationSchema],
  ] as const)('of a %s: every field of the schema in words, none as it is stored', (_, any, schema) => {
    const keys = new Set<string>()
    fc.assert(
      fc.property((any as fc.Arbitrary<object>).map(tame), (any as fc.Arbitrary<object>).map(tame), (before, now) => {
        for (const { key } of fieldDifferences(before, now)) {
          keys.add(key)
          const text = differenceText(before, now, key, id => id)
          expect(text).not.toMatch(/\{"|\["|\[object|undefined|null|: stated/)
          expect(text).toMatch(/→|no longer|now also|in another order/)
        }
      }),
      { numRuns: 300 },
    )
    expect([...keys].sort()).toEqual(Object.keys(schema.shape).sort())
  })
})

/** What somebody wrote into a record stays as written: here without what is looked for. */
function tame<T>(value: T): T {
  if (typeof value === 'string') return value.replace(/[[{]|object|undefined|null|stated/g, 'x') as T
  if (typeof value !== 'object' || value === null) return value
  if (Array.isArray(value)) return value.map(tame) as T
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, tame(inner)])) as T
}
