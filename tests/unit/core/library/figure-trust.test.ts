import { describe, expect, it } from 'vitest'
import { materialFigures, stepFigures } from '../../../../core/library/figure-trust.ts'
import type { Material } from '../../../../core/library/material.ts'
import type { Transformation } from '../../../../core/library/transformation.ts'
import { trustLine } from '../../../../core/report/trust-words.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { soundLibrary } from './sound-library.ts'

// What each record says of itself, held against what is told of it; no outside source: the words are our own.

const page = { citation: 'a printed page', checked: true }
const step = (patch: object): Transformation => ({ ...soundLibrary().transformations.ester, ...patch }) as Transformation
const material = (patch: object): Material => ({ ...soundLibrary().materials.ethanol, ...patch }) as Material
const told = (figures: readonly { figure: string; trust: string }[]) => figures.map(one => `${one.figure} ${one.trust}`).join(', ')

describe('how sure the figures of a step are', () => {
  it.each([
    ['all read in a source', { confidence: 'checked', sources: [page], timesBasis: 'source' }, 'charges seen, yield seen, times seen'],
    ['times that are estimates', { confidence: 'checked', sources: [page] }, 'charges seen, yield seen, times remembered'],
    [
      'remembered',
      { confidence: 'memory', sources: [{ ...page, checked: false }] },
      'charges remembered, yield remembered, times remembered',
    ],
    [
      'an own yield over charges of a book',
      { confidence: 'checked', timesBasis: 'source', sources: [{ citation: 'own bench, 2026-12-03', for: 'yield', checked: true }, page] },
      'charges seen, yield own bench, times own bench',
    ],
    [
      'the own bench throughout',
      { confidence: 'checked', timesBasis: 'source', sources: [{ citation: 'own bench, 2026-12-03', checked: true }] },
      'charges own bench, yield own bench, times own bench',
    ],
  ] as const)('%s', (_, patch, expected) => expect(told(stepFigures(step(patch)))).toBe(expected))

  it('come with their source, and an estimate says that it is one', () => {
    const [charges, , times] = stepFigures(step({ confidence: 'checked', sources: [page] }))
    expect(charges!.source).toBe('a printed page')
    expect(times!.source).toBe('estimated from the operations')
  })
})

describe('how sure the figures of a material are', () => {
  it.each([
    [
      'read',
      { hazards: { codes: ['H225'], signalWord: 'Danger', from: 'EU Annex VI' }, sources: [{ ...page, for: 'properties' }] },
      'hazards seen, density seen',
    ],
    ['a density that nobody gives', { densityGPerMl: undefined, sources: [page] }, 'hazards seen, density unknown'],
    [
      'a density by memory',
      {
        sources: [
          { ...page, for: 'hazards' },
          { ...page, for: 'properties', checked: false },
        ],
      },
      'hazards seen, density remembered',
    ],
    ['no hazards', { hazards: undefined, sources: [page] }, 'hazards unknown, density seen'],
    [
      'an empty list by memory',
      { hazards: { codes: [], signalWord: 'none', from: 'memory' }, sources: [page] },
      'hazards unknown, density seen',
    ],
    ['a solid is weighed', { form: 'solid', sources: [page] }, 'hazards seen'],
  ] as const)('%s', (_, patch, expected) => expect(told(materialFigures(material(patch)))).toBe(expected))
})

it('never tells a figure as seen whose record nobody checked', () => {
  const { library } = bundled()
  let unsure = 0
  for (const one of library.transformations.values()) {
    const isSeen = one.confidence === 'checked'
    for (const figure of stepFigures(one)) if (!isSeen) expect(figure.trust, one.id).not.toBe('seen')
    if (!isSeen) unsure++
  }
  for (const one of library.materials.values()) {
    const anyChecked = one.sources.some(source => source.checked)
    for (const figure of materialFigures(one).filter(of => of.figure === 'density'))
      if (!anyChecked) expect(figure.trust, one.id).not.toBe('seen')
  }
  expect(unsure).toBeGreaterThan(0)
})

it('in one line names what was not seen, and says nothing of the rest but that it was', () => {
  const { library } = bundled()
  const sure = [{ figure: 'charges', trust: 'seen', source: 'x' }] as const
  const of = (figures: ReturnType<typeof materialFigures>) =>
    trustLine(library, { figures: sure, materials: [{ material: 'benzil', figures }] })
  expect(of([{ figure: 'hazards', trust: 'seen', source: 'x' }])).toBe('Charges: seen. Densities and hazards: seen.')
  const unknown = [{ figure: 'hazards', trust: 'unknown', source: null }] as const
  expect(of(unknown)).toBe('Charges: seen. Hazards unknown: benzil.')
  // Names hold commas themselves.
  const two = ['acetic-acid', 'benzil'].map(material => ({ material, figures: unknown }))
  expect(trustLine(library, { figures: sure, materials: two })).toMatch(/Hazards unknown: acetic acid, glacial; benzil\.$/)
})
