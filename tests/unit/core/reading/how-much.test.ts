import { describe, expect, it } from 'vitest'
import { prepared } from '../../../support/reader.ts'

const charged = (...lines: readonly string[]) =>
  (prepared('benzoin -> benzil', ...lines).transformation.charge ?? []).map(({ material, amount, unit, perGramProduct }) =>
    [material, amount ?? perGramProduct ?? null, unit].join(' '),
  )
const askedOf = (line: string) =>
  prepared('benzoin -> benzil', line).problems.filter(one => one.where[0] === 'charges' && one.where[1] === line)

describe('an amount per gram of product', () => {
  // By the prefixes of the SI, and 0.05 mL a drop (common practice); NaOH is 39.997 g/mol (CIAAW weights: 22.990 + 15.999 + 1.008).
  it.each([
    ['charcoal (50 mg/g)', ['charcoal 0.05 g']],
    ['charcoal 20 mg per gram', ['charcoal 0.02 g']],
    ['K2CO3 10 mg/g', ['potassium-carbonate 0.01 g']],
    ['Recrystallise from ethanol (0.01 L per gram)', ['ethanol-95 10 mL']],
    ['piperidine 10 µL/g', ['piperidine 0.01 mL']],
    ['conc. H2SO4 2 drops per gram', ['sulfuric-acid-conc 0.1 mL']],
    ['2 M NaOH (2 mmol per gram)', ['sodium-hydroxide-2m 1 mL']],
  ])('is kept in g or mL: %s', (line, expected) => {
    expect(charged(line)).toEqual(expected)
  })
  it('in moles is what they weigh, and is marked as reckoned', () => {
    const [line] = prepared('benzoin -> benzil', 'NaOH 1 mmol/g').transformation.charge!
    expect(line).toMatchObject({ material: 'sodium-hydroxide', amount: null, unit: 'g', derived: true })
    expect(line!.perGramProduct).toBeCloseTo(0.001 * (22.99 + 15.999 + 1.008), 5)
  })
  it.each(['NaBH4 0.5 equiv./g', 'acetone (10 mL per kg)', 'acetone (10 mL/mmol)', 'acetone (10 mL per 5 g)'])(
    'that is none of those is asked about: %s',
    line => {
      expect(charged(line)).toEqual([])
      expect(askedOf(line).length).toBeGreaterThan(0)
    },
  )
})

describe('how often an amount goes in', () => {
  it.each([
    ['washed twice with 10 mL water', ['water 20 mL']],
    ['Extracted twice with 20 mL ether', ['diethyl-ether 40 mL']],
    ['Recrystallised twice from 20 mL ethanol', ['ethanol-95 40 mL']],
    ['acetone, 10 mL twice', ['acetone 20 mL']],
    ['acetone (5 mL each, twice)', ['acetone 10 mL']],
    ['wash with water, 10 mL, three times', ['water 30 mL']],
    ['washed 4 times with 10 mL water', ['water 40 mL']],
    ['washed once with 10 mL water', ['water 10 mL']],
    ['acetone, 3 x 5 mL each', ['acetone 15 mL']],
  ])('is counted: %s', (line, expected) => {
    expect(charged(line)).toEqual(expected)
  })
  it.each([
    'acetone (10 mL + 2 x 5 mL rinse)',
    'extract with ether (10 mL, then 2 x 5 mL)',
    'acetone 20 mL (or 30 mL)',
    'acetone, 5 mL each time',
    'wash several times with 10 mL water',
    'wash twice with 2 x 10 mL water',
    'wash twice with water, 20 mL in all',
  ])('that cannot be told is asked about: %s', line => {
    expect(charged(line)).toEqual([])
    expect(askedOf(line).map(one => one.code)).toEqual(['amount-unclear'])
  })
  it('the same amount in another unit is no second one', () => {
    expect(charged('acetone 1.1 kg (1100 g)')).toEqual(['acetone 1.1 kg'])
  })
})

describe('a slash between numbers', () => {
  it.each([
    ['acetone 1/2 mL', ['acetone 0.5 mL']],
    ['acetone 3/4 mL', ['acetone 0.75 mL']],
    ['acetone 1 1/2 mL', ['acetone 1.5 mL']],
  ])('is read in a common fraction: %s', (line, expected) => {
    expect(charged(line)).toEqual(expected)
  })
  it.each(['acetone 10/15 mL', 'acetone 2/5 g', 'acetone 3,0/4,0 g', 'acetone 4/2 g'])('else is asked about: %s', line => {
    expect(charged(line)).toEqual([])
    expect(askedOf(line).map(one => one.code)).toEqual(['amount-unclear'])
  })
  it('has a cure that is read', () => {
    const [, cured] = /"([^"]+)"/.exec(askedOf('acetone 10/15 mL')[0]!.cure)!
    expect(charged(`acetone ${cured}`)).toEqual(['acetone 12.5 mL'])
  })
  it('a comma that can be read in two ways is asked about with how to write it', () => {
    const read = prepared('benzoin -> benzil', '2,65 g benzoin', 'acetone 1,000 g')
    expect(read.problems.filter(one => one.where[1] === 'acetone 1,000 g').map(one => one.code)).toEqual(['number-two-readings'])
  })
})

describe('another material beside the one that is named', () => {
  it.each([
    'benzil, urea (5 g each)',
    'Wash with water, then ethanol (10 mL each)',
    'ethanol, containing NaOH, 20 mL',
    'Chromatograph (silica, petroleum ether 40-60 °C)',
    'wash with water, then ethanol',
    'Wash with water (3 x 10)',
  ])('is never left aside: %s', line => {
    expect(charged(line)).toEqual([])
    expect(askedOf(line).length).toBeGreaterThan(0)
  })
  it.each([
    ['benzoin (from step 1) 5 g', ['benzoin 5 g']],
    ['acetone (for rinsing), 5 mL', ['acetone 5 mL']],
    ['acetone, reagent grade, 5 mL', ['acetone 5 mL']],
  ])('a remark is: %s', (line, expected) => {
    expect(charged(line)).toEqual(expected)
  })
})
