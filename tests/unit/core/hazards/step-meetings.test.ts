import { describe, expect, it } from 'vitest'
import { stepMeetings } from '../../../../core/hazards/step-meetings.ts'
import { traitsOf } from '../../../../core/hazards/traits.ts'
import type { ChargeLine, Transformation } from '../../../../core/library/transformation.ts'
import { chargedStep } from '../../../support/charged-steps.ts'
import { bundledTables, toolkit } from '../../../support/hazards.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const tables = bundledTables()
const bottles = [
  material({ id: 'acetone', smiles: 'CC(C)=O', cas: '67-64-1', form: 'liquid' }),
  material({ id: 'ethanol', smiles: 'CCO', cas: '64-17-5', form: 'liquid' }),
  material({ id: 'nitric-acid', smiles: 'O[N+](=O)[O-]', cas: '7697-37-2', formula: 'HNO3', form: 'liquid' }),
  material({
    id: 'strong-nitric-acid',
    kind: 'mixture',
    form: 'solution',
    cas: '7697-37-2',
    contains: { compound: 'nitric-acid', massFraction: 0.68 },
  }),
  material({
    id: 'weak-nitric-acid',
    kind: 'mixture',
    form: 'solution',
    cas: '7697-37-2',
    contains: { compound: 'nitric-acid', massFraction: 0.05 },
  }),
  material({ id: 'alcohol', smiles: 'OCc1ccccc1', form: 'liquid' }),
  material({ id: 'chloride', smiles: 'O=C(Cl)c1ccccc1', form: 'liquid' }),
  material({ id: 'water', smiles: 'O', cas: '7732-18-5', form: 'liquid' }),
  material({ id: 'product', smiles: 'O=Cc1ccccc1', form: 'liquid' }),
  material({ id: 'hydrogen', smiles: '[H][H]', form: 'gas' }),
]
const line = (id: string, role: ChargeLine['role']): ChargeLine => ({ material: id, role, amount: 10, unit: 'mL' })
function meetingsIn(own: Partial<Transformation>, step = {}) {
  const one = transformation({
    id: 'step',
    reactants: [{ compound: 'alcohol', coefficient: 1 }],
    products: [{ compound: 'product', coefficient: 1 }],
    mainProduct: 'product',
    limiting: 'alcohol',
    charge: [line('alcohol', 'substrate')],
    ...own,
  })
  const library = smallLibrary(bottles, [one])
  const traits = traitsOf(library, tables, toolkit)
  return stepMeetings(library, tables, traits, [chargedStep({ transformation: 'step', number: '2a', ...step })])
}
const titled = (meetings: ReturnType<typeof meetingsIn>, title: RegExp) => meetings.filter(meeting => title.test(meeting.title))

describe('incident rules inside a step', () => {
  // Acetone with nitric acid: ACS, incompatible chemicals short list (after Hill and Finster), as quoted in the table.
  it('find acetone beside nitric acid, by CAS number and not by id alone', () => {
    const [found] = titled(
      meetingsIn({ charge: [line('acetone', 'solvent'), line('strong-nitric-acid', 'oxidant')] }),
      /^Acetone with nitric/,
    )
    expect(found).toMatchObject({ where: 'step', place: '2a', severity: 'never', intended: false })
    expect(found?.materials).toEqual(expect.arrayContaining(['acetone', 'strong-nitric-acid']))
    expect(found?.sources.length).toBeGreaterThan(0)
  })
  it('take a weak solution for what it is: a rule about the acid wants half of it to be acid', () => {
    const strong = titled(
      meetingsIn({ charge: [line('strong-nitric-acid', 'oxidant'), line('alcohol', 'substrate')] }),
      /^Nitric acid with ethanol/,
    )
    const weak = titled(
      meetingsIn({ charge: [line('weak-nitric-acid', 'oxidant'), line('alcohol', 'substrate')] }),
      /^Nitric acid with ethanol/,
    )
    expect([strong.length, weak.length]).toEqual([1, 0])
  })
  it('call a meeting intended where all partners are reactants of the equation', () => {
    const reacting = {
      reactants: [
        { compound: 'alcohol', coefficient: 1 },
        { compound: 'nitric-acid', coefficient: 1 },
      ],
      charge: [line('strong-nitric-acid', 'oxidant'), line('alcohol', 'substrate'), line('ethanol', 'solvent')],
    }
    const found = titled(meetingsIn(reacting), /^Nitric acid with ethanol/)
    expect(found.map(meeting => [meeting.intended, meeting.materials])).toEqual([
      [false, ['strong-nitric-acid', 'ethanol']],
      [true, ['strong-nitric-acid', 'alcohol']],
    ])
  })
  it('call it intended where the pair is listed, and tell the condition without taking it as met', () => {
    const found = titled(
      meetingsIn({
        reactants: [{ compound: 'nitric-acid', coefficient: 1 }],
        charge: [line('strong-nitric-acid', 'oxidant'), line('ethanol', 'solvent')],
        intendedMeetings: [{ materials: ['ethanol', 'nitric-acid'], condition: 'ice cold, dropwise' }],
      }),
      /^Nitric acid with ethanol/,
    )
    expect(found).toHaveLength(1)
    expect(found[0]).toMatchObject({ intended: true, conditions: ['ice cold, dropwise'] })
  })
  it('ask the conditions of a rule as questions', () => {
    const [found] = titled(
      meetingsIn({ charge: [line('strong-nitric-acid', 'oxidant'), line('alcohol', 'substrate')] }),
      /^Nitric acid with organic/,
    )
    expect(found?.conditions).toEqual(['Is this so here: unplanned contact, waste, glassware cleaning?'])
  })
  it('do not let the acid of the vessel meet the solvent of the recrystallisation', () => {
    const reactants = [{ compound: 'nitric-acid', coefficient: 1 }]
    const found = meetingsIn({ reactants, charge: [line('strong-nitric-acid', 'oxidant'), line('ethanol', 'recrystallisation')] })
    expect(titled(found, /^Nitric acid with/)).toEqual([])
  })
  it('let a reactant that has no line of its own meet the others all the same', () => {
    const found = titled(meetingsIn({ charge: [line('strong-nitric-acid', 'oxidant')] }), /^Nitric acid with ethanol/)
    expect(found[0]?.materials).toEqual(['strong-nitric-acid', 'alcohol'])
  })
  it('let the product meet what works it up', () => {
    const found = titled(
      meetingsIn({
        products: [{ compound: 'chloride', coefficient: 1 }],
        mainProduct: 'chloride',
        charge: [line('alcohol', 'substrate'), line('water', 'quench')],
      }),
      /^Acid chlorides/,
    )
    expect(found[0]?.materials).toEqual(['chloride', 'water'])
  })
  it('never bring the reactivity matrix into a step', () => {
    const found = meetingsIn({ charge: [line('alcohol', 'substrate'), line('acetone', 'solvent')] })
    expect(found.every(meeting => tables.incidentRules.some(rule => rule.title === meeting.title))).toBe(true)
  })
})

describe('rules that a step sets off by what it is', () => {
  it('a gas: never in a closed vessel, the gas named', () => {
    const [found] = titled(meetingsIn({ gasEvolved: [{ compound: 'hydrogen', perMolLimiting: 1 }] }), /closed vessel/)
    expect(found).toMatchObject({ severity: 'never', materials: ['hydrogen'] })
    expect(titled(meetingsIn({}), /^Gas evolution/)).toEqual([])
  })
  it('a strong exotherm, but only above twice the scale of the source', () => {
    expect(titled(meetingsIn({ exotherm: 'strong' }, { scale: 3 }), /scaled up/)).toHaveLength(1)
    expect(titled(meetingsIn({ exotherm: 'strong' }, { scale: 3, batches: 2 }), /scaled up/)).toEqual([])
    expect(titled(meetingsIn({ exotherm: 'mild' }, { scale: 9 }), /scaled up/)).toEqual([])
  })
})
