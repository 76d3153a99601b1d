import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { convert } from '../../../../core/quantity/convert.ts'
import { moneyText } from '../../../../core/quantity/money.ts'
import { parseQuantity } from '../../../../core/quantity/parse.ts'
import { durationText, massText, numberText, percentText, quantityText, rangeText, volumeText } from '../../../../core/quantity/print.ts'
import { units } from '../../../../core/quantity/unit.ts'

const s = (text: string): string => text.replace(/\u00a0/g, '_').replace(/\u202f/g, ' ')

describe('amounts in print', () => {
  it.each([
    [24, '24.0_g'],
    [43.259, '43.3_g'],
    [5, '5.00_g'],
    [0.2567, '0.26_g'],
    [0.0123, '12.3_mg'],
    [0.0000123, '12.3_µg'],
    [123.4, '123_g'],
    [999.9, '1.00_kg'],
    [1234, '1.23_kg'],
    [9.996, '10.0_g'],
    [0, '0.00_g'],
    [0.0996, '99.6_mg'],
    [0.09996, '0.10_g'],
  ])('%d g', (massG, text) => {
    expect(s(massText(massG))).toBe(text)
  })

  it('keeps number and unit together with a no-break space', () => {
    expect(volumeText(1250)).toBe('1.25\u00a0L')
  })

  it('prints shares, ranges, times and a true minus', () => {
    expect(s(percentText(0.7155))).toBe('71.6_%')
    expect(s(percentText(1))).toBe('100_%')
    expect(s(percentText(0.0512))).toBe('5.1_%')
    expect(s(rangeText({ value: 1.2, unit: 'g' }, { value: 1.5, unit: 'g' }))).toBe('1.20–1.50_g')
    expect(s(rangeText({ value: 900, unit: 'mg' }, { value: 1.5, unit: 'g' }))).toBe('0.90–1.50_g')
    expect(s(rangeText({ value: 2, unit: 'g' }, { value: 2.001, unit: 'g' }))).toBe('2.00_g')
    expect([0, 0.005, 0.75, 0.999, 1.5, 23.7, 72, 672].map(durationText).map(s)).toEqual([
      '0_min',
      'under 1_min',
      '45_min',
      '1_h',
      '1.5_h',
      '23.7_h',
      '3_days',
      '28_days',
    ])
    expect(numberText(-1.5)).toBe('\u22121.50')
    expect(numberText(-0.0000001)).toBe('0.000000')
    expect(s(numberText(45588))).toBe('45 600')
  })

  it('throws for what cannot be an amount', () => {
    expect(() => massText(Number.NaN)).toThrow(RangeError)
    expect(() => durationText(-1)).toThrow(RangeError)
    expect(() => moneyText(Number.POSITIVE_INFINITY, 'EUR')).toThrow(RangeError)
  })

  it('can be read back to three figures, whatever the amount', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e5, noNaN: true }), fc.constantFrom(...units), (value, unit) => {
        const text = quantityText({ value, unit })
        const read = parseQuantity(text)
        expect(read.ok, text).toBe(true)
        if (!read.ok) return
        const back = convert(read.value, unit)
        // Three figures are half a percent at worst; grams go no finer than 10 mg, shares no finer than 0.1 %.
        const finest = unit === '%' ? 0.05 : text.endsWith('\u00a0g') ? convert({ value: 0.005, unit: 'g' }, unit) : 0
        expect(Math.abs(back - value), text).toBeLessThanOrEqual(Math.max(0.00501 * value, finest * 1.0001))
      }),
      { numRuns: 3000 },
    )
  })
})

describe('money', () => {
  it.each([
    [6230, 'EUR', '€_62.30'],
    [5, 'GBP', '£_0.05'],
    [-1290, 'USD', '\u2212$_12.90'],
    [1500, 'JPY', '¥_1500'],
    [12345678, 'CHF', 'CHF_123 456.78'],
    [1234, 'KWD', 'KWD_1.234'],
    [0, 'EUR', '€_0.00'],
    [-0.2, 'EUR', '€_0.00'],
  ])('%d %s', (minor, currency, text) => {
    expect(s(moneyText(minor, currency))).toBe(text)
  })
})
