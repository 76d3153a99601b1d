import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { imbalancesOf } from '../../../../core/chemistry/equation.ts'
import { molarMass, parseFormula } from '../../../../core/chemistry/formula.ts'
import { balanceOf } from '../../../../core/reading/equation-balance.ts'
import { isEquation, readEquation } from '../../../../core/reading/equation-line.ts'
import { NameIndex } from '../../../../core/reading/names.ts'
import { readPreparation } from '../../../../core/reading/preparation.ts'
import { answeredTerm } from '../../../../web/entry/record.ts'
import { ambiguousNames, index, library, prepared, toolkit } from '../../../support/reader.ts'
import { material, smallLibrary } from '../../../support/small-library.ts'

const equation = (text: string) => readEquation(text, index, toolkit)
const ids = (text: string) => {
  const { reactants, products } = equation(text)
  return [reactants, products].map(side => side.map(({ coefficient, compound }) => [coefficient, compound]))
}
const codes = (text: string) => equation(text).problems.map(one => one.code)

describe('a reaction SMILES is structures in every part', () => {
  // Compounds by the OpenSMILES rules for atoms of the organic subset: O is water, N ammonia, Cl hydrogen chloride, CO methanol.
  it.each([
    [
      'CC(=O)O.OCCCC>>CC(=O)OCCCC.O',
      [
        [1, 'acetic-acid'],
        [1, '1-butanol'],
      ],
      [
        [1, 'butyl-acetate'],
        [1, 'water'],
      ],
    ],
    [
      'CC(=O)O.CO>OS(=O)(=O)O>COC(C)=O.O',
      [
        [1, 'acetic-acid'],
        [1, 'methanol'],
      ],
      [
        [1, 'methyl-acetate'],
        [1, 'water'],
      ],
    ],
    [
      'CC(=O)Cl.N.N>>CC(N)=O.[NH4+].[Cl-]',
      [
        [1, 'acetyl-chloride'],
        [2, 'ammonia'],
      ],
      [
        [1, 'acetamide'],
        [1, 'ammonium-chloride'],
      ],
    ],
    ['O=Cc1ccccc1.O=Cc1ccccc1>>OC(c1ccccc1)C(=O)c1ccccc1', [[2, 'benzaldehyde']], [[1, 'benzoin']]],
  ])('%s', (text, reactants, products) => {
    const known = (side: readonly (readonly (string | number)[])[]) => side.filter(one => library.materials.has(String(one[1])))
    const [left, right] = ids(text)
    expect(left!.filter(one => one[1] !== null)).toEqual(known(reactants))
    expect(right!.filter(one => one[1] !== null)).toEqual(known(products))
    expect(balanceOf(equation(text)).balanced).toBe(true)
  })

  it('is unbalanced where a structure is, and proposals read back as what they say', () => {
    const balance = balanceOf(equation('OC1CCCCC1>>C1CCCCC1.O'))
    expect(balance.balanced).toBe(false)
    for (const one of balance.proposals) expect(balanceOf(equation(one.equation)).balanced, one.equation).toBe(true)
  })

  it('keeps what stands over the arrow, names what is behind, and tells a broken structure', () => {
    const read = equation('CCO>O.[Na+].[OH-]>CC=O |f:2.3| oxidised')
    expect(read.agents).toEqual(['O', '[Na+].[OH-]'])
    expect(equation('CCO>O>CC=O a run').notes).toEqual(['"a run" behind the reaction SMILES is its name, and no part of it'])
    expect(codes('CCO>>CC(=O')).toContain('smiles-bracket')
    // A plus behind it is no name.
    expect(ids('CCO>>CC=O + water')[1]).toContainEqual([1, 'water'])
  })

  it('takes names between its brackets for names', () => {
    expect(ids('benzaldehyde+benzaldehyde>>benzoin')).toEqual([[[2, 'benzaldehyde']], [[1, 'benzoin']]])
    expect(ids('PhCHO>>benzoin')).toEqual([[[1, 'benzaldehyde']], [[1, 'benzoin']]])
  })
})

describe('what is a formula and a structure at once', () => {
  it.each([
    ['benzaldehyde + O -> benzoic acid', 'O', ['water']],
    ['cyclohexene + Cl -> chlorocyclohexane', 'Cl', ['hydrogen-chloride']],
    ['CC(=O)O + CO -> COC(C)=O + H2O', 'CO', ['carbon-monoxide', 'methanol']],
    ['c1ccccc1 + ClCCl -> diphenylmethane', 'ClCCl', ['dichloromethane']],
  ])('%s: %s is asked about, and counts nothing before', (text, term, candidates) => {
    const read = [...equation(text).reactants, ...equation(text).products].find(one => one.text === term)!
    expect(read).toMatchObject({ compound: null, composition: null, candidates })
    expect(equation(text).problems.find(one => one.where.includes(term))!.why).toMatch(/^As a formula .* as a structure \(SMILES\)/)
    expect(balanceOf(equation(text)).balanced).toBe(false)
  })

  it('is the formula among names and formulas where the library holds it, and that is told', () => {
    expect(ids('CO + 2 H2 -> CH3OH')).toEqual([
      [
        [1, 'carbon-monoxide'],
        [2, 'hydrogen'],
      ],
      [[1, 'methanol']],
    ])
    expect(prepared('CO + 2 H2 -> CH3OH').notes.join()).toContain(
      'read as the formula, carbon monoxide, and not as the structure (SMILES), methanol',
    )
  })

  it('is answered at its own place', () => {
    expect(answeredTerm('CO + O=C -> O + NO', 'O', 'water')).toBe('CO + O=C -> O {water} + NO')
    expect(answeredTerm('aniline hydrochloride + 2 aniline -> x', 'aniline', 'aniline')).toBe(
      'aniline hydrochloride + 2 aniline {aniline} -> x',
    )
    const text = 'CCO.N-O>>O'
    expect(answeredTerm(text, 'ethanol', 'ethanol', { ...equation('2 ethanol -> water') })).toBe('2 ethanol {ethanol} -> water')
  })

  it('means the same in the terms that a proposal writes: every short structure', () => {
    // Property: a structure of a reaction SMILES and its text as a term of a mixed equation have the same composition.
    const atom = fc.constantFrom('C', 'N', 'O', 'S', 'P', 'F', 'Cl', 'Br', 'I', 'B')
    fc.assert(
      fc.property(fc.array(atom, { minLength: 1, maxLength: 4 }), atoms => {
        const smiles = atoms.join('')
        if (!toolkit.parse(smiles).ok) return
        const drawn = equation(`${smiles}>>c1ccccc1`).reactants[0]!
        const again = equation(`${drawn.text} -> c1ccccc1`).reactants[0]!
        expect({ of: smiles, compound: again.compound, left: imbalance(again.composition, drawn.composition) }).toEqual({
          of: smiles,
          compound: drawn.compound,
          left: 0,
        })
      }),
      { numRuns: 300, examples: [[['N', 'B', 'S']], [['P', 'N', 'P']], [['B', 'P', 'O']]] },
    )
  })
  const imbalance = (one: Composition | null, other: Composition | null) =>
    one === null || other === null
      ? -1
      : imbalancesOf({
          reactants: [{ name: 'a', coefficient: 1, composition: one }],
          products: [{ name: 'b', coefficient: 1, composition: other }],
        }).length
  type Composition = Parameters<typeof molarMass>[0]
})

describe('hydrates and salts that are only weighed out count with all their atoms', () => {
  // Water by the prefix of the name: IUPAC Nomenclature of Inorganic Chemistry (2005), table IV, multiplicative prefixes.
  const prefixes: Readonly<Record<string, number>> = { mono: 1, di: 2, tri: 3, hepta: 7, octa: 8 }
  const solids = [...library.materials.values()].filter(({ kind, form, contains }) => kind === 'mixture' && form === 'solid' && contains)
  const name = (id: string) => `{${id}}`

  it('every solid of the library that contains a compound', () => {
    const seen = { hydrate: 0, salt: 0, other: [] as string[] }
    for (const { id, name: called, contains } of solids) {
      const water = prefixes[/\b(mono|di|tri|hepta|octa)hydrate$/.exec(called)?.[1] ?? '']
      const with_ = water !== undefined ? `${water} H2O` : /hydrochloride$/.test(called) ? 'hydrogen chloride' : null
      const compound = name(contains!.compound)
      if (with_ === null) {
        seen.other = [...seen.other, id].sort()
        continue
      }
      seen[water !== undefined ? 'hydrate' : 'salt']++
      // What is made is never taken for the compound in it.
      const made = equation(`${compound} + ${with_} -> ${name(id)}`)
      expect(balanceOf(made).balanced, id).toBe(true)
      expect(made.products[0]!.compound, id).toBeNull()
      expect(
        made.problems.map(one => one.code),
        id,
      ).toEqual(['equation-weighed-only'])
      expect(balanceOf(equation(`${compound} -> ${name(id)}`)).balanced, id).toBe(false)
      // What reacts: a hydrate brings its water, a salt is asked for as a compound of its own.
      const used = equation(`${name(id)} -> ${compound} + ${with_}`)
      expect(balanceOf(used).balanced, id).toBe(true)
      expect(used.reactants[0], id).toMatchObject(
        water !== undefined ? { compound: contains!.compound, crystalWater: water } : { compound: null },
      )
    }
    expect(seen).toEqual({
      hydrate: 7,
      salt: 2,
      other: ['dry-ice', 'eggshell', 'palladium-on-carbon', 'palladium-on-carbon-5pct', 'sodium-amalgam-2p5pct'],
    })
  })

  // 6.0 g of acetic acid (60.052 g/mol) would give 13.60 g of CH3COONa·3H2O (136.08 g/mol); CIAAW 2021 conventional weights.
  it('made: the theory is that of the whole, and the water is proposed on its side', () => {
    const typed = 'acetic acid + NaOH -> sodium acetate trihydrate + H2O'
    const off = prepared(typed, '6.0 g glacial acetic acid', 'isolated 9.5 g')
    expect(off.balanced).toBe(false)
    expect(off.theoreticalG).toBeNull()
    expect(off.proposals[0]!.equation).toBe('acetic acid + NaOH + 2 H2O -> sodium acetate trihydrate')
    const right = prepared(off.proposals[0]!.equation, '6.0 g glacial acetic acid', 'isolated 9.5 g')
    expect(right.theoreticalG).toBeCloseTo((6.0 / 60.052) * 136.079, 2)
    expect(right.percentYield).toBeCloseTo(69.87, 1)
    expect(right.transformation.products).toBeUndefined()
    expect(right.problems[0]).toMatchObject({
      code: 'equation-weighed-only',
      cure: expect.stringContaining('Enter it as a compound of its own'),
    })
  })

  it('made: a salt of an acid', () => {
    // 9.3 g of aniline (93.129 g/mol) to C6H8ClN, 129.59 g/mol.
    const read = prepared('aniline + HCl -> aniline hydrochloride', '9.3 g aniline')
    expect(read.balanced).toBe(true)
    expect(read.theoreticalG).toBeCloseTo((9.3 / 93.129) * 129.587, 2)
    expect(read.problems.map(one => one.code)).toEqual(['equation-weighed-only'])
  })

  const baryta = (formula: string, water = 10) => `${formula} + 2 NH4Cl -> {${chloride}} + 2 NH3 + ${water} H2O`
  const chloride = 'barium-chloride'
  const withChloride = smallLibrary([...library.materials.values(), material({ id: chloride, name: 'barium chloride', formula: 'BaCl2' })])
  const names = new NameIndex(withChloride.materials, ambiguousNames, toolkit)

  it.each(['Ba(OH)2.8H2O', 'Ba(OH)2 8H2O', 'Ba(OH)2 x 8 H2O', 'Ba(OH)2, 8 H2O', 'barium hydroxide octahydrate'])(
    'used: %s brings its water, which is taken off that of the products',
    formula => {
      // Ba(OH)2·8H2O + 2 NH4Cl -> BaCl2 + 2 NH3 + 10 H2O: the lecture experiment that cools; Shakhashiri, Chemical Demonstrations 1, 1983.
      const lines = ['31.55 g barium hydroxide octahydrate', '15 g ammonium chloride']
      const read = readPreparation([baryta(formula), ...lines].join('\n'), withChloride, names, toolkit)
      expect(read.balanced).toBe(true)
      expect(read.transformation).toMatchObject({
        reactants: [
          { compound: 'barium-hydroxide', coefficient: 1 },
          { compound: 'ammonium-chloride', coefficient: 2 },
        ],
        products: [
          { compound: chloride, coefficient: 1 },
          { compound: 'ammonia', coefficient: 2 },
          { compound: 'water', coefficient: 2 },
        ],
        limiting: 'barium-hydroxide',
      })
      // 31.55 g of 315.46 g/mol is a tenth of a mole.
      expect(read.lines[0]!.amountMol).toBeCloseTo(0.1, 3)
      const short = readPreparation([baryta(formula, 2), ...lines].join('\n'), withChloride, names, toolkit)
      expect(short.balanced).toBe(false)
      expect(short.proposals[0]!.equation).toContain('10 H2O')
    },
  )

  it('a grade supplies what it contains, and says so', () => {
    const read = equation('eggshell + 2 acetic acid -> calcium acetate + CO2 + H2O')
    expect(read.reactants[0]).toMatchObject({ compound: 'calcium-carbonate', note: expect.stringContaining('what else it holds') })
  })

  it('a compound of its own under the same name goes first', () => {
    const own = material({ id: 'own-trihydrate', name: 'sodium acetate trihydrate', formula: 'C2H9NaO5', smiles: 'CC(=O)[O-].[Na+].O.O.O' })
    const more = new NameIndex(new Map([...library.materials, [own.id, own]]), ambiguousNames, toolkit)
    const read = readEquation('acetic acid + NaOH + 2 H2O -> sodium acetate trihydrate', more, toolkit)
    expect(read.problems).toEqual([])
    expect(read.products[0]!.compound).toBe('own-trihydrate')
  })
})

describe('polymers, arrows, strengths and numbers of other kinds', () => {
  it.each(['n styrene -> polystyrene', 'n styrene -> (C8H8)n', 'styrene -> [C8H8]n', 'n C8H8 -> (C8H8)n'])('%s', text => {
    expect(ids(text)).toEqual([[[1, 'styrene']], [[1, 'polystyrene']]])
    expect(balanceOf(equation(text)).balanced).toBe(true)
  })
  it('says how a polymer is entered that is not held', () => {
    const read = equation('ethylene oxide -> (C2H4O)n')
    expect(read.problems.find(one => one.where.includes('(C2H4O)n'))!.cure).toContain('*CCO*')
    expect(molarMass(read.products[0]!.composition!)).toBeCloseTo(44.053, 3)
    const alone = parseFormula('(C2H4O)n')
    expect(alone.ok ? '' : alone.problems[0]!.cure).toContain('one repeat unit')
  })
  it('n butanol is n-butanol', () => {
    expect(equation('n butanol -> water').reactants[0]).toMatchObject({ compound: '1-butanol', coefficient: 1 })
  })
  it.each(['➜', '➡️', '➝', '⟹', '⇨', '⇋', '⮕'])('%s is an arrow', sign => {
    expect(isEquation(`2 benzaldehyde ${sign} benzoin`)).toBe(true)
    expect(ids(`2 benzaldehyde${sign}benzoin`)).toEqual([[[2, 'benzaldehyde']], [[1, 'benzoin']]])
  })
  it('a strength joined to a name is left to the charge, and that is told', () => {
    const read = equation('2 M-NaOH + 2N-hydrochloric acid -> NaCl + H2O')
    expect(read.problems).toEqual([])
    expect(read.reactants.map(one => [one.coefficient, one.compound])).toEqual([
      [1, 'sodium-hydroxide'],
      [1, 'hydrogen-chloride'],
    ])
    expect(read.reactants[0]!.note).toContain('its strength belongs to its charge')
    expect(equation('2 N,N-dimethylaniline -> benzoin').reactants[0]).toMatchObject({ coefficient: 2, compound: 'n-n-dimethylaniline' })
  })
})

describe('what is wrong with a name is told as it is', () => {
  const told = (name: string) => {
    const problem = equation(`${name} -> benzoin`).problems.find(one => one.where.includes(name))!
    return `${problem.what} ${problem.why} ${problem.cure}`
  }
  it('a CAS number by its check digit, which is exact where it is held', () => {
    // Ethanol is 64-17-5. CAS: "Check Digit Verification of CAS Registry Numbers".
    expect(ids('64-17-5 -> 119-53-9')).toEqual([[[1, 'ethanol']], [[1, 'benzoin']]])
    expect(told('64-17-6')).toContain('"64-17-6" is no CAS number: with these digits before it the last one would be 5.')
    expect(told('58-08-3')).toContain('is no CAS number')
    // Right digits of what no bench holds: radon.
    expect(told('10043-92-2')).toContain('No material of the library has the CAS number 10043-92-2.')
  })
  it('a number joined to a name', () => {
    expect(told('2benzaldehyde')).toContain('write "2 benzaldehyde"')
    expect(told('2benzaldehyde')).not.toContain('another compound')
  })
  it('groups stand elsewhere only where nothing else differs', () => {
    expect(told('nylon 6')).toContain('"nylon 66", which the library holds, is another compound.')
    expect(told('nylon 6')).not.toContain('elsewhere')
    expect(told('1,3-diphenylpropan-3-one')).toContain('its groups stand elsewhere')
  })
})
