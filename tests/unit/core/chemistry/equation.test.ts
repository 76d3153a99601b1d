import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Equation, imbalancesOf, type Term, unbalanced } from '../../../../core/chemistry/equation.ts'
import { parseFormula } from '../../../../core/chemistry/formula.ts'
import { wholeSolutions } from '../../../../core/chemistry/null-space.ts'
import { proposalsFor } from '../../../../core/chemistry/proposal.ts'

const side = (text: string): Term[] =>
  text.split(' + ').map(part => {
    const [, count, formula] = /^(\d+(?:\.\d+)? )?(.+)$/.exec(part)!
    const read = parseFormula(formula!)
    if (!read.ok) throw new Error(formula)
    return { name: formula!, coefficient: Number(count ?? 1), composition: read.value }
  })
const equationOf = (text: string): Equation => {
  const [left, right] = text.split(' -> ')
  return { reactants: side(left!), products: side(right!) }
}

describe('balance', () => {
  it.each([
    '2 C7H6O -> C14H12O2',
    'C14H10O2 + C6H8N2 -> C20H14N2 + 2 H2O',
    'Cu + 4 HNO3 -> Cu(NO3)2 + 2 NO2 + 2 H2O',
    'MnO4^- + 5 Fe2+ + 8 H+ -> Mn2+ + 5 Fe3+ + 4 H2O',
    'H2 + 0.5 O2 -> H2O',
    'CaSO4·0.5H2O + 1.5 H2O -> CaSO4·2H2O',
  ])('holds in %s', text => {
    expect(imbalancesOf(equationOf(text))).toEqual([])
    expect(unbalanced(equationOf(text), [])).toBeNull()
    expect(proposalsFor(equationOf(text))).toEqual([])
  })

  it('names every element that is off, and the charge', () => {
    expect(imbalancesOf(equationOf('C14H12O2 -> C14H10O2'))).toEqual([{ of: 'H', left: 12, right: 10 }])
    expect(imbalancesOf(equationOf('Fe2+ -> Fe3+'))).toEqual([{ of: 'charge', left: 2, right: 3 }])
    expect(unbalanced(equationOf('C14H12O2 -> C14H10O2'), ['a.json', 'x', 'products'])).toMatchObject({
      code: 'equation-unbalanced',
      where: ['a.json', 'x', 'products'],
      what: expect.stringContaining('H: 12 on the left, 10 on the right'),
    })
  })
})

describe('proposals', () => {
  it.each([
    ['C7H6O -> C14H12O2', 'Write 2 C7H6O -> C14H12O2.'],
    ['C14H10O2 + C6H8N2 -> C20H14N2', 'Add 2 H2O (water) on the right.'],
    ['C2H5Br + NaOH -> C2H5OH', 'Add 1 NaBr (sodium bromide) on the right.'],
    ['C6H5NH2 + C4H6O3 -> C8H9NO', 'Add 1 CH3CO2H (acetic acid) on the right.'],
    ['C7H6O2 + SOCl2 -> C7H5ClO + SO2', 'Add 1 HCl (hydrogen chloride) on the right.'],
    ['KMnO4 + HCl -> KCl + MnCl2 + Cl2', 'Write 2 KMnO4 + 16 HCl -> 2 KCl + 2 MnCl2 + 5 Cl2 + 8 water.'],
    ['Fe + Cl2 -> FeCl3', 'Write 2 Fe + 3 Cl2 -> 2 FeCl3.'],
    ['C14H12O2 + 2 HNO3 -> C14H10O2', 'Add 2 H2O (water) on the right and 2 NO2 (nitrogen dioxide) on the right.'],
    // A Grignard reagent and the acid that quenches it: 2 RMgX + 2 HCl leave MgX2 and MgCl2, the Schlenk equilibrium's own halides. From memory.
    ['C6H5MgBr + C7H6O + HCl -> C13H12O', 'Write 2 C6H5MgBr + 2 C7H6O + 2 HCl -> 2 C13H12O + magnesium chloride + magnesium bromide.'],
    ['C6H5MgBr + C7H6O + HCl -> C13H12O + MgBr2', 'Write 2 C6H5MgBr + 2 C7H6O + 2 HCl -> 2 C13H12O + MgBr2 + magnesium chloride.'],
    ['C6H5MgBr + C7H6O + HBr -> C13H12O', 'Add 1 MgBr2 (magnesium bromide) on the right.'],
    // Without magnesium a halide may be swapped for another: an iodide made of a bromide.
    ['C4H9Br -> C4H9I', 'Add 1 HBr (hydrogen bromide) on the right and 1 HI (hydrogen iodide) on the left.'],
  ])('%s', (text, first) => {
    expect(proposalsFor(equationOf(text))[0]?.text).toBe(first)
  })

  it('never swap sodium salts across the arrow where magnesium keeps the halides', () => {
    for (const text of ['C6H5MgBr + C7H6O + HCl -> C13H12O + MgBr2', 'C6H5MgBr + C7H6O + HCl -> C13H12O + MgCl2'])
      for (const one of proposalsFor(equationOf(text))) expect(one.text).not.toMatch(/Na|K/)
  })

  it('balance, every one of them, for sound equations that lost a compound or their coefficients', () => {
    const sound = [
      '2 C7H6O -> C14H12O2',
      'C14H10O2 + C6H8N2 -> C20H14N2 + 2 H2O',
      'Cu + 4 HNO3 -> Cu(NO3)2 + 2 NO2 + 2 H2O',
      'C7H6O2 + SOCl2 -> C7H5ClO + SO2 + HCl',
      '2 C7H6O + C3H6O -> C17H14O + 2 H2O',
      'C4H10O + NaBr + H2SO4 -> C4H9Br + NaHSO4 + H2O',
      'C6H5NO2 + 3 Fe + 6 HCl -> C6H7N + 3 FeCl2 + 2 H2O',
    ]
    let proposed = 0
    let broken = 0
    for (const text of sound) {
      const whole = equationOf(text)
      expect(imbalancesOf(whole), text).toEqual([])
      const variants: Equation[] = [
        {
          reactants: whole.reactants.map(one => ({ ...one, coefficient: 1 })),
          products: whole.products.map(one => ({ ...one, coefficient: 1 })),
        },
        ...whole.products.slice(1).map(lost => ({ ...whole, products: whole.products.filter(one => one !== lost) })),
        ...whole.reactants.slice(1).map(lost => ({ ...whole, reactants: whole.reactants.filter(one => one !== lost) })),
      ]
      for (const equation of variants) {
        if (imbalancesOf(equation).length === 0) continue
        broken++
        const proposals = proposalsFor(equation)
        if (proposals.length > 0) proposed++
        for (const proposal of proposals) expect(imbalancesOf(proposal.equation), `${text}: ${proposal.text}`).toEqual([])
      }
    }
    // Lost organic partners cannot be guessed; of the others most can.
    expect(broken).toBeGreaterThanOrEqual(20)
    expect(proposed).toBeGreaterThanOrEqual(14)
  })

  it('says nothing where nothing simple helps', () => {
    expect(proposalsFor(equationOf('Fe -> Cu'))).toEqual([])
  })
})

describe('whole-number null space', () => {
  it('finds the coefficients of a known equation in lowest terms', () => {
    // 4 FeS2 + 11 O2 -> 2 Fe2O3 + 8 SO2: the roasting of pyrite as school books print it; from memory.
    const columns = [
      new Map([
        ['Fe', 1],
        ['S', 2],
      ]),
      new Map([['O', 2]]),
      new Map([
        ['Fe', -2],
        ['O', -3],
      ]),
      new Map([
        ['S', -1],
        ['O', -2],
      ]),
    ]
    expect(wholeSolutions(columns)).toEqual([[4, 11, 2, 8]])
  })

  it('every vector it gives solves the system', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 6 }),
        columns => {
          const asMaps = columns.map(column => new Map(column.map((value, row) => [`r${row}`, value])))
          for (const vector of wholeSolutions(asMaps)) {
            expect(vector.some(one => one !== 0)).toBe(true)
            for (let row = 0; row < 3; row++) expect(vector.reduce((sum, one, at) => sum + one * columns[at]![row]!, 0)).toBe(0)
          }
        },
      ),
      { numRuns: 500 },
    )
  })
})
