import { describe, expect, it } from 'vitest'
import type { Material } from '../../core/library/material.ts'
import { madeUpText, makingsOf } from '../../core/shopping/made-up.ts'
import { checkValuesOf } from '../support/check-values.ts'
import { material, smallLibrary } from '../support/small-library.ts'

// Each entry names its source in check-values.json.
const entries = [...checkValuesOf('dilution', 5), ...checkValuesOf('solution-mass', 3)]
const entryOf = (id: string) => entries.find(entry => entry.id === id)!
const water = material({ id: 'water', form: 'liquid', formula: 'H2O', densityGPerMl: 1 })
const solution = (id: string, own: Partial<Material>) => material({ id, kind: 'mixture', form: 'solution', ...own })
const within = (value: number | null, expected: number, rel: number | undefined) =>
  expect(Math.abs(value! / expected - 1)).toBeLessThan(rel!)

describe('solutions made up, worked examples in print', () => {
  it('nitric acid, 10 % from 68 % by mass', () => {
    const { inputs, expected, tolerance } = entryOf('sol-hno3-mass-dilution')
    const acid = material({ id: 'acid', form: 'liquid', formula: 'HNO3' })
    const stock = solution('stock', { contains: { compound: 'acid', massFraction: inputs.stockMassPercent! / 100 } })
    const target = solution('target', { contains: { compound: 'acid', massFraction: inputs.targetMassPercent! / 100 } })
    const library = smallLibrary([water, acid, stock, target])
    const making = makingsOf(library, target, 'g', () => 'g').find(m => m.source === 'stock')!
    const made = madeUpText(library, making, inputs.targetGrams!)
    within(made.fromAmount.amount, expected.stockGrams!, tolerance.rel)
    within(made.withAmount.amount, inputs.targetGrams! - expected.stockGrams!, tolerance.rel)
  })

  it('sulfuric acid, 0.1 mol/L from 98 %', () => {
    const { inputs, expected, tolerance } = entryOf('sol-h2so4-dilute')
    const acid = material({ id: 'acid', form: 'liquid', formula: 'H2SO4' })
    const stock = solution('stock', {
      densityGPerMl: inputs.densityGPerMl!,
      contains: { compound: 'acid', massFraction: inputs.massPercent! / 100 },
    })
    const target = solution('target', { densityGPerMl: 1, contains: { compound: 'acid', molPerL: inputs.targetMolPerL! } })
    const library = smallLibrary([water, acid, stock, target])
    const making = makingsOf(library, target, 'mL', () => 'mL').find(m => m.source === 'stock')!
    within(madeUpText(library, making, inputs.targetMilliliters!).fromAmount.amount, expected.stockMilliliters!, tolerance.rel)
  })

  it('potassium hydroxide, 5 L of 0.1 mol/L from 1.59 mol/L', () => {
    const { inputs, expected, tolerance } = entryOf('dil-koh')
    const base = material({ id: 'base', formula: 'KOH' })
    const stock = solution('stock', { densityGPerMl: 1.07, contains: { compound: 'base', molPerL: inputs.c1! } })
    const target = solution('target', { densityGPerMl: 1.01, contains: { compound: 'base', molPerL: inputs.c2! } })
    const library = smallLibrary([water, base, stock, target])
    const making = makingsOf(library, target, 'mL', () => 'mL').find(m => m.source === 'stock')!
    within(madeUpText(library, making, inputs.v2! * 1000).fromAmount.amount, expected.v1! * 1000, tolerance.rel)
  })

  it('sodium hydroxide, 1 L of 10 % from pellets of 97 %: more is weighed than is needed', () => {
    const { inputs, expected, tolerance } = entryOf('sol-naoh-purity')
    const base = material({ id: 'base', formula: 'NaOH' })
    const target = solution('target', {
      densityGPerMl: inputs.densityGPerMl!,
      contains: { compound: 'base', massFraction: inputs.targetMassPercent! / 100 },
    })
    const library = smallLibrary([water, base, target])
    const making = makingsOf(library, target, 'mL', m => (m.form === 'solid' ? 'g' : 'mL')).find(m => m.source === 'base')!
    const made = madeUpText(library, making, inputs.targetMilliliters!)
    within(made.fromAmount.amount! / (inputs.purityMassPercent! / 100), expected.gramsSolid!, tolerance.rel)
  })
})
