import { describe, expect, it } from 'vitest'
import { prepared } from '../../../support/reader.ts'

// 10 g benzaldehyde (106.124 g/mol) makes 10.00 g benzoin (212.248 g/mol), two of one: a gram is ten percent. Atomic weights: CIAAW.
const read = (...lines: readonly string[]) => prepared('2 benzaldehyde -> benzoin', 'benzaldehyde 10 g', 'acetone 5 g', ...lines)
const told = (line: string) => {
  const { percentYield, transformation, unread, problems } = read(line)
  return {
    percent: percentYield,
    range: transformation.yieldPercent,
    isUnread: unread.includes(line),
    codes: problems.map(one => one.code),
  }
}

describe('an outcome that is read', () => {
  it.each([
    ['yield 75±5 %', { low: 70, typical: 75, high: 80 }],
    ['yield (75 +/- 5) %', { low: 70, typical: 75, high: 80 }],
    ['yield 75 % ± 5 %', { low: 70, typical: 75, high: 80 }],
    ['isolated 5.2±0.3 g', { low: 49, typical: 52, high: 55 }],
    ['yield 75 % (90 % brsm)', { typical: 75 }],
    ['yield 75 % (lit. 80 %)', { typical: 75 }],
    ['yield 75 % (ee 90 %)', { typical: 75 }],
    ['yield 5.2 g, >99 % ee', { typical: 52 }],
    ['yield 5.2 g (90 % brsm)', { typical: 52 }],
    ['yield 5.2 g (60 % over two steps)', { typical: 52 }],
    ['yield 5.2 g at 90 % conversion', { typical: 52 }],
    ['yield 80-85% based on benzaldehyde', { low: 80, typical: 82.5, high: 85 }],
    ['yield 75 % (based on the limiting reagent)', { typical: 75 }],
    ['yield 5.2 g crude, 4.1 g pure', { typical: 41 }],
    ['isolated: 5.2 g wet, dried 4.1 g', { typical: 41 }],
    ['obtained 4.1 g of (±)-benzoin', { typical: 41 }],
    ['isolated 5.2 g of benzoin, mp 134-136', { typical: 52 }],
    ['isolated 5.2 g after recrystallisation from ethanol', { typical: 52 }],
    ['isolated benzoin (5.2 g, 24.5 mmol, 52%)', { typical: 52 }],
    ['rendement de 75 %', { typical: 75 }],
    ['The yield was 5.2 g', { typical: 52 }],
    ['Typical yield 70-80 %', { low: 70, typical: 75, high: 80 }],
    ['75 % yield', { typical: 75 }],
  ])('%s', (line, range) => {
    expect(told(line)).toMatchObject({ isUnread: false, codes: [] })
    expect(told(line).range).toEqual(range)
  })
  it('counts moles by the molar mass of the product', () => {
    // 35 mmol x 212.248 g/mol.
    const { transformation, notes } = read('yield 35 mmol')
    expect(transformation.isolated!.amount).toBeCloseTo(7.4287, 3)
    expect(notes.join()).toContain('g/mol')
    // 20 mmol is 4.245 g of 10.00 g: not the 75 % that stands beside it.
    expect(told('yield: 20 mmol (75 %)').percent).toBeCloseTo(42.4, 1)
    expect(read('yield: 20 mmol (75 %)').notes.join()).toContain('the text states 75 %')
  })
  it('counts a volume by the density of a liquid, and asks for the mass of a solid', () => {
    const alkene = (line: string) => prepared('cyclohexanol -> cyclohexene + H2O', '20 g cyclohexanol', line)
    // 11.0 mL x 0.811 g/mL (cyclohexene at 20 °C, from memory) = 8.92 g; 20 g / 100.161 g/mol x 82.146 g/mol = 16.40 g.
    expect(alkene('yield 11.0 mL').percentYield).toBeCloseTo(54.4, 0)
    expect(told('yield 11.0 mL')).toMatchObject({ percent: null, isUnread: true, codes: ['outcome-unclear'] })
  })
  it('says that nothing came out, and plans on no such yield', () => {
    for (const line of ['yield 0 g', 'yield 0 %']) {
      expect(read(line).notes.join(), line).toContain('a run that failed')
      expect(told(line).range, line).toBeUndefined()
    }
  })
  it('keeps what is crude as weighed, and counts no yield from it', () => {
    for (const line of [
      'yield 5.2 g crude',
      'crude yield 5.2 g',
      'isolated 5.2 g (wet)',
      'isolated 5.2 g moist',
      'isolated 5.2 g (crude, 52 %)',
    ]) {
      expect(told(line), line).toMatchObject({ percent: null, isUnread: false, codes: ['outcome-crude'] })
      expect(read(line).transformation.isolated, line).toEqual({ amount: 5.2, unit: 'g' })
    }
    expect(read('yield 5.2 g crude').transformation.isolatedBasis).toBe('crude')
  })
  it('tells what it keeps apart', () => {
    for (const [line, piece] of [
      ['yield 5.2 g, 90 % ee', '90 % ee'],
      ['yield 5.2 g (60 % over two steps)', '60 % over two steps'],
      ['isolated 5.2 g, m.p. 134-136 °C', 'm.p. 134-136 °C'],
      ['gave 5.2 g of zorkone', 'counted as benzoin'],
      ['yield ca. 5 g', 'about'],
    ] as const)
      expect(read(line).notes.join(), line).toContain(piece)
  })
})

const doubtful = [
  'yield 3+1 g',
  'yield 75/80 %',
  'yield 3,0/4,0 g',
  'yields of 70, 75 and 80 %',
  'yield 75 % to 80 %',
  'yield 10^2 %',
  'yield 5 .2 g',
  'yield 2 5 g',
  'yield -5 g',
  'yield 0.8 g/g',
  'yield 75 mol %',
  'yield at 95 % conversion 75 %',
  'yield 90 % based on recovered benzaldehyde',
  'yield 90 % (brsm)',
  'yield 80-85% based on acetone',
  'yield 60 % over two steps',
  'yield 75 % (GC)',
  'yield >95 %',
  'yield < 5 %',
  'yield at least 80 %',
  'isolated 5.2 g (purity 95 %)',
  'isolated 5.2 g, 95 % pure by GC',
  'yield 75 % from 10 g benzaldehyde',
  'yield from 10 g benzaldehyde 75 %',
  'isolated 5.2 g after recrystallisation from 95 % ethanol',
  'isolated 5.2 g (theory 6.9 g)',
  'isolated 5.2 g starting material',
  'yield 75 % (n = 3)',
  'recovered 2 g',
  'yield quantitative',
  'Overall yield 60 %',
  'gave 5.2 g of a 1:1 mixture',
]

describe('an outcome that is asked about', () => {
  it.each(doubtful)('%s', line => {
    expect(told(line)).toMatchObject({ percent: null, range: undefined, isUnread: true })
    const problems = read(line).problems
    expect(problems).toHaveLength(1)
    expect(problems[0]!.what).toContain(line)
    // Each line that the cure writes out is read without a question.
    const lines = [...problems[0]!.cure.matchAll(/"((?:isolated|yield) [^"]+)"/g)].map(match => match[1]!)
    expect(lines.length).toBeGreaterThan(0)
    for (const cured of lines) {
      expect(told(cured), cured).toMatchObject({ isUnread: false, codes: [] })
      expect(told(cured).percent, cured).not.toBeNull()
    }
  })
  it('reckons what is pure of a mass', () => {
    // 5.2 g x 0.95.
    expect(read('isolated 5.2 g (purity 95 %)').problems[0]!.cure).toContain('"isolated 4.94 g"')
  })
  it('on a reactant that does not give out first names both', () => {
    expect(read('yield 75 % based on acetone').problems[0]!.what).toMatch(/acetone.*benzaldehyde/)
  })
  it('tells that a second one is not taken', () => {
    const { problems, unread } = read('isolated 5.2 g', 'isolated 4.8 g')
    expect(unread).toEqual(['isolated 4.8 g'])
    expect(problems[0]!.what).toContain('isolated 5.2 g')
  })
  it('holds the theory open while a line is unread that may be a reactant', () => {
    expect(read('5 fathoms of zorkone').notes.join()).toMatch(/hold only if the unread line is not a reactant.*zorkone/)
    expect(read('yield quantitative').notes.join()).not.toContain('not a reactant')
  })
})
