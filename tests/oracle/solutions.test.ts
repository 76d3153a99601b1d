import { describe, expect, it } from 'vitest'
import { molarMassOf } from '../../core/chemistry/formula.ts'
import {
  atmosphereKPa,
  gasVolumeL,
  massForMoles,
  molarGasVolumeL,
  molarityOf,
  molesInMass,
  molesInVolume,
  stockForDilution,
  volumeForMoles,
  zeroCelsiusK,
} from '../../core/chemistry/solution.ts'
import { allowance, type CheckValue, checkValuesOf } from '../support/check-values.ts'

// Every expected figure, its tolerance and its printed source stand in tests/support/check-values.json.

const near = (entry: CheckValue, actual: number, expected: number): void =>
  expect(Math.abs(actual - expected), `${actual} against ${expected} (${entry.source.citation})`).toBeLessThanOrEqual(
    allowance(entry, expected),
  )

describe('strength of bottles in mol/L', () => {
  it.each(checkValuesOf('solution-molarity', 16))('$id', entry => {
    const { formula, massPercent, densityGPerMl, gramsSolute, milliliters } = entry.inputs
    const molarMass = molarMassOf(formula)
    if (massPercent === undefined) {
      near(entry, molesInMass(gramsSolute, { molarMass })! / (milliliters / 1000), entry.expected.molPerL)
      return
    }
    const massFraction = massPercent / 100
    near(entry, molarityOf(massFraction, densityGPerMl, molarMass), entry.expected.molPerL)
    if (entry.expected.milliliters_for_1_mol !== undefined)
      near(entry, volumeForMoles(1, { molarMass, densityGPerMl, massFraction })!, entry.expected.milliliters_for_1_mol)
  })
})

describe('mass in a solution', () => {
  const entries = checkValuesOf('solution-mass', 3)
  it.each(entries)('$id', entry => {
    const { inputs, expected } = entry
    if (inputs.formula !== undefined) {
      const molarMass = molarMassOf(inputs.formula)
      const strength = { molarMass, densityGPerMl: inputs.densityGPerMl, massFraction: inputs.massPercent / 100 }
      near(entry, molesInVolume(inputs.milliliters, strength)! * molarMass, expected.gramsSolute)
    } else if (inputs.solid !== undefined) {
      const molarMass = molarMassOf(inputs.solid)
      const wanted = molesInVolume(inputs.targetMilliliters, {
        molarMass,
        densityGPerMl: inputs.densityGPerMl,
        massFraction: inputs.targetMassPercent / 100,
      })!
      near(entry, massForMoles(wanted, { molarMass, massFraction: inputs.purityMassPercent / 100 })!, expected.gramsSolid)
    } else {
      const volume = stockForDilution(100, inputs.volumePercent, inputs.milliliters)
      near(entry, volume * inputs.densityPureGPerMl, expected.gramsSolute)
    }
  })
})

describe('dilution', () => {
  it.each(checkValuesOf('dilution', 5))('$id', entry => {
    const { inputs, expected } = entry
    if (inputs.c1 !== undefined) {
      const stock = stockForDilution(inputs.c1, inputs.c2 ?? expected.c2, inputs.v2 ?? expected.v2)
      near(entry, stock, inputs.v1 ?? expected.v1)
    } else if (inputs.targetGrams !== undefined)
      near(entry, stockForDilution(inputs.stockMassPercent, inputs.targetMassPercent, inputs.targetGrams), expected.stockGrams)
    else {
      const stock = molarityOf(inputs.massPercent / 100, inputs.densityGPerMl, molarMassOf(inputs.formula))
      near(entry, stock, expected.stockMolPerL)
      near(entry, stockForDilution(stock, inputs.targetMolPerL, inputs.targetMilliliters), expected.stockMilliliters)
    }
  })
  it('never makes a solution stronger', () => {
    expect(() => stockForDilution(1, 2, 100)).toThrow(RangeError)
  })
})

describe('what the strengths promise', () => {
  it('counts a solution known by mol/L without a density, and by mass only with one', () => {
    // 6 mol/L acid of density 1.10 g/mL: 10 mL hold 0.060 mol, 11.0 g of it as well.
    const strength = { molarMass: 36.458, molPerL: 6 }
    expect(molesInVolume(10, strength)).toBeCloseTo(0.06, 12)
    expect(molesInMass(11, strength)).toBeNull()
    expect(molesInMass(11, { ...strength, densityGPerMl: 1.1 })).toBeCloseTo(0.06, 12)
  })
  it('has no volume for what has neither density nor mol/L', () => {
    expect(molesInVolume(10, { molarMass: 100 })).toBeNull()
    expect(volumeForMoles(1, { molarMass: 100 })).toBeNull()
  })
  it('takes 24.47 L/mol for gas at 25 C and 1 atm, as the trade prints it, within 0.02 % of the ideal law', () => {
    expect(Math.abs(gasVolumeL(1, zeroCelsiusK + 25, atmosphereKPa) / molarGasVolumeL - 1)).toBeLessThan(2e-4)
  })
})
