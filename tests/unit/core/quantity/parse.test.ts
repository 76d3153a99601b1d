import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inBase } from '../../../../core/quantity/convert.ts'
import { numberIn } from '../../../../core/quantity/number.ts'
import { type Expected, parseQuantity } from '../../../../core/quantity/parse.ts'

const readingOf = (text: string) => {
  const read = parseQuantity(text)
  return read.ok ? read.value : read.problems.map(one => one.code)
}
const codesOf = (text: string, expected?: Expected) => {
  const read = parseQuantity(text, ['--have'], expected)
  return read.ok ? [] : read.problems.map(one => one.code)
}

describe('an amount as people write it', () => {
  it.each([
    ['24 g', 24, 'g'],
    ['24g', 24, 'g'],
    ['24 g.', 24, 'g'],
    ['  1.5   mL ', 1.5, 'mL'],
    ['1,5 ml', 1.5, 'mL'],
    ['0,125 L', 0.125, 'L'],
    ['1 200 mL', 1200, 'mL'],
    ['1\u2009200 mL', 1200, 'mL'],
    ['12\u202f345,6 mg', 12345.6, 'mg'],
    ['1,234,567 mg', 1_234_567, 'mg'],
    ['1,200.5 g', 1200.5, 'g'],
    ['1.200,5 g', 1200.5, 'g'],
    ['.5 mol', 0.5, 'mol'],
    ['2 1/2 mL', 2.5, 'mL'],
    ['½ h', 0.5, 'h'],
    ['2½ h', 2.5, 'h'],
    ['1e-3 kg', 0.001, 'kg'],
    ['50 %', 50, '%'],
    ['50%', 50, '%'],
    ['10 \u00b5L', 10, 'µL'],
    ['10 \u03bcL', 10, 'µL'],
    ['5 µg', 5, 'µg'],
    ['3 CC', 3, 'mL'],
    ['2 Grams', 2, 'g'],
    ['90 minutes', 90, 'min'],
    ['0 g', 0, 'g'],
  ])('%s', (text, value, unit) => {
    expect(readingOf(text)).toEqual({ value, unit })
  })

  it('keeps a fraction of a unit exact to the last bit where a decimal can be', () => {
    expect(inBase({ value: 3, unit: 'mg' })).toBe(0.003)
    expect(inBase({ value: 50, unit: '%' })).toBe(0.5)
  })
})

describe('what is refused, each with one problem', () => {
  it.each([
    ['24 parsecs', 'quantity-unit-unknown'],
    ['-3 g', 'quantity-negative'],
    ['\u22123 g', 'quantity-negative'],
    ['NaN g', 'number-unreadable'],
    ['Infinity g', 'number-unreadable'],
    ['1e400 g', 'number-too-large'],
    ['1e10 g', 'number-too-large'],
    ['1e-400 g', 'number-too-small'],
    ['5 g g', 'quantity-unit-unknown'],
    ['5 g 3', 'quantity-unit-unknown'],
    ['10-15 mL', 'quantity-unit-unknown'],
    ['1,200 g', 'number-two-readings'],
    ['24', 'quantity-unit-missing'],
    ['g', 'number-unreadable'],
    ['', 'quantity-empty'],
    ['   ', 'quantity-empty'],
    ['__proto__', 'number-unreadable'],
    ['5 __proto__', 'quantity-unit-unknown'],
    ['5 constructor', 'quantity-unit-unknown'],
    ['5 Mg', 'quantity-unit-unknown'],
    ['5 M', 'quantity-unit-unknown'],
    ['5 G', 'quantity-unit-unknown'],
    ['1/0 g', 'number-unreadable'],
    ['1.2.3 g', 'number-unreadable'],
    ['٢٤ g', 'number-unreadable'],
  ])('%s', (text, code) => {
    expect(codesOf(text)).toEqual([code])
  })

  it('says where, why and how to mend it', () => {
    const read = parseQuantity('24 parsecs', ['--have'], { dimensions: ['mass', 'volume', 'amount'] })
    expect(read.ok).toBe(false)
    if (read.ok) return
    expect(read.problems[0]).toMatchObject({
      where: ['--have'],
      what: expect.stringContaining('24 parsecs'),
      cure: expect.stringContaining('kg, g, mg'),
    })
  })

  it('holds the dimension and zero to what is expected', () => {
    expect(codesOf('3 h', { dimensions: ['mass'] })).toEqual(['quantity-dimension'])
    expect(codesOf('0 g', { zero: false })).toEqual(['quantity-zero'])
    expect(codesOf('3 g', { dimensions: ['mass'], zero: false })).toEqual([])
  })

  it('never throws and never answers with more than one problem, whatever is typed', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 60 }), fc.stringMatching(/^[-0-9., eE/g½µ%]{0,20}$/)), text => {
        const read = parseQuantity(text)
        if (read.ok) expect(Number.isFinite(read.value.value) && read.value.value >= 0).toBe(true)
        else expect(read.problems).toHaveLength(1)
      }),
      { numRuns: 3000 },
    )
  })
})

describe('the comma before three digits', () => {
  it('is asked about unless the caller knows', () => {
    expect(numberIn('1,200').ok).toBe(false)
    expect(numberIn('1,200', [], 'thousands')).toMatchObject({ value: 1200 })
    expect(numberIn('1,200', [], 'decimal')).toMatchObject({ value: 1.2 })
    expect(numberIn('0,200')).toMatchObject({ value: 0.2 })
  })
})
