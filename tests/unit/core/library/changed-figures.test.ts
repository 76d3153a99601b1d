import { describe, expect, it } from 'vitest'
import { materialChangesTold, stepChangesTold } from '../../../../core/library/changed-figures.ts'
import { lineFigure, stepFigures } from '../../../../core/library/figure-trust.ts'
import type { Material } from '../../../../core/library/material.ts'
import { trustInPhysical } from '../../../../core/library/physical.ts'
import type { Transformation } from '../../../../core/library/transformation.ts'
import { trustInHazards, trustInYield } from '../../../../core/library/trust.ts'
import { bundled } from '../../../../server/library/bundled.ts'

// Law: nobody reads a figure in a source that was read for another one. Nothing outside is needed to say so.

const { library } = bundled()
const benzoin = library.transformations.get('benzoin-thiamine')!
const ethanol = library.materials.get('ethanol')!
const other = { low: 90, typical: 97, high: 99, from: benzoin.yieldPercent.from! }
const charged = (patch: object): Transformation['charge'] =>
  benzoin.charge.map(line => (line.material === 'benzaldehyde' ? { ...line, ...patch } : line))

describe('a step that stands over another', () => {
  it('is left alone where no figure of it changes', () => {
    for (const one of [benzoin, { ...benzoin, note: 'mine', operations: ['stir'] }])
      expect(stepChangesTold(one, benzoin)).toEqual({ record: one, figures: [] })
  })

  it('gives another yield, charge, temperature or time: each remembered, and the rest as it was', () => {
    expect([trustInYield(benzoin), ...benzoin.charge.map(line => lineFigure(benzoin, line).mark)]).not.toContain('remembered')
    const mine: Transformation = { ...benzoin, yieldPercent: other, charge: charged({ amount: 30 }), temperatureC: [200, 210] }
    const { record, figures } = stepChangesTold(mine, benzoin)
    expect(figures).toEqual(['yield', 'charge', 'temperature'])
    expect(trustInYield(record)).toBe('remembered')
    for (const line of record.charge)
      expect(lineFigure(record, line).mark === 'remembered', line.material).toBe(line.material === 'benzaldehyde')
    expect(stepFigures(record).find(one => one.figure === 'temperature')).toMatchObject({
      mark: 'remembered',
      source: 'changed without a source that was read',
    })
    const timed = stepChangesTold({ ...benzoin, timesBasis: 'source', elapsedHours: 1 }, { ...benzoin, timesBasis: 'source' })
    expect(stepFigures(timed.record).find(one => one.figure === 'times')!.mark).toBe('remembered')
    // A second time it is told already.
    expect(stepChangesTold(record, benzoin)).toEqual({ record, figures: [] })
  })

  it('counts as what its own source makes of it where it names one', () => {
    const of = (source: object) =>
      stepChangesTold({ ...benzoin, yieldPercent: other, sources: [source, ...benzoin.sources] as never }, benzoin).figures
    expect(of({ citation: 'another book', checked: true })).toEqual([])
    expect(of({ citation: 'own bench, 2026-12-03', for: 'yield', checked: true })).toEqual([])
    expect(of({ citation: 'another book', for: 'charge', checked: true })).toEqual(['yield'])
    expect(of({ citation: 'heard of', for: 'yield', checked: false })).toEqual(['yield'])
  })
})

describe('a material that stands over another', () => {
  it('gives another figure: remembered, and the rest as it was', () => {
    const { record, figures } = materialChangesTold({ ...ethanol, flashC: 99 }, ethanol)
    expect(figures).toEqual(['flash point'])
    expect(trustInPhysical(record, 'flash point')).toBe('remembered')
    expect(trustInPhysical(record, 'density')).toBe(trustInPhysical(ethanol, 'density'))
    const sourced: Material = {
      ...ethanol,
      flashC: 99,
      sources: [{ citation: 'a data sheet', for: 'flash point', checked: true }, ...ethanol.sources],
    }
    expect(materialChangesTold(sourced, ethanol).figures).toEqual([])
  })

  it('gives other hazards by the word of the old ones: they are known no more where none is left', () => {
    const none = { ...ethanol, hazards: { ...ethanol.hazards!, codes: [] } }
    expect(trustInHazards(materialChangesTold(none, ethanol).record)).toBe('unknown')
    const more = { ...ethanol, hazards: { ...ethanol.hazards!, codes: [...ethanol.hazards!.codes, 'H350'] } }
    expect(trustInHazards(materialChangesTold(more, ethanol).record)).toBe('remembered')
    const assigned = { ...none, hazards: { ...none.hazards, from: 'data sheet of the maker' } }
    expect(materialChangesTold(assigned, ethanol).figures).toEqual([])
  })
})
