import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { elements } from '../../../../core/chemistry/elements.ts'
import { hill, massPercent, molarMass, molarMassOf, parseFormula, sameComposition } from '../../../../core/chemistry/formula.ts'

const read = (text: string) => {
  const formula = parseFormula(text)
  return formula.ok ? `${hill(formula.value)} ${formula.value.charge}` : formula.problems.map(one => one.code).join()
}

describe('formulas as the trade writes them', () => {
  it.each([
    ['C14H12O2', 'C14H12O2 0'],
    ['CH3CO2H', 'C2H4O2 0'],
    ['PhCHO', 'C7H6O 0'],
    ['NaOAc', 'C2H3NaO2 0'],
    ['CuSO4·5H2O', 'CuH10O9S 0'],
    ['CuSO4.5H2O', 'CuH10O9S 0'],
    ['CuSO4*5H2O', 'CuH10O9S 0'],
    ['CuSO₄·5H₂O', 'CuH10O9S 0'],
    ['CuSO4 5H2O', 'CuH10O9S 0'],
    ['CuSO4 5 H2O', 'CuH10O9S 0'],
    ['CuSO4 * 5 H2O', 'CuH10O9S 0'],
    ['CuSO4 · 5 H2O', 'CuH10O9S 0'],
    ['CuSO₄ 5 H₂O', 'CuH10O9S 0'],
    ['Na2CO3 10 H2O', 'CH20Na2O13 0'],
    ['Na2CO3, 10 H2O', 'CH20Na2O13 0'],
    ['Ba(OH)2 x 8 H2O', 'BaH18O10 0'],
    ['Ba(OH)2 × 8H2O', 'BaH18O10 0'],
    ['Fe2(SO4)3 9H2O', 'Fe2H18O21S3 0'],
    ['CaSO4 1/2 H2O', 'CaHO4.5S 0'],
    ['C6H5NH2 HCl', 'C6H8ClN 0'],
    ['K2SO4 3KHSO4', 'H3K5O16S4 0'],
    ['C 6 H 12 O 6', 'C6H12O6 0'],
    ['C6H12 O6', 'C6H12O6 0'],
    ['CaSO4·0.5H2O', 'CaHO4.5S 0'],
    ['CaSO4·½H2O', 'CaHO4.5S 0'],
    ['2KHSO5·KHSO4·K2SO4', 'H3K5O18S4 0'],
    ['K3[Fe(C2O4)3]·3H2O', 'C6H6FeK3O15 0'],
    ['[Cu(NH3)4]SO4·H2O', 'CuH14N4O5S 0'],
    ['Na+', 'Na 1'],
    ['Cu2+', 'Cu 2'],
    ['Fe+++', 'Fe 3'],
    ['SO4^2-', 'O4S -2'],
    ['SO4(2-)', 'O4S -2'],
    ['SO₄²⁻', 'O4S -2'],
    ['NH4+', 'H4N 1'],
    ['[Cu(NH3)4]2+', 'CuH12N4 2'],
    ['NaCl(aq)', 'ClNa 0'],
    ['D2O', 'D2O 0'],
    ['*C6H10O5*', 'C6H10O5 0'],
    ['CO', 'CO 0'],
    ['Co', 'Co 0'],
  ])('%s', (text, expected) => {
    expect(read(text)).toBe(expected)
  })

  it.each([
    ['', 'formula-empty'],
    ['cuso4', 'formula-element'],
    ['Xx2', 'formula-element'],
    ['PuO2', 'formula-element'],
    ['Na)', 'formula-bracket'],
    ['(NaCl', 'formula-bracket'],
    ['H0', 'formula-unreadable'],
    ['2H2O', 'formula-unreadable'],
    ['2 H2O', 'formula-unreadable'],
    ['CaO 2 SiO2', 'formula-unreadable'],
    ['(C2H4O)n', 'formula-unreadable'],
    ['n C2H4', 'formula-unreadable'],
    ['NaCl!', 'formula-unreadable'],
    ['·5H2O·', 'formula-unreadable'],
    ['SO42-', 'formula-charge'],
    ['__proto__', 'formula-unreadable'],
    ['constructor', 'formula-element'],
  ])('refuses %s', (text, code) => {
    expect(read(text)).toBe(code)
  })

  it('sets a hydrate off whatever stands between: mass of the salt and of its water', () => {
    // Property over the CIAAW weights: M(salt, n water) = M(salt) + n x 18.015.
    const salt = fc.constantFrom('CuSO4', 'Na2CO3', 'MgCl2', 'Ba(OH)2', 'KAl(SO4)2', 'Na3PO4', 'FeSO4', 'K4[Fe(CN)6]', 'LiOH')
    const between = fc.constantFrom('.', '·', ' · ', '*', ' * ', ' ', ', ', ' x ', ' × ', '  ')
    fc.assert(
      fc.property(salt, between, fc.integer({ min: 1, max: 24 }), fc.constantFrom('', ' '), (name, dot, count, blank) => {
        expect(molarMassOf(`${name}${dot}${count}${blank}H2O`)).toBeCloseTo(molarMassOf(name) + count * 18.015, 2)
      }),
      { numRuns: 500 },
    )
  })

  it('reads back what it prints, whatever the elements', () => {
    const weighed = [...elements].filter(([, element]) => element.atomicWeight !== null).map(([symbol]) => symbol)
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.tuple(fc.constantFrom(...weighed), fc.integer({ min: 1, max: 300 })), {
          selector: one => one[0],
          minLength: 1,
          maxLength: 8,
        }),
        pairs => {
          const composition = { counts: new Map(pairs), charge: 0 }
          const back = parseFormula(hill(composition))
          expect(back.ok && sameComposition(back.value, composition)).toBe(true)
        },
      ),
      { numRuns: 1000 },
    )
  })

  it('never throws, whatever is typed', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 80 }), fc.stringMatching(/^[A-Za-z0-9()[\]·.*+^-]{0,40}$/)), text => {
        const result = parseFormula(text)
        if (result.ok) expect(molarMass(result.value)).toBeGreaterThan(0)
        else expect(result.problems).toHaveLength(1)
      }),
      { numRuns: 3000 },
    )
  })
})

describe('masses', () => {
  it('a hydrate weighs its parts', () => {
    expect(molarMassOf('CuSO4·5H2O')).toBeCloseTo(molarMassOf('CuSO4') + 5 * molarMassOf('H2O'), 9)
  })
  it('shares of the elements make up the whole', () => {
    const formula = parseFormula('C8H10N4O2')
    if (!formula.ok) throw new Error()
    expect([...massPercent(formula.value).values()].reduce((sum, one) => sum + one, 0)).toBeCloseTo(100, 9)
  })
  it('throws for a formula that nobody checked', () => {
    expect(() => molarMassOf('Xx')).toThrow(RangeError)
  })
  it('knows 118 elements and two named isotopes', () => {
    expect(elements.size).toBe(120)
  })
})
