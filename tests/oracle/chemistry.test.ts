import { describe, expect, it } from 'vitest'
import { atomicWeight } from '../../core/chemistry/elements.ts'
import { massPercent, molarMass, molarMassOf, parseFormula } from '../../core/chemistry/formula.ts'
import { gasVolumeL, limitingOf, molesInVolume, volumeForMoles } from '../../core/chemistry/solution.ts'
import { allowance, type CheckValue, checkValuesOf } from '../support/check-values.ts'

// Every expected figure, its tolerance and its printed source stand in tests/support/check-values.json.

const near = (entry: CheckValue, actual: number, expected: number): void =>
  expect(Math.abs(actual - expected), `${actual} against ${expected} (${entry.source.citation})`).toBeLessThanOrEqual(
    allowance(entry, expected),
  )

const compositionOf = (formula: string) => {
  const read = parseFormula(formula)
  if (!read.ok) throw new Error(read.problems[0]!.what)
  return read.value
}

describe('atomic weights', () => {
  const [standard, abridged] = checkValuesOf('atomic-weight', 2) as [CheckValue, CheckValue]
  it.each(Object.entries(standard.expected.atomicWeight as Record<string, number>))('%s is %d', (symbol, weight) => {
    near(standard, atomicWeight(symbol), weight)
  })
  it('agree with the five-figure table to its last figure', () => {
    const rows = Object.entries(abridged.expected.atomicWeight as Record<string, number>)
    expect(rows.length).toBeGreaterThanOrEqual(34)
    for (const [symbol, weight] of rows) {
      // That table is rounded to five figures at most; half a unit of its last printed figure is all it can differ.
      const places = String(weight).split('.')[1]?.length ?? 0
      expect(Math.abs(atomicWeight(symbol) - weight), symbol).toBeLessThanOrEqual(
        0.5 * 10 ** -Math.min(places, weight < 100 ? 3 : 2) + 1e-9,
      )
    }
  })
})

describe('molar masses', () => {
  it.each(checkValuesOf('molar-mass', 10))('$inputs.name', entry => {
    near(entry, molarMassOf(entry.inputs.formula), entry.expected.gramsPerMole)
  })
})

describe('percent composition', () => {
  it.each(checkValuesOf('percent-composition', 1))('$inputs.name', entry => {
    const composition = compositionOf(entry.inputs.formula)
    near(entry, molarMass(composition), entry.expected.gramsPerMole)
    const percent = massPercent(composition)
    const expected = Object.entries(entry.expected.percentByMass as Record<string, number>)
    expect(expected.length).toBe(percent.size)
    for (const [symbol, share] of expected) near(entry, percent.get(symbol)!, share)
  })
})

/** Moles of one side of an exercise, however its amount is given. */
const molesGiven = (part: Record<string, number> & { formula: string }): number =>
  part.grams !== undefined
    ? part.grams / molarMassOf(part.formula)
    : molesInVolume(part.milliliters!, { molarMass: molarMassOf(part.formula), molPerL: part.molPerL })!

describe('stoichiometry', () => {
  it.each(checkValuesOf('stoichiometry', 6))('$id', entry => {
    const { given, wanted } = entry.inputs
    const moles = (molesGiven(given) * wanted.coefficient) / given.coefficient
    if (entry.expected.grams !== undefined) near(entry, moles * molarMassOf(wanted.formula), entry.expected.grams)
    else
      near(entry, volumeForMoles(moles, { molarMass: molarMassOf(wanted.formula), molPerL: wanted.molPerL })!, entry.expected.milliliters)
    if (entry.expected.gasMoles !== undefined) near(entry, moles, Object.values(entry.expected.gasMoles as Record<string, number>)[0]!)
  })
})

describe('limiting reactant', () => {
  const entries = checkValuesOf('limiting-reagent', 5)
  it.each(entries.filter(entry => entry.inputs.reactants !== undefined))('$id', entry => {
    const reactants = entry.inputs.reactants as { formula: string; coefficient: number; grams?: number; moles?: number }[]
    const charged = reactants.map(one => ({ amountMol: one.moles ?? one.grams! / molarMassOf(one.formula), coefficient: one.coefficient }))
    const { index, extentMol } = limitingOf(charged)
    expect(reactants[index]!.formula).toBe(entry.expected.limiting)
    for (const [at, reactant] of reactants.entries()) {
      near(entry, charged[at]!.amountMol, entry.expected.moles[reactant.formula])
      const left = charged[at]!.amountMol - extentMol * reactant.coefficient
      // What is left is a difference of two figures of the entry's precision; so is its error.
      const expected = entry.expected.molesLeft[reactant.formula]
      expect(Math.abs(left - expected)).toBeLessThanOrEqual(allowance(entry, charged[at]!.amountMol))
      if (entry.inputs.product !== undefined)
        near(
          entry,
          (charged[at]!.amountMol / reactant.coefficient) * entry.inputs.product.coefficient,
          entry.expected.productMolesIfEach[reactant.formula],
        )
    }
  })
  it.each(entries.filter(entry => entry.inputs.molecule !== undefined))('$id', entry => {
    const counts = compositionOf(entry.inputs.molecule).counts
    const symbols = [...counts.keys()]
    const { index, extentMol } = limitingOf(
      symbols.map(one => ({ amountMol: entry.inputs.atomsAvailable[one], coefficient: counts.get(one)! })),
    )
    expect(symbols[index]).toBe(entry.expected.limiting)
    expect(Math.floor(extentMol + 1e-9)).toBe(entry.expected.wholeMolecules)
  })
  it('leaves no entry of the topic out', () => {
    expect(entries.every(entry => entry.inputs.reactants !== undefined || entry.inputs.molecule !== undefined)).toBe(true)
  })
})

describe('gas', () => {
  it.each(checkValuesOf('gas', 6))('$id', entry => {
    const { inputs, expected } = entry
    if (inputs.given === undefined) near(entry, gasVolumeL(inputs.moles, inputs.temperatureK, inputs.pressureKPa), expected.liters)
    else if (inputs.sameConditions === true) {
      // The exercise names no conditions: whatever they are, they cancel.
      for (const [temperatureK, pressureKPa] of [
        [273.15, 101.325],
        [400, 50],
      ] as const) {
        const moles = inputs.given.liters / gasVolumeL(1, temperatureK, pressureKPa)
        near(entry, gasVolumeL((moles * inputs.wanted.coefficient) / inputs.given.coefficient, temperatureK, pressureKPa), expected.liters)
      }
    } else {
      const moles = (molesGiven(inputs.given) * inputs.gas.coefficient) / inputs.given.coefficient
      near(entry, moles, expected.moles)
      near(entry, gasVolumeL(moles, inputs.temperatureK, inputs.pressureKPa), expected.liters)
    }
  })
})
