import { beforeAll, describe, expect, it, vi } from 'vitest'
import { toldDifferences } from '../../../../core/library/differences.ts'
import { fewerHazards, hazardsLost } from '../../../../core/library/hazards-lost.ts'
import { type Material, materialSchema } from '../../../../core/library/material.ts'
import { trustInPhysical } from '../../../../core/library/physical.ts'
import { trustInHazards } from '../../../../core/library/trust.ts'
import { identified } from '../../../../server/library/identified.ts'
import { openWorkshop, type Workshop } from '../../../../server/library/workshop.ts'
import { emptyMaterial, type TypedMaterial } from '../../../../web/entry/material-typed.ts'
import { filledFrom } from '../../../../web/entry/mending.ts'

// The page keeps which part of it stands in the address.
vi.stubGlobal('location', { search: '', href: 'http://localhost/' })
vi.stubGlobal('addEventListener', () => {})
const { asked, materialLacks, materialRecord } = await import('../../../../web/entry/material-draft.ts')

let workshop: Workshop
beforeAll(async () => {
  workshop = await openWorkshop([])
})
const nameOf = (id: string): string => workshop.library.materials.get(id)!.name
const filled = (over: Material): TypedMaterial => ({ ...emptyMaterial, ...filledFrom(over, nameOf) })
const mended = (over: Material, patch: Partial<TypedMaterial>) => {
  const typed = { ...filled(over), ...patch }
  const answer = identified(workshop, asked(typed))
  const record = materialSchema.parse(materialRecord(typed, answer, '2026-12-03'))
  const fields = toldDifferences(over, record, nameOf)
  const row = { list: 'materials' as const, id: over.id, name: over.name, change: 'overrides' as const, fields }
  return { record, row, lacking: materialLacks(typed, answer).map(one => one.field), problems: answer.problems, matches: answer.matches }
}
const of = (id: string): Material => workshop.library.materials.get(id)!

describe('a record of the library that is put right', () => {
  it('says a bundled record word for word until something is changed, and asks nothing', () => {
    // A few of each sort: all of them take nine seconds, and were tried once.
    const seen = new Map<string, number>()
    const some = [...workshop.library.materials.values()].filter(({ kind, form, smiles }) => {
      const sort = `${kind} ${form} ${smiles === undefined}`
      seen.set(sort, (seen.get(sort) ?? 0) + 1)
      return seen.get(sort)! <= 3
    })
    expect(some.length).toBeGreaterThan(20)
    for (const over of some) {
      const { record, lacking, problems, matches } = mended(over, {})
      expect(record, over.id).toEqual(over)
      expect([...lacking, ...problems, ...matches], over.id).toEqual([])
    }
  })
  it('changes a figure alone, and asks by whose word', () => {
    const over = of('benzil')
    // Benzil, CRC Handbook: mp 94.87 °C; typed here in another unit. 94.87 + 273.15 = 368.02 K.
    expect(mended(over, { melting: '368.02 K' }).lacking).toEqual(['known'])
    expect(mended(over, { melting: '368.02 K', known: 'checked' }).lacking).toEqual(['source'])
    const { record, row, lacking } = mended(over, { melting: '368.02 K', known: 'memory', source: 'a lecture' })
    expect(lacking).toEqual([])
    expect(row.fields.map(one => one.key)).toEqual(['meltingC', 'sources'])
    expect(record.meltingC).toBeCloseTo(94.87, 9)
    // Only remembered, however well the rest of the record was read.
    expect(trustInPhysical(record, 'melting point')).toBe('remembered')
    for (const figure of ['density', 'boiling point', 'flash point'] as const)
      expect(trustInPhysical(record, figure)).toBe(trustInPhysical(over, figure))
    expect(trustInHazards(record)).toBe(trustInHazards(over))
    expect(hazardsLost([row])).toEqual([])
  })
  it('says by whose word a figure stands when it is put right a second time', () => {
    const once = mended(of('benzil'), { density: '1.1', melting: '96', known: 'checked', source: 'a data sheet' }).record
    const twice = mended(once, { density: '1.23', known: 'memory' }).record
    expect([trustInPhysical(twice, 'density'), trustInPhysical(twice, 'melting point')]).toEqual(['remembered', 'seen'])
    expect(twice.sources.filter(one => one.citation === 'a data sheet').map(one => one.for)).toEqual(['melting point'])
  })
  it('gets hazards with who assigned them', () => {
    const { hazards: _known, ...over } = of('benzil')
    expect(trustInHazards(over)).toBe('unknown')
    const typed = { hazards: 'typed' as const, codes: 'H302 H315', signalWord: 'Warning' as const }
    expect(mended(over, typed).lacking).toEqual(['codesFrom'])
    const { record, lacking, row } = mended(over, { ...typed, codesFrom: 'data sheet of the maker, 2026' })
    expect(lacking).toEqual([])
    expect(record.hazards).toEqual({ codes: ['H302', 'H315'], signalWord: 'Warning', from: 'data sheet of the maker, 2026' })
    expect(trustInHazards(record)).toBe('seen')
    expect(trustInHazards(mended(over, { ...typed, codesFrom: 'memory' }).record)).toBe('remembered')
    expect([fewerHazards(row), hazardsLost([row])]).toEqual([null, []])
  })
  it('never loses a known hazard without a word', () => {
    // Acetone, Annex VI of Regulation (EC) 1272/2008: H225, H319, H336, danger; EUH066.
    const less = mended(of('acetone'), { hazards: 'typed', codes: 'H225, H336, EUH066', signalWord: 'Warning', codesFrom: 'a bottle' })
    expect(fewerHazards(less.row)).toBe(
      'Fewer hazards than the record it stands in place of: H319 is gone, the signal word falls from Danger to Warning.',
    )
    expect(hazardsLost([less.row])[0]).toMatchObject({ code: 'hazards-become-fewer', where: ['materials', 'acetone'] })
    const none = mended(of('acetone'), { hazards: 'typed', codes: '', codesFrom: 'memory' })
    expect(hazardsLost([none.row])[0]).toMatchObject({ code: 'hazards-become-unknown' })
    const more = mended(of('acetone'), { hazards: 'typed', codes: 'H225, H336, H319, EUH066, H350', signalWord: 'Danger', codesFrom: 'x' })
    expect(hazardsLost([more.row])).toEqual([])
  })
  it('does not take a figure that it cannot read', () => {
    expect(mended(of('benzil'), { melting: '94-96', known: 'own' }).lacking).toEqual(['melting'])
    expect(mended(of('benzil'), { boiling: '9e6', known: 'own' }).lacking).toEqual(['boiling'])
    expect(mended(of('benzil'), { flash: 'warm', known: 'own' }).lacking).toEqual(['flash'])
    // 451 °F = 232.78 °C (NIST SP 811: t/°C = (t/°F - 32)/1.8).
    expect(mended(of('benzil'), { flash: '451 °F', known: 'own' }).record.flashC).toBeCloseTo(232.7778, 4)
  })

  it('takes other names and a note by nobody’s word, an exposure limit by somebody’s', () => {
    const over = of('acetone')
    expect(over.exposureLimit).toBeDefined()
    const synonyms = [...(over.synonyms ?? []), 'rinse of the bench']
    const named = mended(over, { synonyms: `${synonyms.join('; ')};`, note: 'From the blue can.' })
    expect(named.lacking).toEqual([])
    expect(named.record).toEqual({ ...over, synonyms, note: 'From the blue can.' })
    expect(mended(over, { synonyms: '' }).record).not.toHaveProperty('synonyms')
    // Directive 2000/39/EC: acetone, eight hours, 500 ppm (from memory).
    const limit = { twa: '500 ppm', stel: '', ceiling: '', notation: '' }
    expect(mended(over, { ...limit, basis: '' }).lacking).toEqual(['basis', 'known'])
    const { record, lacking } = mended(over, { ...limit, basis: 'EU', known: 'checked', source: 'Directive 2000/39/EC' })
    expect([record.exposureLimit, lacking]).toEqual([{ basis: 'EU', twa: '500 ppm' }, []])
    expect(record.sources[0]).toEqual({ citation: 'Directive 2000/39/EC', for: 'exposure limit', checked: true })
    expect(trustInPhysical(record, 'exposure limit')).toBe('seen')
    expect(mended(over, { twa: '', stel: '', ceiling: '', notation: '', known: 'memory' }).record).not.toHaveProperty('exposureLimit')
  })
})
