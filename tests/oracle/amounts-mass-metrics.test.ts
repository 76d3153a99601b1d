import { describe, expect, it } from 'vitest'
import { libraryOfParts } from '../../core/plan/library-of-parts.ts'
import { atomEconomy, stepMetrics } from '../../core/route/metrics.ts'
import { chargedLine, chargedStep } from '../support/charged-steps.ts'
import { checkValuesOf } from '../support/check-values.ts'
import { material, transformation } from '../support/small-library.ts'

interface Part {
  readonly formula: string
  readonly coefficient: number
}

describe('atom economy', () => {
  it.each(checkValuesOf('atom-economy', 4))('$id', ({ inputs, expected, tolerance }) => {
    const parts: Part[] = inputs.reactants
    const library = libraryOfParts(
      { title: 'a test' },
      [...parts, inputs.product].map((p: Part, i) => material({ id: `m-${i}`, formula: p.formula })),
      [
        transformation({
          id: 'reaction',
          reactants: parts.map((p, i) => ({ compound: `m-${i}`, coefficient: p.coefficient })),
          products: [{ compound: `m-${parts.length}`, coefficient: inputs.product.coefficient }],
          mainProduct: `m-${parts.length}`,
          limiting: 'm-0',
          charge: [{ material: 'm-0', role: 'substrate', amount: 1, unit: 'mol' }],
        }),
      ],
    )
    expect(Math.abs(100 * atomEconomy(library, 'reaction')! - expected.atomEconomyPercent)).toBeLessThanOrEqual(tolerance.abs!)
  })
})

describe('E-factor and process mass intensity', () => {
  const library = libraryOfParts(
    { title: 'a test' },
    ['a', 'b', 'c'].map(id => material({ id, formula: 'C6H6' })),
    [transformation({ id: 'reaction' })],
  )
  it.each([...checkValuesOf('e-factor', 1), ...checkValuesOf('process-mass-intensity', 1)])('$id', ({ inputs, expected, tolerance }) => {
    const masses: number[] = Object.values(inputs.inputGrams ?? inputs.inputKilograms)
    const step = chargedStep({
      transformation: 'reaction',
      makes: 'b',
      expectedG: inputs.productGrams ?? inputs.productKilograms,
      charges: masses.map(massG => chargedLine({ material: 'c', role: 'other', massG })),
    })
    const metrics = stepMetrics(library, step)
    expect(Math.abs(metrics.eFactor! - expected.eFactor)).toBeLessThanOrEqual(tolerance.rel! * expected.eFactor)
    expect(Math.abs(metrics.processMassIntensity! - expected.processMassIntensity)).toBeLessThanOrEqual(
      tolerance.rel! * expected.processMassIntensity,
    )
  })
})

describe('reaction mass efficiency', () => {
  it.each(checkValuesOf('reaction-mass-efficiency', 1))('$id', ({ inputs, expected, tolerance }) => {
    const { benzaldehyde, acetone } = inputs.reactantGrams
    const library = libraryOfParts(
      { title: 'a test' },
      [
        material({ id: 'benzaldehyde', formula: 'C7H6O' }),
        material({ id: 'acetone', formula: 'C3H6O' }),
        material({ id: 'product', formula: 'C17H14O' }),
      ],
      [
        transformation({
          id: 'condense',
          reactants: [
            { compound: 'benzaldehyde', coefficient: 2 },
            { compound: 'acetone', coefficient: 1 },
          ],
          products: [{ compound: 'product', coefficient: 1 }],
          mainProduct: 'product',
          limiting: 'acetone',
          charge: [
            { material: 'benzaldehyde', role: 'substrate', amount: benzaldehyde, unit: 'g' },
            { material: 'acetone', role: 'substrate', amount: acetone, unit: 'g' },
          ],
        }),
      ],
    )
    inputs.productGrams.forEach((expectedG: number, i: number) => {
      const line = (id: string, massG: number, index: number) =>
        chargedLine({ material: id, role: 'substrate', massG, amountMol: massG / library.molarMass.get(id)!, line: index })
      const step = chargedStep({
        transformation: 'condense',
        makes: 'product',
        expectedG,
        limiting: { compound: 'acetone', massG: acetone, amountMol: acetone / library.molarMass.get('acetone')! },
        charges: [line('benzaldehyde', benzaldehyde, 0), line('acetone', acetone, 1)],
      })
      const percent = 100 * stepMetrics(library, step).reactionMassEfficiency!
      expect(Math.abs(percent - expected.reactionMassEfficiencyPercent[i])).toBeLessThanOrEqual(tolerance.abs!)
      // At a stoichiometric charge it is atom economy times yield.
      const theoryG = (acetone / library.molarMass.get('acetone')!) * library.molarMass.get('product')!
      const identity = (100 * atomEconomy(library, 'condense')! * expectedG) / theoryG
      expect(Math.abs(identity - expected.atomEconomyTimesYieldPercent[i])).toBeLessThanOrEqual(tolerance.abs!)
    })
  })
})
