import { describe, expect, it } from 'vitest'
import {
  chargesFigure,
  type FigureTrust,
  lineFigure,
  materialFigures,
  recordFigure,
  stepFigures,
} from '../../../../core/library/figure-trust.ts'
import type { Material } from '../../../../core/library/material.ts'
import type { Transformation } from '../../../../core/library/transformation.ts'
import { trustLine } from '../../../../core/report/trust-words.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { soundLibrary } from './sound-library.ts'

// What each record says of itself, held against what is told of it; no outside source: the words are our own.

const page = { citation: 'a printed page', checked: true }
/** What a test does not ask about. */
const bare = { temperatureC: undefined, largestProvenG: undefined, smallestProvenG: undefined, holdPoint: undefined }
const step = (patch: object): Transformation => ({ ...soundLibrary().transformations.ester, ...bare, ...patch }) as Transformation
const material = (patch: object): Material => ({ ...soundLibrary().materials.ethanol, ...patch }) as Material
const told = (figures: readonly { figure: string; mark: string }[]) => figures.map(one => `${one.figure} ${one.mark}`).join(', ')

describe('how sure the figures of a step are', () => {
  const range = { low: 60, typical: 66, high: 70, from: 'source range' }
  it.each([
    [
      'all read in a source',
      { confidence: 'checked', sources: [page], timesBasis: 'source', yieldPercent: range },
      'charges seen, yield seen, range of the yield seen, times seen',
    ],
    [
      'times that are estimates, and ends of a range that the source does not give',
      { confidence: 'checked', sources: [page], yieldPercent: { ...range, from: 'source single value' } },
      'charges seen, yield seen, range of the yield derived, times estimated',
    ],
    [
      'ends that whoever entered the step gave with its yield: no allowance of the library',
      { confidence: 'checked', sources: [page], timesBasis: 'source', yieldPercent: { ...range, from: 'as entered' } },
      'charges seen, yield seen, range of the yield seen, times seen',
    ],
    [
      'the same from memory',
      {
        confidence: 'memory',
        sources: [{ ...page, checked: false }],
        timesBasis: 'source',
        yieldPercent: { ...range, from: 'as entered' },
      },
      'charges remembered, yield remembered, range of the yield remembered, times remembered',
    ],
    [
      'remembered',
      { confidence: 'memory', sources: [{ ...page, checked: false }] },
      'charges remembered, yield remembered, range of the yield remembered, times estimated',
    ],
    [
      'a yield from memory over charges that were read',
      { confidence: 'checked', sources: [page], timesBasis: 'source', yieldPercent: { ...range, from: 'memory' } },
      'charges seen, yield remembered, range of the yield remembered, times seen',
    ],
    [
      'an own yield over charges and times of a book',
      { confidence: 'checked', timesBasis: 'source', sources: [{ citation: 'own bench, 2026-12-03', for: 'yield', checked: true }, page] },
      'charges seen, yield own bench, range of the yield own bench, times seen',
    ],
    [
      'the own bench throughout',
      { confidence: 'checked', timesBasis: 'source', sources: [{ citation: 'own bench, 2026-12-03', checked: true }] },
      'charges own bench, yield own bench, range of the yield own bench, times own bench',
    ],
    [
      'temperature and scale by the sources that name them, else by the whole record',
      {
        confidence: 'checked',
        timesBasis: 'source',
        yieldPercent: range,
        temperatureC: [20, 30],
        largestProvenG: 50,
        smallestProvenG: 1,
        sources: [page, { ...page, for: 'largest scale', checked: false }],
      },
      'charges seen, yield seen, range of the yield seen, times seen, temperature seen, largest scale remembered, smallest scale seen',
    ],
  ] as const)('%s', (_, patch, expected) => expect(told(stepFigures(step(patch)))).toBe(expected))

  it('come with their source; an estimate says that it is one, and a source of the whole record that it is that', () => {
    const [charges, , , times, temperature] = stepFigures(step({ confidence: 'checked', sources: [page], temperatureC: [20, 30] }))
    expect(charges!.source).toBe('a printed page')
    expect(times!.source).toBe('estimated from the operations')
    expect(temperature!.source).toBe('for the whole record: a printed page')
  })

  it('of the lines of a charge: as the source gives them, reckoned, or left open', () => {
    const one = step({ confidence: 'checked', sources: [page] })
    const line = { material: 'ethanol', role: 'solvent', amount: 5, unit: 'mL' } as const
    expect(lineFigure(one, line).mark).toBe('seen')
    expect(lineFigure(one, { ...line, derived: true })).toMatchObject({ mark: 'derived', trust: 'remembered' })
    expect(lineFigure(one, { ...line, amount: null }).mark).toBe('unknown')
  })

  const line = { material: 'ethanol', role: 'solvent', amount: 5, unit: 'mL' } as const
  const remembered = { citation: 'from memory: the solvent', for: 'charge', checked: false }
  const noted = { citation: 'a book, not opened', checked: false }
  it.each([
    ['from memory: the solvent', 'remembered', 'remembered'],
    ['memory', 'remembered', 'remembered'],
    ['common practice, no source', 'remembered', 'remembered'],
    ['set here: the scale', 'derived', 'remembered'],
    ['own bench, 2026-12-03', 'own bench', 'own bench'],
    ['a printed page', 'seen', 'seen'],
    // A page that is none of the record's sources: nobody says that it was read.
    ['another page', 'remembered', 'remembered'],
    ['my guess', 'remembered', 'remembered'],
    ['typed by me', 'remembered', 'remembered'],
    ['?', 'remembered', 'remembered'],
    ['derived', 'derived', 'remembered'],
    ['a book, not opened', 'remembered', 'remembered'],
  ] as const)('of a line whose amount comes %j: by its own words, whatever the record', (from, mark, trust) => {
    for (const confidence of ['checked', 'memory'] as const)
      expect(lineFigure(step({ confidence, sources: [page, noted] }), { ...line, from })).toMatchObject({ mark, trust, source: from })
    // What the library reckoned, and what is left open, stay that.
    expect(lineFigure(step({ sources: [page] }), { ...line, from, derived: true })).toMatchObject({
      mark: 'derived',
      source: `the source prints no such amount; ${from}`,
    })
    expect(lineFigure(step({ sources: [page] }), { ...line, from, amount: null }).mark).toBe('unknown')
  })

  it('of the charges in one: no surer than the least sure line, in part where others are surer', () => {
    const of = (patch: object, charge: readonly object[]) =>
      chargesFigure(step({ confidence: 'checked', sources: [page, remembered], ...patch, charge }))
    const read = { ...line, role: 'substrate' }
    const recalled = { ...line, from: remembered.citation }
    expect(of({}, [read, read])).toMatchObject({ mark: 'seen' })
    expect(of({}, [read, recalled, { ...line, amount: null }])).toEqual({
      figure: 'charges',
      mark: 'remembered',
      trust: 'remembered',
      inPart: true,
      source: 'in part from memory: the solvent; a printed page',
    })
    expect(of({}, [recalled, recalled])).toEqual({
      figure: 'charges',
      mark: 'remembered',
      trust: 'remembered',
      source: 'from memory: the solvent',
    })
    // A record without any source says nothing of one.
    const bare = { confidence: 'memory', sources: [] }
    expect(of(bare, [line, line]).source).toBeNull()
    expect(of(bare, [line, { ...line, from: 'own bench, 2026-12-03' }]).source).toBe('in part without a source; own bench, 2026-12-03')
    // What the library reckoned says so at its line; where it reckoned everything, so is the whole.
    expect(of({}, [read, { ...line, derived: true }])).not.toHaveProperty('inPart')
    expect(of({}, [read, { ...line, derived: true }]).mark).toBe('seen')
    expect(of({}, [{ ...line, derived: true }]).mark).toBe('derived')
    expect(
      of({ confidence: 'memory', sources: [page, { ...page, citation: 'from memory', checked: false }] }, [
        line,
        { ...line, from: 'a printed page' },
      ]),
    ).toMatchObject({
      mark: 'remembered',
      inPart: true,
      source: 'in part from memory; a printed page',
    })
  })

  it('of a line that was read: without the gaps that other lines own to; of the words of the record: with them', () => {
    const one = step({ confidence: 'checked', sources: [page, remembered], charge: [line, { ...line, from: remembered.citation }] })
    expect(lineFigure(one, one.charge[0]!)).toMatchObject({ mark: 'seen', source: 'a printed page' })
    expect(recordFigure(one)).toMatchObject({ mark: 'seen', source: 'a printed page; in part from memory: the solvent' })
    // Nobody owns to the gap: every line may be it, and says so.
    expect(lineFigure(step({ confidence: 'checked', sources: [page, remembered] }), line).source).toMatch(
      /in part from memory: the solvent$/,
    )
  })

  it('of a charge that was not read, in a record that was read for its yield alone', () => {
    const one = step({ confidence: 'checked', sources: [{ ...page, for: 'yield' }, remembered] })
    expect(lineFigure(one, line)).toMatchObject({ mark: 'remembered', source: remembered.citation })
  })
})

describe('how sure the figures of a material are', () => {
  const memory = { ...page, citation: 'from memory', for: 'properties', checked: false }
  it.each([
    [
      'read',
      { hazards: { codes: ['H225'], signalWord: 'Danger', from: 'EU Annex VI' }, sources: [{ ...page, for: 'properties' }] },
      'hazards seen, density seen',
    ],
    [
      'hazards by the source that names them, whoever entered the record',
      {
        sources: [
          { citation: 'own bench: entered by hand', checked: false },
          { ...page, for: 'hazards' },
        ],
      },
      'hazards seen, density own bench',
    ],
    [
      'hazards by whoever made the record, where no source names them',
      { sources: [{ citation: 'own bench, page 3', checked: true }] },
      'hazards own bench, density own bench',
    ],
    ['a density that nobody gives', { densityGPerMl: undefined, sources: [page] }, 'hazards seen, density unknown'],
    ['a density by memory', { sources: [{ ...page, for: 'hazards' }, memory] }, 'hazards seen, density remembered'],
    ['no hazards', { hazards: undefined, sources: [page] }, 'hazards unknown, density seen'],
    [
      'an empty list by memory',
      { hazards: { codes: [], signalWord: 'none', from: 'memory' }, sources: [page] },
      'hazards unknown, density seen',
    ],
    ['a solid is weighed', { form: 'solid', densityGPerMl: undefined, sources: [page] }, 'hazards seen'],
    [
      'each property by the source that tells it',
      {
        meltingC: -114,
        boilingC: 78,
        flashC: 13,
        sources: [
          { ...page, citation: 'an encyclopedia (density 0.789, m.p. -114 C)', for: 'properties' },
          memory,
          { ...page, for: 'flash' },
        ],
      },
      'hazards seen, density seen, melting point seen, boiling point remembered, flash point seen',
    ],
  ] as const)('%s', (_, patch, expected) => expect(told(materialFigures(material(patch)))).toBe(expected))

  it('say what their source speaks for', () => {
    const source = (sources: readonly object[]) => materialFigures(material({ sources })).find(one => one.figure === 'density')!.source
    expect(source([{ ...page, for: 'density' }])).toBe('a printed page')
    expect(source([{ ...page, for: 'properties' }])).toBe('for its properties: a printed page')
    expect(source([page])).toBe('for the whole record: a printed page')
    expect(source([{ ...page, for: 'hazards' }])).toBe(null)
  })
})

it('never tells a figure as seen whose record nobody checked', () => {
  const { library } = bundled()
  let unsure = 0
  for (const one of library.transformations.values()) {
    const isSeen = one.confidence === 'checked'
    // A scale or a temperature may have a source of its own, which was read where the charge was not.
    const ofRecord = stepFigures(one).filter(({ figure }) => !/scale|temperature/.test(figure))
    // So may a line of its charge, which then names it.
    if (!isSeen)
      for (const line of one.charge.filter(({ from }) => from === undefined)) expect(lineFigure(one, line).trust, one.id).not.toBe('seen')
    for (const figure of ofRecord) if (!isSeen) expect(figure.trust, one.id).not.toBe('seen')
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
  const sure: readonly FigureTrust[] = [{ figure: 'charges', trust: 'seen', mark: 'seen', source: 'x' }]
  const of = (figures: ReturnType<typeof materialFigures>) =>
    trustLine(library, { figures: sure, materials: [{ material: 'benzil', figures }] })
  expect(of([{ figure: 'hazards', trust: 'seen', mark: 'seen', source: 'x' }])).toBe('Charges: seen. Densities and hazards: seen.')
  const unknown: readonly FigureTrust[] = [{ figure: 'hazards', trust: 'unknown', mark: 'unknown', source: null }]
  expect(of(unknown)).toBe('Charges: seen. Hazards unknown: benzil.')
  // Names hold commas themselves.
  const two = ['acetic-acid', 'benzil'].map(material => ({ material, figures: unknown }))
  expect(trustLine(library, { figures: sure, materials: two })).toMatch(/Hazards unknown: acetic acid, glacial; benzil\.$/)
})
