import fc from 'fast-check'
import Qty from 'js-quantities'
import { describe, expect, it } from 'vitest'
import { convert } from '../../core/quantity/convert.ts'
import { parseQuantity } from '../../core/quantity/parse.ts'
import { type Unit, units, unitsOf, unitTable } from '../../core/quantity/unit.ts'

// Oracle: js-quantities, an independent library of units. Its names for ours where they differ:
const theirs: Partial<Record<Unit, string>> = { L: 'l', mL: 'ml', µL: 'ul', µg: 'ug' }
const named = (unit: Unit): string => theirs[unit] ?? unit

const anyUnit = fc.constantFrom(...units)
const amount = fc.double({ min: 1e-6, max: 1e6, noNaN: true })

describe('units against js-quantities', () => {
  it('convert alike within each dimension', () => {
    fc.assert(
      fc.property(amount, anyUnit, fc.nat(), (value, from, pick) => {
        const same = unitsOf(unitTable[from].dimension)
        const to = same[pick % same.length]!
        const expected = Qty(value, named(from)).to(named(to)).scalar
        // Both sides round a product and a quotient of doubles: a few units in the last place.
        expect(Math.abs(convert({ value, unit: from }, to) / expected - 1)).toBeLessThan(1e-12)
      }),
      { numRuns: 2000 },
    )
  })

  it('read the same amount from the same text', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999_999 }), fc.integer({ min: 0, max: 4 }), anyUnit, (digits, places, unit) => {
        const text = `${(digits / 10 ** places).toFixed(places)} ${named(unit)}`
        const read = parseQuantity(text)
        expect(read.ok, text).toBe(true)
        if (!read.ok) return
        const expected = Qty(text)
        expect(Math.abs(convert(read.value, unit) / expected.to(named(unit)).scalar - 1), text).toBeLessThan(1e-12)
      }),
      { numRuns: 2000 },
    )
  })

  it('refuse what it refuses: there is no unit of ours that the other calls a different dimension', () => {
    for (const unit of units)
      for (const other of units) {
        const alike = unitTable[unit].dimension === unitTable[other].dimension
        expect(Qty(1, named(unit)).isCompatible(Qty(1, named(other))), `${unit} ${other}`).toBe(alike)
      }
  })
})
