import { describe, expect, it } from 'vitest'
import { quenchLines } from '../../../../core/hazards/quench.ts'
import { shareLeft } from '../../../../core/hazards/waste.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { bundledTables } from '../../../support/hazards.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const permanganate = material({ id: 'potassium-permanganate', cas: '7722-64-7', formula: 'KMnO4' })
const bleach = material({
  id: 'weak-bleach',
  kind: 'mixture',
  form: 'solution',
  contains: { compound: 'hypochlorite', massFraction: 0.05 },
})
const hypochlorite = material({ id: 'hypochlorite', cas: '7681-52-9', formula: 'NaClO' })
const bottles = [
  permanganate,
  bleach,
  hypochlorite,
  material({ id: 'alcohol' }),
  material({ id: 'acid' }),
  material({ id: 'bisulfite', name: 'bisulfite' }),
]
const oxidation = (oxidant: string) =>
  transformation({
    id: 'oxidation',
    reactants: [
      { compound: 'alcohol', coefficient: 3 },
      { compound: oxidant, coefficient: 2 },
    ],
    products: [{ compound: 'acid', coefficient: 3 }],
    mainProduct: 'acid',
    limiting: 'alcohol',
  })
const lines = (oxidant: string, amountMol: number | null, ...more: Parameters<typeof chargedLine>[0][]) => {
  const compound = oxidant === 'weak-bleach' ? 'hypochlorite' : oxidant
  const library = smallLibrary(bottles, [oxidation(compound)])
  const step = chargedStep({
    transformation: 'oxidation',
    number: '2a',
    limiting: { compound: 'alcohol', amountMol: 0.3, massG: 30 },
    yieldFraction: { low: 0.7, typical: 0.8, high: 0.9 },
    charges: [
      chargedLine({ material: 'alcohol', amountMol: 0.3, massG: 30 }),
      chargedLine({ material: oxidant, role: 'oxidant', amountMol, massG: 50 }),
      ...more.map(chargedLine),
    ],
  })
  return { step, library, found: quenchLines(library, bundledTables(), [step]) }
}

describe('residues that are destroyed before the bottle', () => {
  // 2 MnO4- + 5 HSO3- + H+ -> 2 Mn2+ + 5 SO4(2-) + 3 H2O: 2.5 mol for one. Of 0.3 mol, 0.3 x 0.8 x 2/3 = 0.16 is used; 0.14 mol is left.
  it('get a reagent by the equation, for what is left at typical yield', () => {
    const { found } = lines('potassium-permanganate', 0.3)
    expect(found).toMatchObject([
      { step: '2a', destroys: 'potassium-permanganate', from: 'planned', reagents: [{ name: 'sodium bisulfite' }] },
    ])
    expect(found[0]!.reagents[0]!.massG).toBeCloseTo(0.14 * 2.5 * 104.06, 6)
    expect(found[0]!.test).toMatch(/purple/)
  })
  it('are found by the compound in a bottle', () => {
    expect(lines('weak-bleach', 0.5).found).toMatchObject([{ destroys: 'weak-bleach', from: 'planned' }])
  })
  it('are left to the quench of the step itself, where it has one: its lines are in the shopping list', () => {
    const { found } = lines('potassium-permanganate', 0.3, {
      material: 'bisulfite',
      role: 'quench',
      at: 'quench',
      massG: 12,
      basis: 'source',
    })
    expect(found).toMatchObject([{ from: 'source', reagents: [{ name: 'bisulfite', massG: 12 }], do: null }])
  })
  it('are none where the equation uses all of it up', () => {
    expect(lines('potassium-permanganate', 0.16).found).toEqual([])
  })
  it('have no amount where none is known, and are told all the same', () => {
    const { found, library, step } = lines('potassium-permanganate', null)
    expect(shareLeft(library, step, 'potassium-permanganate')).toBeNull()
    expect(found[0]!.reagents[0]!.massG).toBeNull()
  })
})
