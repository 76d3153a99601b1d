import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { transformationSchema } from '../../../../core/library/transformation.ts'
import { readPreparation } from '../../../../core/reading/preparation.ts'
import { index, library, prepared, toolkit } from '../../../support/reader.ts'

const codes = (read: { problems: readonly { code: string }[] }): string[] => read.problems.map(one => one.code)

describe('a whole preparation', () => {
  const benzoin = prepared(
    '2 benzaldehyde -> benzoin',
    '# thiamine way, evening class',
    'benzaldehyde 60 mL',
    '9.2 g thiamine hydrochloride',
    '95 % EtOH, 120 mL',
    '3 M NaOH, 20 mL',
    'stir at 60-65 °C for 90 min',
    'leave overnight',
    'filter and wash with 2 x 20 mL ice water',
    'recrystallised from 95 % EtOH (8 mL per gram)',
    'isolated 40.1 g',
    'm.p. 134-136 °C',
  )

  it('becomes a transformation of the library format, but for what a text cannot say', () => {
    // How long a night is, the text does not say: it is asked, and the hours are no longer the source's alone.
    expect(codes(benzoin)).toEqual(['time-not-counted'])
    expect(benzoin.transformation.timesBasis).toBe('estimate')
    expect(benzoin.unread).toEqual([])
    expect(benzoin.balanced).toBe(true)
    expect(benzoin.transformation).toMatchObject({
      id: 'benzoin-from-benzaldehyde',
      kind: 'reaction',
      reactants: [{ compound: 'benzaldehyde', coefficient: 2 }],
      products: [{ compound: 'benzoin', coefficient: 1 }],
      mainProduct: 'benzoin',
      limiting: 'benzaldehyde',
      temperatureC: [60, 65],
      elapsedHours: 1.5,
      isolated: { amount: 40.1, unit: 'g' },
      note: 'm.p. 134-136 °C',
    })
    expect(benzoin.transformation.charge?.map(line => [line.material, line.role])).toEqual([
      ['benzaldehyde', 'substrate'],
      ['thiamine-hydrochloride', 'catalyst'],
      ['ethanol-95', 'solvent'],
      ['sodium-hydroxide-3m', 'catalyst'],
      ['water', 'wash'],
      ['ethanol-95', 'recrystallisation'],
    ])
    expect(benzoin.missing).toEqual([
      'yieldPercent.low',
      'yieldPercent.high',
      'equipment',
      'atmosphere',
      'needsHood',
      'exotherm',
      'gasEvolved',
      'hazardNotes',
      'sources',
      'confidence',
    ])
  })

  it('passes the schema once the missing keys are filled in', () => {
    const filled = {
      ...benzoin.transformation,
      yieldPercent: { low: 50, high: 75, ...benzoin.transformation.yieldPercent },
      equipment: [],
      atmosphere: 'air',
      needsHood: false,
      exotherm: 'none',
      gasEvolved: [],
      hazardNotes: [],
      sources: [],
      confidence: 'common-practice',
    }
    expect(transformationSchema.safeParse(filled).error).toBeUndefined()
  })

  it('gives moles and equivalents of every line', () => {
    // 60 mL of benzaldehyde at the library's density over 106.124 g/mol; 3 mol/L x 20 mL = 0.060 mol.
    const density = library.materials.get('benzaldehyde')!.densityGPerMl!
    const moles = (60 * density) / 106.124
    expect(benzoin.lines[0]!.amountMol).toBeCloseTo(moles, 6)
    expect(benzoin.lines[3]).toMatchObject({ material: 'sodium-hydroxide-3m', amountMol: 0.06 })
    expect(benzoin.lines[3]!.equivalents).toBeCloseTo(0.06 / moles, 6)
    expect(benzoin.theoreticalG).toBeCloseTo((moles / 2) * 212.248, 3)
    expect(benzoin.percentYield).toBeCloseTo((100 * 40.1) / benzoin.theoreticalG!, 9)
  })
})

describe('an equation that does not balance', () => {
  it('names what is off and proposes', () => {
    const read = prepared('benzil + o-phenylenediamine = 2,3-diphenylquinoxaline', '2.1 g benzil', '1.08 g o-phenylenediamine')
    expect(read.balanced).toBe(false)
    expect(read.problems).toHaveLength(1)
    expect(read.problems[0]).toMatchObject({
      code: 'equation-unbalanced',
      what: expect.stringContaining('H: 18 on the left, 14 on the right; O: 2 on the left, 0 on the right'),
      cure: 'Add 2 H2O (water) on the right.',
    })
  })
  it('proposes coefficients', () => {
    expect(prepared('benzaldehyde -> benzoin', '5 g benzaldehyde').problems[0]!.cure).toContain('Write 2 benzaldehyde -> benzoin.')
  })
})

describe('equations as people type them', () => {
  it.each([
    '2 benzaldehyde -> benzoin',
    '2 benzaldehyde --> benzoin',
    '2 benzaldehyde => benzoin',
    '2 benzaldehyde → benzoin',
    '2 benzaldehyde ⟶ benzoin',
    '2 benzaldehyde ➜ benzoin',
    '2 benzaldehyde = benzoin',
    '2 PhCHO -> benzoin',
    '2 O=Cc1ccccc1 -> OC(c1ccccc1)C(=O)c1ccccc1',
    'benzaldehyde + benzaldehyde -> benzoin',
    'Equation: 2 benzaldehyde -> benzoin',
    '2 x benzaldehyde -> benzoin'.replace('x', '×'),
  ])('%s', equation => {
    const read = prepared(equation, '5 g benzaldehyde')
    expect(read.problems).toEqual([])
    expect(read.transformation).toMatchObject({ reactants: [{ compound: 'benzaldehyde', coefficient: 2 }], mainProduct: 'benzoin' })
  })

  it('means the compound, not a bottle of it', () => {
    const read = prepared('NaOH + HCl -> NaCl + H2O', '20 mL 3 M NaOH', '10 mL conc. HCl')
    expect(read.transformation.reactants?.map(one => one.compound)).toEqual(['sodium-hydroxide', 'hydrogen-chloride'])
    expect(read.limiting).toBe('sodium-hydroxide')
  })

  it('asks about a name that means several compounds', () => {
    expect(codes(prepared('carvone -> benzoin'))).toContain('name-ambiguous')
  })

  it.each([
    ['', ['equation-missing']],
    ['benzaldehyde', ['equation-missing']],
    ['-> benzoin', ['equation-unreadable']],
    ['benzaldehyde -> benzoin -> benzil', ['equation-unreadable']],
    [`${'water + '.repeat(5000)}water -> benzoin`, ['equation-unreadable']],
  ])('refuses %j', (text, expected) => {
    expect(codes(prepared(text))).toEqual(expected)
  })
})

describe('nothing is dropped', () => {
  const read = prepared(
    'benzil + o-phenylenediamine -> 2,3-diphenylquinoxaline + 2 H2O',
    '2.1 g benzil',
    '1.08 g o-phenylenediamine',
    '25 mL HCl',
    '5 g quizzaline',
    '35 % NaOH, 12 mL',
    '0 g water',
    'the colour is pretty',
    'isolated a lot',
  )
  it('what cannot be used stays as typed, with a problem or a mark', () => {
    expect([...read.unread].sort()).toEqual(
      ['0 g water', '25 mL HCl', '35 % NaOH, 12 mL', '5 g quizzaline', 'isolated a lot', 'the colour is pretty'].sort(),
    )
    expect(codes(read).sort()).toEqual([
      'line-unread',
      'name-ambiguous',
      'name-unknown',
      'outcome-unclear',
      'quantity-zero',
      'strength-not-held',
    ])
  })
  it('every line of the text is in a charge, an operation, the note, the outcome or unread', () => {
    const text = ['25 mL HCl', '5 g quizzaline', '0 g water', '35 % NaOH, 12 mL']
    for (const line of text) expect(read.lines.find(one => one.text === line)).toMatchObject({ material: null, amountMol: null })
  })
  it('says how to mend each', () => {
    for (const problem of read.problems) expect(problem.cure.length).toBeGreaterThan(10)
  })
  it('a strength that is not held comes with those that are, by name, and with what is typed to mean one', () => {
    const { what, cure } = read.problems.find(one => one.code === 'strength-not-held')!
    for (const [, name, id] of what.matchAll(/(?:only|;) ([^;{]+) \{([a-z0-9-]+)\}/g)) expect(library.materials.get(id!)?.name).toBe(name)
    const [, typed] = /such as (\{[a-z0-9-]+\})/.exec(cure)!
    expect(what).toContain(typed)
    const mended = prepared('benzil + o-phenylenediamine -> 2,3-diphenylquinoxaline + 2 H2O', `12 mL ${typed}`)
    expect(mended.lines[0]?.material).toBe(typed!.slice(1, -1))
    expect(codes(mended)).not.toContain('strength-not-held')
  })
})

describe('outcomes', () => {
  const base = ['salicylic acid + acetic anhydride -> aspirin + acetic acid', '2.0 g salicylic acid', '5 mL acetic anhydride']
  it('takes the main product from the line that names it', () => {
    expect(prepared(...base, 'isolated 0.5 g acetic acid').transformation.mainProduct).toBe('acetic-acid')
    expect(prepared(...base, 'isolated 0.5 g').transformation.mainProduct).toBe('acetylsalicylic-acid')
  })
  it('keeps a stated range as low and high', () => {
    expect(prepared(...base, 'yield 75-85 %').transformation.yieldPercent).toEqual({ low: 75, typical: 80, high: 85 })
  })
  it('says where a stated yield and the isolated mass disagree, and uses the mass', () => {
    const read = prepared(...base, 'yield: 2.1 g (60 %)')
    expect(read.percentYield).toBeCloseTo(80.5, 1)
    expect(read.notes.join()).toContain('60 %')
  })
  it('warns above 100 % and writes no such yield into the draft', () => {
    const read = prepared(...base, 'isolated 3.5 g')
    expect(read.percentYield).toBeGreaterThan(100)
    expect(read.notes.join()).toContain('more than there can be')
    expect(read.transformation.yieldPercent).toBeUndefined()
    expect(read.missing).toContain('yieldPercent')
  })
  it('turns equivalents and drops into amounts, marked as reckoned', () => {
    const read = prepared('2 benzaldehyde -> benzoin', 'PhCHO 5.1 mL (5.3 g, 50 mmol)', 'K2CO3 (2.0 equiv.)', '6 drops piperidine')
    expect(read.lines[1]!.equivalents).toBe(2)
    expect(read.lines[1]!.amountMol).toBeCloseTo(2 * read.lines[0]!.amountMol!, 12)
    expect(read.transformation.charge?.[2]).toMatchObject({ material: 'piperidine', amount: 0.3, unit: 'mL', derived: true })
  })
  it('says where grams and moles on a line disagree a little, and asks where one is a slip', () => {
    // 5.306 g of benzaldehyde (106.12 g/mol, CIAAW) is 50.0 mmol.
    const near = prepared('2 benzaldehyde -> benzoin', 'benzaldehyde 5.306 g (55 mmol)')
    expect([near.notes.join(), codes(near)]).toEqual([expect.stringContaining('the latter is used'), []])
    const far = prepared('2 benzaldehyde -> benzoin', 'benzaldehyde 5.306 g (500 mmol)')
    expect(codes(far)).toEqual(['amounts-contradict'])
  })
  it('keeps the ends of a range of masses as low and high', () => {
    // 2.0 g salicylic acid (138.12 g/mol) makes 2.609 g aspirin (180.16 g/mol): 2.0 to 2.2 g is 76.7 to 84.3 %.
    const { yieldPercent } = prepared(...base, 'isolated 2.0-2.2 g').transformation
    expect([yieldPercent?.low, yieldPercent?.high]).toEqual([76.7, 84.3])
  })
  it.each([
    [
      'a second mass is another product or another run',
      ['isolated 2.1 g', 'isolated 0.5 g acetic acid'],
      'isolated 0.5 g acetic acid',
      80.5,
    ],
    ['two masses in one line', ['isolated: 2.4 g and 2.1 g'], 'isolated: 2.4 g and 2.1 g', null],
    ['a material that the equation does not make', ['isolated 2.1 g chalcone'], 'isolated 2.1 g chalcone', null],
  ])('counts none twice and none for another: %s', (_what, lines, unread, percent) => {
    const read = prepared(...base, ...lines)
    expect(read.unread).toContain(unread)
    if (percent === null) expect(read.percentYield).toBeNull()
    else expect(read.percentYield).toBeCloseTo(percent, 1)
  })
  it('counts of a hydrate that came out the salt in it', () => {
    // 6.005 g acetic acid (60.05 g/mol) makes 8.203 g sodium acetate (82.03 g/mol); 9.5 g of the trihydrate (136.08 g/mol, CIAAW) holds 5.727 g.
    const read = prepared(
      'acetic acid + sodium hydroxide -> sodium acetate {sodium-acetate} + water',
      'acetic acid {acetic-acid} 6.005 g',
      'sodium hydroxide pellets 6 g',
      'isolated 9.5 g sodium acetate trihydrate',
    )
    expect(read.percentYield).toBeCloseTo(69.8, 0)
    expect(read.notes.join()).toContain('g of sodium acetate')
  })
  it('takes what came out for no charge', () => {
    const read = prepared(...base, '2.1 g aspirin')
    expect(codes(read)).toEqual(['product-charged'])
    expect(read.transformation.charge?.map(one => one.material)).toEqual(['salicylic-acid', 'acetic-anhydride'])
    expect(codes(prepared(...base, 'seed with 0.01 g aspirin'))).toEqual([])
  })
})

describe('nothing of a line is dropped', () => {
  it.each([
    ['ethanol 20 mL, water 5 mL', ['ethanol-95', 'water']],
    ['5 g zinc, 0.5 g copper sulfate pentahydrate', ['zinc', 'copper-sulfate-pentahydrate']],
    ['benzaldehyde (5 g, 47 mmol), acetophenone (5.7 g, 47 mmol), NaOH (1 g)', ['benzaldehyde', 'acetophenone', 'sodium-hydroxide']],
    ['wash with sat. NaHCO3 (2 x 20 mL), brine (20 mL)', ['sodium-bicarbonate-saturated', 'brine']],
    ['5 g zinc, 2 g zorkone', ['zinc', null]],
    ['sodium hydroxide, 4 g, 0.1 mol', ['sodium-hydroxide']],
    ['NaOH (40 wt% aq, 10 g)', ['sodium-hydroxide-40pct']],
    ['NaOH (40 w/w %, 10 g)', ['sodium-hydroxide-40pct']],
    ['3 mol dm-3 NaOH, 20 mL', ['sodium-hydroxide-3m']],
    ['KOH (3 M in EtOH, 10 mL)', [null]],
    ['sodium hydroxide, from 28 g sodium and 400 mL absolute ethanol', [null]],
    ['benzaldehyde (98 %), 5 mL', ['benzaldehyde']],
  ])('%s', (line, materials) => {
    const read = prepared('2 benzaldehyde -> benzoin', line)
    expect(read.lines.map(one => one.material)).toEqual(materials)
    for (const [at, material] of materials.entries()) if (material === null) expect(read.unread).toContain(read.lines[at]!.text)
  })
  it('moles stand before equivalents', () => {
    const read = prepared('2 benzaldehyde -> benzoin', 'benzaldehyde (1.0 equiv, 50 mmol)')
    expect(read.lines[0]!.amountMol).toBeCloseTo(0.05, 12)
  })
  it('asks where the bottle chosen is of another strength than the text says', () => {
    const read = prepared('2 benzaldehyde -> benzoin', '20 mL 0.5 M NaOH {sodium-hydroxide-3m}')
    expect(codes(read)).toContain('strength-contradicts-bottle')
    expect(read.lines[0]!.amountMol).toBeNull()
    expect(codes(prepared('2 benzaldehyde -> benzoin', '20 mL 3 M NaOH {sodium-hydroxide-3m}'))).not.toContain(
      'strength-contradicts-bottle',
    )
  })
  it('an amount without a name says so', () => {
    expect(prepared('2 benzaldehyde -> benzoin', '17.5 g').problems.map(one => one.what)).toContain(
      '"17.5 g" gives an amount and names no material.',
    )
  })
  it('keeps what is done, in the order and in the past', () => {
    const lines = [
      'neutralise with 3 M HCl',
      'recrystallise from 95 % ethanol',
      'acidify to litmus',
      'recrystallise',
      'poured into 100 mL ice water',
      'washed with 20 mL water',
      'the mixture was stirred for 1 h',
    ]
    expect(prepared('2 benzaldehyde -> benzoin', ...lines).transformation.operations).toEqual(lines)
  })
  it.each([
    ['stir at 20-25 °C for 1 week', [20, 25], 168],
    ['distil under reduced pressure, b.p. 117-119 °C/12 mm', undefined, undefined],
    ['recrystallise from ethanol, m.p. 55-57 °C', undefined, undefined],
    ['dried at 50 °C', undefined, undefined],
    ['heat to 80 °C for 2 h, then distil at 117 °C', [80, 80], 2],
  ])('the temperature of the step is that of the reaction: %s', (line, temperatureC, elapsedHours) => {
    const { transformation } = prepared('2 benzaldehyde -> benzoin', line)
    expect([transformation.temperatureC, transformation.elapsedHours]).toEqual([temperatureC, elapsedHours])
    expect(transformation.operations).toEqual([line])
  })
})

describe('whatever is typed', () => {
  it('never throws, and holds every line of the text', () => {
    const line = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 80 }),
      fc.constantFrom(
        '2 benzaldehyde -> benzoin',
        '5 g benzil',
        'isolated 1 g',
        'yield 80 %',
        'reflux 2 h',
        '=HYPERLINK("x")',
        'CC(',
        '1e400 g water',
        '\u202e5 g water',
        '-5 g benzil',
        'م 5 g',
      ),
    )
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), lines => {
        const read = readPreparation(lines.join('\n'), library, index, toolkit)
        for (const one of [read.theoreticalG, read.percentYield, ...read.lines.map(each => each.amountMol)])
          if (one !== null) expect(Number.isFinite(one)).toBe(true)
        expect(read.balanced || read.problems.length > 0).toBe(true)
      }),
      { numRuns: 400 },
    )
  })
  it.each(['C1', '(', '1 ', '[', '5 g ', 'and wash ', '1 vol. x + ', 'C('])('reads a hundred lines of %j without a hang', piece => {
    const line = piece.repeat(400 / piece.length)
    const began = process.hrtime.bigint()
    prepared('2 benzaldehyde -> benzoin', ...Array<string>(100).fill(line))
    // A tenth of a second alone on a machine; a runaway expression would take minutes.
    expect(Number(process.hrtime.bigint() - began) / 1e9).toBeLessThan(10)
  })
  it('refuses a book, at once', () => {
    const began = process.hrtime.bigint()
    expect(codes(prepared('benzaldehyde -> benzoin\n'.repeat(500_000)))).toEqual(['text-too-long'])
    expect(Number(process.hrtime.bigint() - began) / 1e9).toBeLessThan(2)
  })
})

describe('a line that tells several things to do', () => {
  // Role and moles by hand: water 50 mL x 0.998 g/mL / 18.015 g/mol = 2.77 mol; benzil 5 g / 210.23 g/mol = 23.8 mmol.
  it.each([
    ['filter, wash with 50 mL water', [['water', 'wash', 2.77]]],
    ['filter off the solid, wash with 50 mL cold water and dry', [['water', 'wash', 2.77]]],
    [
      'washed with 50 mL water, dried over MgSO4',
      [
        ['water', 'wash', 2.77],
        ['magnesium-sulfate', 'drying', null],
      ],
    ],
    [
      'dissolve 5 g benzil in 50 mL water',
      [
        ['benzil', 'other', 0.0238],
        ['water', 'solvent', 2.77],
      ],
    ],
    [
      'add a solution of 2.10 g benzil in 20 mL water',
      [
        ['benzil', 'other', 0.00999],
        ['water', 'solvent', 1.11],
      ],
    ],
    [
      'benzil (2.10 g) and water (20 mL)',
      [
        ['benzil', 'other', 0.00999],
        ['water', 'solvent', 1.11],
      ],
    ],
    ['a mixture of benzil and water, 20 mL', [[null, null, null]]],
    ['filter, cool in ice, wash with 7 M NaOH, 10 mL', [[null, null, null]]],
  ] as const)('%s', (line, expected) => {
    const read = prepared('2 benzaldehyde -> benzoin', 'benzaldehyde 2.12 g', line)
    const charges = read.lines.slice(1)
    const roles = (read.transformation.charge ?? []).slice(1).map(one => one.role)
    expect(
      charges.map((one, at) => [one.material, roles[at] ?? null, one.amountMol === null ? null : Number(one.amountMol.toPrecision(3))]),
    ).toEqual(expected)
    for (const one of charges) expect(line).toContain(one.text)
  })
})

describe('what is not settled is not reckoned with', () => {
  it('names no limiting reactant and no theory while a reactant is unknown', () => {
    const read = prepared('zorkone + NH2OH.HCl -> zork', '5 g zorkone', '3 g hydroxylamine hydrochloride', 'yield 84 %')
    expect([read.limiting, read.theoreticalG, read.lines[1]!.equivalents]).toEqual([null, null, null])
    expect(read.problems.find(one => one.code === 'limiting-unknown')?.what).toContain('"zorkone"')
  })
  it('nor while a charge may be one of the reactants; a wash or a catalyst beside settled reactants changes nothing', () => {
    const asked = ['benzaldehyde 2.12 g', 'acetophenone 1.2 g']
    const line = 'benzaldehyde + acetophenone -> chalcone + water'
    expect(prepared(line, asked[0]!, '1.2 g zorkone').limiting).toBeNull()
    expect(prepared(line, ...asked, 'wash with 5 mL zork', '0.1 g zorkine').limiting).toBe('acetophenone')
  })
  it('says of an isomer that it is another compound, and never proposes it', () => {
    // 1,3-diphenylpropan-1-one is PhCOCH2CH2Ph, 1,3-diphenylpropan-2-one PhCH2COCH2Ph (IUPAC names): isomers.
    const [problem] = prepared('1,3-diphenylpropan-1-one -> benzil', '2 g benzil').problems
    expect(problem!.cure).toContain('is another compound')
    expect(problem!.cure).not.toContain('Did you mean')
    expect(prepared('benzion -> benzil', '2 g benzil').problems[0]!.cure).toContain('Did you mean "benzoin"?')
  })
  it('takes the mass of a product from its structure', () => {
    // Bibenzyl, C14H14: 182.27 g/mol by the CIAAW weights (14 x 12.011 + 14 x 1.008 = 182.266); 2.1023 g benzil (210.23 g/mol) is 0.01 mol.
    const read = prepared('benzil + 4 H2 -> C(Cc1ccccc1)c1ccccc1 + 2 water', '2.1023 g benzil', 'hydrogen 1.15 L')
    const asked = read.problems.find(one => one.code === 'name-unknown')!
    expect(asked.why).toContain('182.27 g/mol')
    expect(read.theoreticalG).toBeCloseTo(1.82266, 4)
  })
  it('tells no theory and no yield on it before the equation balances', () => {
    // Two moles of benzaldehyde (106.12 g/mol, CIAAW) make one of benzoin (212.25 g/mol): 10.61 g makes 10.61 g, and not twice that.
    const [off, mended] = ['benzaldehyde -> benzoin', '2 benzaldehyde -> benzoin'].map(line =>
      prepared(line, 'benzaldehyde 10.612 g', 'isolated 5.3 g'),
    )
    expect([off!.theoreticalG, off!.percentYield, off!.transformation.yieldPercent]).toEqual([null, null, undefined])
    expect(off!.notes.join()).toContain('before the equation balances')
    expect(mended!.theoreticalG).toBeCloseTo(10.612, 2)
    expect(mended!.percentYield).toBeCloseTo(49.9, 1)
  })
  it('reads the volume of a gas at 25 °C and 1 atm, and says so', () => {
    // R of CODATA 2018 x 298.15 K / 101.325 kPa = 24.465 L/mol: 1.15 L is 47.0 mmol.
    const read = prepared('benzil + H2 -> benzoin', '2.1023 g benzil', 'hydrogen 1.15 L')
    expect(read.lines[1]!.amountMol! * 1000).toBeCloseTo((1.15 / ((8.314462618 * 298.15) / 101325)) * 1e-3 * 1000, 1)
    expect(read.notes.join()).toContain('25 °C and 1 atm')
    expect(read.transformation.charge?.[1]).toMatchObject({ material: 'hydrogen', unit: 'mol', derived: true })
  })
  it('tells in the equation which compound a name of several bottles is, and asks for the bottle at the charge', () => {
    const read = prepared('CH3COONa + HCl -> acetic acid + NaCl', '8.2 g sodium acetate')
    expect(read.notes.join()).toContain('"CH3COONa" in the equation is the compound, sodium acetate, anhydrous')
    expect(read.lines[0]!.candidates).toContain('sodium-acetate-trihydrate')
  })
  // The table of ambiguous names asks about each of these words, since the hydrate weighs a fifth to two thirds more.
  it.each([
    ['sodium acetate', 'sodium-acetate-trihydrate'],
    ['sodium dichromate', 'sodium-dichromate-dihydrate'],
    ['Natriumwolframat', 'sodium-tungstate-dihydrate'],
    ['barium hydroxide', 'barium-hydroxide-octahydrate'],
  ])('asks in the equation too whether %s is the salt alone or its hydrate', (name, hydrate) => {
    const read = prepared(`${name} + HCl -> water`)
    expect(read.reactants[0]).toMatchObject({ compound: null, candidates: expect.arrayContaining([hydrate]) })
    const asked = read.problems.find(one => one.code === 'name-ambiguous')
    expect(asked?.where).toContain(name)
    // Named by its id the hydrate stands for the compound in it: water of crystallisation is no reactant.
    const compound = library.materials.get(hydrate)!.contains!.compound
    expect(prepared(`${name} {${hydrate}} + HCl -> water`).reactants[0]).toMatchObject({ compound })
  })
  // mol = grams x share / 106.42 g/mol (Pd, CIAAW): what a catalyst weighs is carbon for nine parts of ten and more.
  it.each([
    ['10% Pd/C 50 mg', 0.005 / 106.42],
    ['5 % Pd/C, 50 mg', 0.0025 / 106.42],
    ['palladium on charcoal (5 %, 0.1 g)', 0.005 / 106.42],
    ['palladium on activated carbon, 10 %, 0.1 g', 0.01 / 106.42],
    ['palladium black 50 mg', 0.05 / 106.42],
  ])('counts the metal in %s', (text, amountMol) => {
    const read = prepared('benzoin -> benzil', '2 g benzoin', text)
    expect(read.lines[1]!.amountMol).toBeCloseTo(amountMol, 9)
  })
  it('asks which catalyst it is where the strength is not told, or is one that is not held', () => {
    const held = ['palladium-on-carbon', 'palladium-on-carbon-5pct']
    expect(prepared('benzoin -> benzil', '2 g benzoin', 'Pd/C 50 mg').lines[1]).toMatchObject({ material: null, candidates: held })
    const read = prepared('benzoin -> benzil', '2 g benzoin', '20 % Pd/C 50 mg')
    expect(read.lines[1]!.material).toBeNull()
    expect(codes(read)).toContain('strength-not-held')
  })
  it('proposes nothing that it would then ask about', () => {
    const proposal = prepared('Na2CO3 + 2 acetic acid -> CO2 + H2O').proposals[0]!
    expect(prepared(proposal.equation)).toMatchObject({ balanced: true })
  })
  it('asks about a dash right before a number, and takes one that stands apart for the mark of a list', () => {
    const asked = prepared('benzoin -> benzil', '-5 mL water', '2 g benzoin')
    expect(asked.lines[0]).toMatchObject({ text: '-5 mL water', material: null, amountMol: null })
    expect(asked.problems.find(one => one.code === 'dash-before-amount')).toMatchObject({ where: ['charges', '-5 mL water'] })
    expect(asked.unread).toContain('-5 mL water')
    for (const mark of ['- ', '– ', '• ', '*'])
      expect(prepared('benzoin -> benzil', `${mark}5 mL water`, '2 g benzoin').transformation.charge?.[0], mark).toMatchObject({
        material: 'water',
        amount: 5,
      })
    const list = prepared('benzoin -> benzil', '-5 mL water', '-2 g benzoin')
    expect(list.transformation.charge?.map(one => one.amount)).toEqual([5, 2])
    expect(list.notes.join()).toMatch(/dash.*marks of a list/)
    // A temperature below zero is one.
    expect(prepared('benzoin -> benzil', '2 g benzoin', '-10 °C for 1 h').transformation.temperatureC).toEqual([-10, -10])
  })
})
