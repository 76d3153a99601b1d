import { describe, expect, it } from 'vitest'
import { loadHazardRecords, withRecord } from '../../../../core/hazards/records.ts'
import { materialWith, tableTexts } from '../../../support/hazards.ts'

const loaded = loadHazardRecords(tableTexts(/^hazards-/))
if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems))
const records = loaded.value
const entered = (own: Parameters<typeof materialWith>[0]) => materialWith(own)

describe('hazard records', () => {
  it('are all there', () => {
    expect(records.count).toBeGreaterThanOrEqual(910)
  })
  it('are found by CAS number, whatever the name', () => {
    expect(records.of(entered({ id: 'x', name: 'pear drops', cas: '123-92-2' }))?.id).toBe('isoamyl-acetate')
  })
  it('are found by name, synonym or id, whatever the case and the hyphens', () => {
    for (const name of ['isoamyl acetate', 'Isoamyl-Acetate', 'ISOAMYL ACETATE'])
      expect(records.of(entered({ id: 'x', name }))?.cas).toBe('123-92-2')
    expect(records.of(entered({ id: 'x', name: 'banana oil', synonyms: ['isoamyl acetate'] }))?.cas).toBe('123-92-2')
  })
  it('are not found where a CAS number stands for several bottles and the name for none', () => {
    expect(records.of(entered({ id: 'x', name: 'some acid', cas: '7647-01-0' }))).toBeNull()
    expect(records.of(entered({ id: 'x', name: 'a dilute one', cas: '123-92-2', kind: 'mixture' }))).toBeNull()
    expect(records.of(entered({ id: 'x', name: 'hydrochloric acid 3M', cas: '7647-01-0', synonyms: ['hydrochloric-acid-3m'] }))?.id).toBe(
      'hydrochloric-acid-3m',
    )
  })
  it('are not found by a name that belongs to another CAS number', () => {
    expect(records.of(entered({ id: 'x', name: 'isoamyl acetate', cas: '64-17-5' }))?.id ?? null).not.toBe('isoamyl-acetate')
  })
})

describe('what a material takes over', () => {
  const record = records.of(entered({ id: 'x', name: 'isoamyl acetate' }))!
  it('are codes, flash point, groups, limits, each with its sources', () => {
    const material = withRecord(entered({ id: 'x', name: 'isoamyl acetate', form: 'liquid' }), record)
    // EU Annex VI, index 607-130-00-2: H226, EUH066. NFPA 497 (2008): flash point 25 C.
    expect(material.hazards).toEqual({ codes: ['H226', 'EUH066'], signalWord: 'Warning', from: 'EU Annex VI' })
    expect(material).toMatchObject({
      flashC: 25,
      reactivityGroups: [13],
      storageGroup: 'flammable',
      wasteStream: 'non-halogenated-organic',
    })
    expect(material.sources.some(source => source.for === 'hazards' && source.checked)).toBe(true)
    expect(material.sources.some(source => source.for === 'flash')).toBe(true)
  })
  it('never displaces what was stated', () => {
    const stated = entered({
      id: 'x',
      name: 'isoamyl acetate',
      flashC: 30,
      hazards: { codes: ['H225'], signalWord: 'Danger', from: 'supplier SDS' },
    })
    const material = withRecord(stated, record)
    expect(material).toMatchObject({ flashC: 30, hazards: { codes: ['H225'] } })
    expect(material.sources.some(source => source.for === 'flash' || source.for === 'hazards')).toBe(false)
  })
})
