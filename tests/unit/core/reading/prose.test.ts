import { describe, expect, it } from 'vitest'
import { spelledOut, withoutProse } from '../../../../core/reading/prose.ts'
import { solventsInRatio } from '../../../../core/reading/solvent-ratio.ts'
import { prepared } from '../../../support/reader.ts'

const read = (...lines: readonly string[]) => prepared('vanillin + acetic anhydride -> vanillin acetate + acetic acid', ...lines)
const charged = (line: string) => read(line).lines.map(one => [one.text, one.material])

describe('prose', () => {
  it('parts what is added from what it is added to', () => {
    const { lines, unread } = read(
      'To a stirred solution of benzil (5 g) in ethanol (50 mL) was added sodium borohydride (2 g) in portions',
    )
    expect(unread).toEqual([])
    expect(lines.map(line => line.material)).toEqual(['benzil', 'ethanol-95', 'sodium-borohydride'])
    // 2 g of 37.83 g/mol (CIAAW 2021).
    expect(lines[2]!.amountMol).toBeCloseTo(0.05287, 5)
    // What is not surely a name stays marked.
    expect(read('To a suspension of benzil (5 g) in ethanol (50 mL) at 0 °C was added NaBH4 (2 g)').unread).toEqual([
      'ethanol (50 mL) at 0 °C',
    ])
  })

  it('charges what a mixture is of, and tells what is done with it', () => {
    const line = 'A mixture of vanillin (15.2 g, 0.100 mol) and acetic anhydride (10 mL) in pyridine (20 mL) is stirred at 25 °C for 1 h'
    const { lines, problems, unread, transformation } = read(line)
    expect(problems).toEqual([])
    expect(unread).toEqual([])
    expect(lines.map(one => one.material)).toEqual(['vanillin', 'acetic-anhydride', 'pyridine'])
    // 15.2 g / 152.15 g/mol.
    expect(lines[0]!.amountMol).toBeCloseTo(0.0999, 4)
    expect(transformation).toMatchObject({ operations: [line], elapsedHours: 1, temperatureC: [25, 25] })
    for (const one of lines) expect(line).toContain(one.text)
  })
  it('asks about the one name that is not known, not about the whole sentence', () => {
    const { lines, problems } = read('A mixture of vanillin (15.2 g) and quibblol (10 mL) in pyridine (20 mL) is stirred')
    expect(lines.map(one => [one.text, one.material])).toEqual([
      ['vanillin (15.2 g)', 'vanillin'],
      ['quibblol (10 mL)', null],
      ['pyridine (20 mL)', 'pyridine'],
    ])
    expect(problems.find(one => one.code === 'name-unknown')!.what).toContain('"quibblol"')
  })
  it('keeps what is poured into another amount as it stands', () => {
    expect(withoutProse('The mixture of A and B is poured into 50 mL water', 'ask')).toBe(
      'The mixture of A and B is poured into 50 mL water',
    )
    expect(withoutProse('A solution of 4 g A in 40 mL B was slowly added', 'ask')).toBe('A solution of 4 g A in 40 mL B')
  })
})

describe('what is done with something in brackets', () => {
  it.each([
    ['dried (Na2SO4)', ['dried over Na2SO4']],
    ['washed (water, brine)', ['washed with water', 'washed with brine']],
    ['extracted (ether, 3 x 20 mL)', ['extracted with ether, 3 x 20 mL']],
    ['washed (water, 20 mL; brine, 20 mL)', ['washed with water, 20 mL', 'washed with brine, 20 mL']],
    ['dried (over Na2SO4) overnight', ['dried (over Na2SO4) overnight']],
  ])('%s', (clause, clauses) => expect(spelledOut(clause)).toEqual(clauses))
  it('is read, with the drying agent as needed', () => {
    const { transformation, unread, problems } = read('15.2 g vanillin', '10 mL acetic anhydride', 'dried (Na2SO4), evaporated')
    expect(unread).toEqual([])
    expect(problems).toEqual([])
    expect(transformation.operations).toEqual(['dried (Na2SO4), evaporated'])
    expect(transformation.charge!.at(-1)).toEqual({ material: 'sodium-sulfate', role: 'drying', amount: null, unit: 'g' })
  })
})

describe('two solvents in a stated proportion', () => {
  it.each<[string, readonly string[] | null]>([
    ['hexane / ethyl acetate 4:1, 100 mL', ['80 mL hexane', '20 mL ethyl acetate']],
    ['100 mL of hexane/ethyl acetate (4:1 v/v)', ['80 mL hexane', '20 mL ethyl acetate']],
    ['ethanol - water 1:2, 30 mL', ['10 mL ethanol', '20 mL water']],
    ['hexane, 100 mL', null],
    ['hexane 20 mL / ethyl acetate 5 mL', null],
    ['4:1 hexane', null],
    ['benzil / urea 4:1, 10 g', null],
  ])('%s', (line, lines) => expect(solventsInRatio(line)).toEqual(lines))
  it('are asked to be written a line each, which is read when pasted', () => {
    const { problems } = read('hexane / ethyl acetate 4:1, 100 mL')
    expect(problems.find(one => one.code === 'amount-of-each')!.cure).toBe('Write a line each: 80 mL hexane; 20 mL ethyl acetate.')
    expect(charged('80 mL hexane')).toEqual([['80 mL hexane', 'hexane']])
    expect(charged('20 mL ethyl acetate')).toEqual([['20 mL ethyl acetate', 'ethyl-acetate']])
  })
})
