import { describe, expect, it } from 'vitest'
import { readDensity } from '../../../../core/reading/density-text.ts'
import { type Dissolved, readStrength } from '../../../../core/reading/strength-text.ts'

// CIAAW 2021: Na 22.990 + O 15.999 + H 1.008 = 39.997; 2 H 1.008 + S 32.06 + 4 O 15.999 = 98.072.
const soda: Dissolved = { name: 'sodium hydroxide', formula: 'HNaO', molarMass: 39.997 }
const vitriol: Dissolved = { name: 'sulfuric acid', formula: 'H2O4S', molarMass: 98.072 }
const ink: Dissolved = { name: 'ink', molarMass: null }
const strengthOf = (text: string, of: Dissolved) => {
  const read = readStrength(text, of)
  return read.ok ? read.value : read.problems.map(one => one.code)
}

describe('strengths as people write them', () => {
  it.each([
    ['37 %', { massFraction: 0.37 }],
    ['50 % w/w', { massFraction: 0.5 }],
    ['40 wt%', { massFraction: 0.4 }],
    ['10 % (w/w) aq', { massFraction: 0.1 }],
    ['33,3 % by mass', { massFraction: 0.333 }],
    ['3 M', { molPerL: 3 }],
    ['0.5 mol/L', { molPerL: 0.5 }],
    ['0.5 mol dm-3', { molPerL: 0.5 }],
    ['500 mmol/L', { molPerL: 0.5 }],
    ['0.5 N', { molPerL: 0.5 }],
  ])('%j of sodium hydroxide is %j', (text, strength) => expect(strengthOf(text, soda)).toEqual(strength))
  it('turns grams a litre into moles over the molar mass', () => {
    // By hand: 20 g/L / 39.997 g/mol = 0.50004 mol/L; 2 g in 100 mL is the same.
    for (const text of ['20 g/L', '2 % w/v', '2 % (w/v)', '2 g/100 mL', '20 mg/mL']) {
      const read = strengthOf(text, soda)
      expect(read, text).toHaveProperty('molPerL')
      expect((read as { molPerL: number }).molPerL, text).toBeCloseTo(0.50004, 5)
    }
  })
  it('counts two equivalents in sulfuric acid: 0.5 N is 0.25 M (common practice, no source)', () =>
    expect(strengthOf('0.5 N', vitriol)).toEqual({ molPerL: 0.25 }))
  it.each([
    ['0.5 N', ink, 'strength-needs-equivalents'],
    ['20 g/L', ink, 'strength-needs-mass'],
    ['70 % v/v', soda, 'strength-unreadable'],
    ['120 %', soda, 'strength-out-of-range'],
    ['300 M', soda, 'strength-out-of-range'],
    ['0 %', soda, 'strength-out-of-range'],
    ['saturated', soda, 'strength-unreadable'],
    ['5', soda, 'strength-unreadable'],
    ['5 g', soda, 'strength-unreadable'],
  ])('%j is refused with a cure', (text, of, code) => expect(strengthOf(text, of)).toEqual([code]))
})

describe('densities as people write them', () => {
  it.each([
    ['0.83', 0.83],
    ['0,83', 0.83],
    ['1,025', 1.025],
    ['0.83 g/mL', 0.83],
    ['0.83 g/cm3', 0.83],
    ['0.83 kg/L', 0.83],
    ['830 kg/m3', 0.83],
    ['830 g/L', 0.83],
  ])('%j is %s g/mL', (text, value) => {
    const read = readDensity(text, 'liquid')
    expect(read.ok && read.value).toBe(value)
  })
  it.each([
    ['0.80-0.84', 'density-unreadable'],
    ['abc', 'density-unreadable'],
    ['0.83 lb/gal', 'density-unreadable'],
    // Mercury, the densest liquid at room temperature, has 13.5 (from memory).
    ['83 g/mL', 'density-out-of-range'],
    ['830', 'density-out-of-range'],
    ['0', 'density-out-of-range'],
    ['-0.83', 'density-out-of-range'],
  ])('%j is refused with a cure', (text, code) => {
    const read = readDensity(text, 'liquid')
    expect(read.ok ? [] : read.problems.map(one => one.code)).toEqual([code])
  })
})
