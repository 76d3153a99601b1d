import { describe, expect, it } from 'vitest'
import { libraryOfParts } from '../../../../core/plan/library-of-parts.ts'
import { type BatchInput, batchesOf, highestFill, reactionVolume, sourceVesselMl } from '../../../../core/route/batches.ts'
import { chargedLine } from '../../../support/charged-steps.ts'
import { material, transformation } from '../../../support/small-library.ts'

const substances = [
  material({ id: 'a', formula: 'C6H6O', densityGPerMl: 1.07 }),
  material({ id: 'b', formula: 'C6H6O' }),
  material({ id: 'water', formula: 'H2O', form: 'liquid', densityGPerMl: 1 }),
  material({ id: 'gas', formula: 'CO2', form: 'gas' }),
]
const made = (own: Partial<Parameters<typeof transformation>[0]> = {}) => {
  const t = transformation({ id: 'step', ...own })
  return { library: libraryOfParts({ title: 'a test' }, substances, [t]), t }
}
const input = (own: Partial<BatchInput>): BatchInput => ({
  transformation: 'step',
  volume: { vesselMl: 300, withQuenchMl: 300, assumed: false },
  scale: 1,
  limitingG: 10,
  productG: 8,
  vessels: [{ kind: 'flask', volumeMl: 250, count: 1 }],
  asked: null,
  ...own,
})

describe('reaction volume', () => {
  it('is liquids plus solids over density, 1.2 where unknown and then marked; work-up and gases left out', () => {
    const { library, t } = made()
    const lines = [
      chargedLine({ material: 'a', massG: 10.7, volumeMl: 10, at: 'vessel' }),
      chargedLine({ material: 'b', massG: 12, at: 'vessel' }),
      chargedLine({ material: 'water', volumeMl: 80, massG: 80, at: 'vessel' }),
      chargedLine({ material: 'water', volumeMl: 50, massG: 50, at: 'quench' }),
      chargedLine({ material: 'water', volumeMl: 500, massG: 500, at: 'workup' }),
      chargedLine({ material: 'gas', massG: 44, at: 'vessel' }),
    ]
    expect(reactionVolume(library, t, lines, 1)).toEqual({ vesselMl: 100, withQuenchMl: 150, assumed: true })
    expect(reactionVolume(library, t, lines.slice(0, 1), 1).assumed).toBe(false)
    expect(reactionVolume(library, t, [], 1)).toEqual({ vesselMl: null, withQuenchMl: null, assumed: false })
  })
  it('is the stated peak, scaled, where solvent is boiled off and topped up', () => {
    const { library, t } = made({ peakVolumeMl: 60 })
    expect(reactionVolume(library, t, [chargedLine({ material: 'water', volumeMl: 500, at: 'vessel' })], 2).vesselMl).toBe(120)
  })
})

describe('the fill of a vessel', () => {
  it('is two thirds, one half with gas, foam or a strong exotherm, and the source’s own where that is more', () => {
    const fill = (own: Parameters<typeof made>[0], sourceMl: number | null = null) => {
      const { library, t } = made(own)
      return highestFill(library, t, sourceMl)
    }
    expect(fill({})).toBeCloseTo(2 / 3)
    expect(fill({ foam: true })).toBe(0.5)
    expect(fill({ exotherm: 'strong' })).toBe(0.5)
    expect(fill({ gasEvolved: [{ compound: 'gas', perMolLimiting: 1 }] })).toBe(0.5)
    expect(
      fill({
        products: [
          { compound: 'b', coefficient: 1 },
          { compound: 'gas', coefficient: 1 },
        ],
      }),
    ).toBe(0.5)
    expect(fill({ equipment: ['250 mL round-bottom flask'] }, 200)).toBe(0.8)
    expect(fill({ equipment: ['250 mL round-bottom flask'] }, 100)).toBeCloseTo(2 / 3)
    // More than the vessel holds cannot be what the source did.
    expect(fill({ equipment: ['100 mL flask'] }, 300)).toBeCloseTo(2 / 3)
  })
  it('reads the vessel out of the equipment', () => {
    expect(sourceVesselMl(transformation({ id: 'x', equipment: ['ice bath', '12 L flask', '500 mL beaker'] }))).toBe(12_000)
    expect(sourceVesselMl(transformation({ id: 'x', equipment: ['flask', 'condenser'] }))).toBeNull()
  })
})

describe('batches', () => {
  const plain = made({ charge: [{ material: 'a', role: 'substrate', amount: 10, unit: 'g' }] }).library
  const count = (own: Partial<BatchInput>) => batchesOf(plain, input(own)).batches
  it('split for the vessels owned and never by themselves', () => {
    // 250 mL to two thirds holds 167 mL.
    expect(count({})).toBe(2)
    expect(count({ volume: { vesselMl: 166, withQuenchMl: 166, assumed: false } })).toBe(1)
    expect(count({ volume: { vesselMl: 100, withQuenchMl: 300, assumed: false } })).toBe(2)
    expect(count({ vessels: [] })).toBe(1)
    expect(count({ vessels: [], limitingG: 1000 })).toBe(1)
    expect(
      count({
        vessels: [
          { kind: 'flask', volumeMl: 250, count: 1 },
          { kind: 'flask', volumeMl: 1000, count: 1 },
        ],
      }),
    ).toBe(1)
  })
  it('do not split for a rounding error', () => {
    expect(count({ volume: { vesselMl: 500 / 3 + 1e-12, withQuenchMl: 500 / 3 + 1e-12, assumed: false } })).toBe(1)
  })
  it('are as asked, with a word where that fills too much', () => {
    expect(batchesOf(plain, input({ asked: 4 }))).toMatchObject({ batches: 4, perBatchMl: 75, notes: [] })
    expect(batchesOf(plain, input({ asked: 1 })).notes.join()).toContain('2 are needed')
  })
  it('say what vessel is missing', () => {
    const { batches, notes } = batchesOf(plain, input({ vessels: [{ kind: 'beaker', volumeMl: 5000, count: 1 }] }))
    expect(batches).toBe(1)
    expect(notes.join()).toContain('No flask is listed')
    expect(notes.join()).toContain('450 mL')
  })
})

describe('flags of scale, by batch', () => {
  const notes = (own: Parameters<typeof made>[0], given: Partial<BatchInput>) =>
    batchesOf(
      made({ charge: [{ material: 'a', role: 'substrate', amount: 10, unit: 'g' }], ...own }).library,
      input({ vessels: [], ...given }),
    ).notes.join(' ')
  it('above three times the largest, twice with a strong exotherm', () => {
    expect(notes({}, { limitingG: 30 })).toBe('')
    expect(notes({}, { limitingG: 31 })).toContain('3.1 times the largest scale published (its own')
    expect(notes({ largestProvenG: 50 }, { limitingG: 31 })).toBe('')
    expect(notes({ exotherm: 'strong' }, { limitingG: 25 })).toContain('at least 1.4 times as long')
    expect(notes({}, { limitingG: 60, asked: 2 })).toBe('')
  })
  it('below a fifth of the smallest', () => {
    expect(notes({}, { limitingG: 1.9, productG: 1.5 })).toContain('Below a fifth')
    expect(notes({ smallestProvenG: 1 }, { limitingG: 1.9, productG: 1.5 })).toBe('')
  })
  it('by the thresholds of the bench, where it has its own', () => {
    expect(notes({}, { limitingG: 31, flags: { above: 4 } })).toBe('')
    expect(notes({}, { limitingG: 41, flags: { above: 4 } })).toContain('run it twice and combine')
    expect(notes({}, { limitingG: 21, flags: { above: 1 } })).toContain('run it 3 times and combine')
    expect(notes({}, { limitingG: 1.9, productG: 1.5, flags: { below: 0.1 } })).toBe('')
    expect(notes({}, { limitingG: 4.9, productG: 1.5, flags: { below: 0.5 } })).toContain('Below 50 %')
    expect(notes({}, { limitingG: 2.1, productG: 0.4, flags: { leastProductG: 0.3 } })).toBe('')
  })
  it('under half a gram of product, unless the source was as small', () => {
    expect(notes({}, { limitingG: 2.1, productG: 0.4 })).toContain('Under 0.5 g')
    expect(notes({ smallestProvenG: 0.5 }, { limitingG: 0.5, productG: 0.4 })).toBe('')
  })
})
