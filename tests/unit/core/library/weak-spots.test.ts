import { describe, expect, it } from 'vitest'
import { trustInPhysical } from '../../../../core/library/physical.ts'
import type { Source } from '../../../../core/library/source.ts'
import { trustInHazards, trustInYield } from '../../../../core/library/trust.ts'
import { weakSpots } from '../../../../core/library/weak-spots.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const seen: Source = { citation: 'a book', checked: true }
const bench: Source = { citation: 'own bench, 2026-12-03', checked: true }
const report = { percent: 70, source: seen }

describe('how sure a figure is', () => {
  it('of a yield: seen, remembered, own bench', () => {
    expect(trustInYield(transformation({ id: 't', confidence: 'checked', sources: [seen] }))).toBe('seen')
    expect(trustInYield(transformation({ id: 't', confidence: 'memory', sources: [seen] }))).toBe('remembered')
    for (const [from, trust] of [
      ['source range', 'seen'],
      ['a book', 'seen'],
      ['my guess', 'remembered'],
    ] as const)
      expect(
        trustInYield(
          transformation({ id: 't', confidence: 'checked', sources: [seen], yieldPercent: { low: 1, typical: 2, high: 3, from } }),
        ),
      ).toBe(trust)
    expect(trustInYield(transformation({ id: 't', confidence: 'checked', sources: [bench, seen] }))).toBe('own bench')
  })
  it('of hazards: an empty list that is only remembered is unknown', () => {
    const with_ = (from: string | undefined, codes: string[]) =>
      trustInHazards(material({ id: 'm', hazards: { codes, signalWord: 'none', ...(from === undefined ? {} : { from }) } }))
    expect(with_('EU Annex VI', [])).toBe('seen')
    expect(with_('memory', ['H225'])).toBe('remembered')
    expect(with_('memory', [])).toBe('unknown')
    expect(with_(undefined, [])).toBe('unknown')
    // Who assigned them is a data sheet, a label, a list, or a source that was read; no other word makes a material safe.
    for (const from of ['my guess', 'x', '?', 'remembered', 'typed', 'label, as I remember it', 'table mine.csv']) {
      expect(with_(from, []), from).toBe('unknown')
      expect(with_(from, ['H225']), from).toBe('remembered')
    }
    for (const from of ['safety data sheet of the maker', 'label of the bottle', 'common practice: suppliers assign none in this form'])
      expect(with_(from, []), from).toBe('seen')
    const none = { codes: [], signalWord: 'none' as const }
    for (const [checked, trust] of [
      [true, 'seen'],
      [false, 'unknown'],
    ] as const)
      expect(trustInHazards({ hazards: { ...none, from: 'Bretherick' }, sources: [{ citation: 'Bretherick', checked }] })).toBe(trust)
  })
  it('of a density: by the sources that speak of it', () => {
    const density = (patch: object) => trustInPhysical(material({ id: 'm', ...patch }), 'density')
    expect(density({})).toBe('unknown')
    expect(density({ densityGPerMl: 1, sources: [{ ...seen, for: 'hazards' }] })).toBe('remembered')
    expect(density({ densityGPerMl: 1, sources: [{ ...seen, for: 'density' }] })).toBe('seen')
  })
})

describe('weak spots', () => {
  const kinds = (library: Parameters<typeof weakSpots>[0], runs?: ReadonlyMap<string, number>) =>
    weakSpots(library, runs ?? null).map(spot => `${spot.kind}: ${spot.id}`)

  it('are the single source, the memory, the estimate, the missing density and label', () => {
    const library = smallLibrary(
      [
        material({ id: 'bare', hazards: { codes: [], signalWord: 'none', from: 'memory' } }),
        material({ id: 'poured', form: 'liquid' }),
        material({ id: 'weighed' }),
      ],
      [
        transformation({ id: 'one-source', confidence: 'checked', sources: [seen], timesBasis: 'source' }),
        transformation({ id: 'two-reports', confidence: 'checked', sources: [seen], timesBasis: 'source', reports: [report, report] }),
        transformation({ id: 'remembered', confidence: 'memory', sources: [seen], timesBasis: 'estimate' }),
      ],
    )
    expect(kinds(library)).toEqual([
      'hazards unknown: bare',
      'no density: poured',
      'remembered yield: remembered',
      'single-source yield: one-source',
      'remembered charges: remembered',
      'estimated times: remembered',
    ])
  })
  it('tell what was never run only where a log is at hand', () => {
    const library = smallLibrary(
      [],
      ['a', 'b'].map(id => transformation({ id, confidence: 'checked', sources: [seen], timesBasis: 'source', reports: [report, report] })),
    )
    expect(kinds(library)).toEqual([])
    expect(kinds(library, new Map([['a', 2]]))).toEqual(['never run here: b'])
  })
  it('do not call never run here what was measured at the own bench', () => {
    const own = transformation({ id: 'own', confidence: 'checked', sources: [bench], timesBasis: 'source', reports: [report, report] })
    expect(kinds(smallLibrary([], [own]), new Map())).toEqual([])
  })
})
