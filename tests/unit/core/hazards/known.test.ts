import { describe, expect, it } from 'vitest'
import { hazardClassOf, isGravest } from '../../../../core/hazards/classes.ts'
import { compareCounts, hazardCounts } from '../../../../core/hazards/counts.ts'
import { codesInEffect, isOnlyEvolved, knownOf } from '../../../../core/hazards/known.ts'
import { libraryWith, materialWith } from '../../../support/hazards.ts'

type Hazards = NonNullable<Parameters<typeof materialWith>[0]['hazards']>
const withHazards = (hazards?: Hazards) => materialWith({ id: 'thing', ...(hazards && { hazards }) })

describe('how sure a label is', () => {
  it.each([
    ['no hazard data', undefined, 'unknown'],
    ['an empty list from memory', { codes: [], signalWord: 'none', from: 'memory' }, 'unknown'],
    ['an empty list from nobody', { codes: [], signalWord: 'none' }, 'unknown'],
    [
      'an empty list that suppliers stand behind',
      { codes: [], signalWord: 'none', from: 'common practice: suppliers assign none in this form' },
      'seen',
    ],
    ['codes from memory', { codes: ['H302'], signalWord: 'Warning', from: 'memory' }, 'remembered'],
    ['codes from nobody', { codes: ['H302'], signalWord: 'Warning' }, 'remembered'],
    ['codes from a table', { codes: ['H302'], signalWord: 'Warning', from: 'EU Annex VI' }, 'seen'],
  ] as const)('%s: %s', (_, hazards, known) => {
    expect(knownOf(withHazards(hazards && { ...hazards, codes: [...hazards.codes] }))).toBe(known)
  })
})

describe('classes of hazard', () => {
  // The list of design 3.14, with suffixes; neighbours that are not on it.
  it.each(['H200', 'H205', 'H240', 'H241', 'H300', 'H310', 'H330', 'H340', 'H350', 'H350i', 'H360', 'H360FD', 'H300+H310'])(
    '%s is gravest',
    code => {
      expect(isGravest(code)).toBe(true)
    },
  )
  it.each(['H206', 'H242', 'H301', 'H311', 'H331', 'H341', 'H351', 'H361', 'H370', 'H314', 'EUH070', 'H301+H311'])('%s is not', code => {
    expect(isGravest(code)).toBe(false)
  })
  it('counts a gravest code as gravest even where it is only remembered', () => {
    expect(hazardClassOf(withHazards({ codes: ['H350'], signalWord: 'Danger', from: 'memory' }))).toBe('gravest')
  })
  it('tells danger from warning by the signal word', () => {
    expect(hazardClassOf(withHazards({ codes: ['H314'], signalWord: 'Danger', from: 'EU Annex VI' }))).toBe('danger')
    expect(hazardClassOf(withHazards({ codes: ['H319'], signalWord: 'Warning', from: 'EU Annex VI' }))).toBe('warning')
    expect(hazardClassOf(withHazards({ codes: ['H412'], signalWord: 'none', from: 'EU Annex VI' }))).toBe('warning')
  })
  it('calls nothing harmless that nobody stands behind', () => {
    expect(hazardClassOf(withHazards())).toBe('unknown')
    expect(hazardClassOf(withHazards({ codes: [], signalWord: 'none', from: 'memory' }))).toBe('unknown')
    expect(hazardClassOf(withHazards({ codes: [], signalWord: 'none', from: 'NITE (Japan)' }))).toBe('none')
  })
})

describe('a gas that a step gives off', () => {
  const gas = (from: string, codes: string[]) => materialWith({ id: 'gas', form: 'gas', hazards: { codes, signalWord: 'Danger', from } })
  it('goes without the codes of its cylinder', () => {
    expect(codesInEffect(gas('NITE (Japan)', ['H220', 'H280', 'H281']), true)).toEqual(['H220'])
    expect(codesInEffect(gas('NITE (Japan)', ['H220', 'H280']), false)).toEqual(['H220', 'H280'])
  })
  it('keeps them where it is charged as well', () => {
    expect(isOnlyEvolved(gas('x', []), ['gas', 'by-product'])).toBe(true)
    expect(isOnlyEvolved(gas('x', []), ['gas', 'charged'])).toBe(false)
    expect(isOnlyEvolved(materialWith({ id: 'liquid', form: 'liquid' }), ['by-product'])).toBe(false)
  })
  it('is none with a source and unknown without one, once nothing is left', () => {
    expect(hazardClassOf(gas('NITE (Japan)', ['H280']), ['gas'])).toBe('none')
    expect(hazardClassOf(gas('memory', ['H280']), ['gas'])).toBe('unknown')
    expect(hazardClassOf(gas('NITE (Japan)', ['H280']), ['charged'])).toBe('danger')
  })
})

describe('counts', () => {
  const materials = [
    materialWith({ id: 'a', hazards: { codes: ['H350'], signalWord: 'Danger', from: 'EU Annex VI' } }),
    materialWith({ id: 'b' }),
    materialWith({ id: 'c', hazards: { codes: ['H314'], signalWord: 'Danger', from: 'EU Annex VI' } }),
    materialWith({ id: 'd', hazards: { codes: ['H319'], signalWord: 'Warning', from: 'EU Annex VI' } }),
    materialWith({ id: 'e', hazards: { codes: [], signalWord: 'none', from: 'NITE (Japan)' } }),
  ]
  it('counts every material once in its class, and none assigned not at all', () => {
    const counts = hazardCounts(
      libraryWith(materials),
      materials.map(material => ({ material: material.id, as: ['charged'] })),
    )
    expect(counts).toEqual({ gravest: 1, unknown: 1, danger: 1, warning: 1 })
  })
  it('compares class by class, worst first: one gravest outweighs any number of warnings', () => {
    const one = { gravest: 1, unknown: 0, danger: 0, warning: 0 }
    const many = { gravest: 0, unknown: 3, danger: 9, warning: 9 }
    expect(compareCounts(one, many)).toBeGreaterThan(0)
    expect(compareCounts(many, { ...many, warning: 8 })).toBeGreaterThan(0)
    expect(compareCounts(many, many)).toBe(0)
  })
})
