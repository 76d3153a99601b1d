import { describe, expect, it } from 'vitest'
import { needsOf } from '../../../../core/shopping/needs.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const library = smallLibrary(
  [
    material({ id: 'ether', form: 'liquid', densityGPerMl: 0.7 }),
    material({ id: 'oil', form: 'liquid' }),
    material({ id: 'water', form: 'liquid', densityGPerMl: 1 }),
    material({ id: 'made', formula: 'C2H6O' }),
    material({ id: 'drier' }),
  ],
  [
    transformation({
      id: 'one',
      charge: [
        { material: 'ether', role: 'solvent', amount: 10, unit: 'mL' },
        { material: 'ether', role: 'reagent', amount: 10, unit: 'g' },
        { material: 'drier', role: 'drying', amount: null, unit: 'g' },
      ],
    }),
    transformation({ id: 'two', charge: [{ material: 'ether', role: 'solvent', amount: 10, unit: 'mL' }] }),
  ],
)
const plain = { library, products: [], reserve: 0, repeat: false, retainedSampleG: 0 }
const solvent = chargedLine({ material: 'ether', role: 'solvent', massG: 7, volumeMl: 10, line: 0 })
const one = chargedStep({
  transformation: 'one',
  charges: [solvent],
  goesTo: [{ step: 'two', goal: null, massG: 10 }],
  p10G: 9,
  medianG: 10,
})
const two = chargedStep({ transformation: 'two', charges: [solvent], p10G: 5, medianG: 10 })

describe('needs', () => {
  it('add up over steps in the unit of their lines, with the reserve on top', () => {
    const [need] = needsOf({ ...plain, steps: [one, two], reserve: 0.1 })
    expect(need).toMatchObject({ material: 'ether', unit: 'mL', open: false })
    expect(need!.amount).toBeCloseTo(22, 12)
    expect(need!.uses).toEqual([
      { step: 'one', role: 'solvent', amount: { amount: 10, unit: 'mL' } },
      { step: 'two', role: 'solvent', amount: { amount: 10, unit: 'mL' } },
    ])
  })

  it('are in g where the units of the lines differ', () => {
    const byMass = chargedLine({ material: 'ether', massG: 14, volumeMl: 20, line: 1 })
    expect(needsOf({ ...plain, steps: [{ ...one, charges: [solvent, byMass] }] })[0]).toMatchObject({ unit: 'g', amount: 21 })
  })

  it('stay open, not zero, where a line has no figure; what is known is a lower bound', () => {
    const open = chargedLine({ material: 'ether', basis: 'open', line: 0 })
    expect(needsOf({ ...plain, steps: [{ ...one, charges: [solvent, open] }] })[0]).toMatchObject({ amount: 10, open: true })
    expect(needsOf({ ...plain, steps: [{ ...one, charges: [open] }] })[0]).toMatchObject({ amount: null, open: true })
  })

  it('cannot add mass to volume without a density, and say so', () => {
    const [need] = needsOf({
      ...plain,
      steps: [{ ...one, charges: [chargedLine({ material: 'oil', massG: 5 }), chargedLine({ material: 'oil', volumeMl: 5 })] }],
    })
    expect(need).toMatchObject({ unit: 'g', amount: 5, open: true })
    expect(need!.notes[0]).toMatch(/no density/)
  })

  it('carry the marks of their lines', () => {
    const lines = [
      chargedLine({ material: 'drier', massG: 1, basis: 'planned' }),
      chargedLine({ material: 'drier', massG: 1, basis: 'at-least' }),
    ]
    expect(needsOf({ ...plain, steps: [{ ...one, charges: lines }] })[0]).toMatchObject({ planned: true, atLeast: true })
  })

  it('leave out the start and what the plan makes, and the air; water is free', () => {
    const charges = [
      chargedLine({ material: 'made', massG: 3, supply: 'made' }),
      chargedLine({ material: 'drier', massG: 3, supply: 'start' }),
      chargedLine({ material: 'water', supply: 'free', basis: 'open' }),
      chargedLine({ material: 'water', massG: 50, volumeMl: 50 }),
    ]
    const needs = needsOf({ ...plain, steps: [{ ...one, charges }] })
    expect(needs.map(n => [n.material, n.free])).toEqual([['water', true]])
  })

  it('mark what a solution of a made compound is made up with as about', () => {
    const charges = [chargedLine({ material: 'ether', volumeMl: 30, massG: 21, basis: 'about', line: 0 })]
    const [need] = needsOf({ ...plain, steps: [{ ...one, charges }] })
    expect(need).toMatchObject({ material: 'ether', unit: 'mL', amount: 30, planned: true })
    expect(need!.notes[0]).toMatch(/^About/)
  })

  it('hold one repeat of the riskiest step: the smallest P10 over median', () => {
    // Two of the second step (5/10 against 9/10), one of the first.
    expect(needsOf({ ...plain, steps: [one, two], repeat: true })[0]!.amount).toBe(30)
  })

  it('grow for a retained sample by what the sample takes upstream too', () => {
    // 1 g more of 10 g: a tenth more of the second step, and of the first, whose 10 g all go there.
    const steps = [one, chargedStep({ ...two, makes: 'target' })]
    expect(needsOf({ ...plain, steps, products: ['target'], retainedSampleG: 1 })[0]!.amount).toBeCloseTo(22, 12)
  })
})
