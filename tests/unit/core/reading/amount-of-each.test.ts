import { describe, expect, it } from 'vitest'
import { amountOfEach, eachOf } from '../../../../core/reading/amount-of-each.ts'
import { prepared } from '../../../support/reader.ts'

describe('one amount for several materials', () => {
  it.each([
    ['5 g each of benzil and urea', ['5 g benzil', '5 g urea']],
    ['2 g of each of benzil and urea', ['2 g benzil', '2 g urea']],
    ['ethanol and water, 10 mL each', ['10 mL ethanol', '10 mL water']],
    ['benzil, urea, and 1,2-dichloroethane (0.5 mol each)', ['0.5 mol benzil', '0.5 mol urea', '0.5 mol 1,2-dichloroethane']],
    ['add 2,5 g each of benzil and urea', ['add 2,5 g benzil', 'add 2,5 g urea']],
    ['water and ethanol (3 x 10 mL each)', ['3 x 10 mL water', '3 x 10 mL ethanol']],
    ['water and brine, 2 × 10 mL each', ['2 × 10 mL water', '2 × 10 mL brine']],
    ['wash with water and brine (10 mL each)', ['wash with 10 mL water', 'wash with 10 mL brine']],
    ['Wash with water, then brine (10 mL each)', ['Wash with 10 mL water', 'Wash with 10 mL brine']],
    ['equal volumes of water and ethanol (10 mL each)', ['10 mL water', '10 mL ethanol']],
    ['2 drops each of piperidine and water', ['2 drops piperidine', '2 drops water']],
    ['5 cm3 each of water and acetone', ['5 cm3 water', '5 cm3 acetone']],
    ['wash with water, 10 mL each time', null],
    ['5 g of benzil and urea', null],
    ['3 portions of 5 g each', null],
  ])('%s', (line, lines) => {
    expect(eachOf(line)).toEqual(lines)
  })
  // What goes in, reckoned by hand: 3 x 10 mL is 30 mL; a drop is 0.05 mL, common practice.
  it.each([
    ['water and ethanol (3 x 10 mL each)', 30, null],
    ['wash with water and brine (10 mL each)', 10, ['wash', 'wash']],
    ['equal volumes of water and acetone (10 mL each)', 10, null],
    ['2 drops each of piperidine and water', 0.1, null],
    ['5 cm3 each of water and acetone', 5, null],
  ] as const)('the lines to write are read when they are written: %s', (line, amount, roles) => {
    const read = prepared('benzoin -> benzil', ...eachOf(line)!)
    expect(read.unread).toEqual([])
    expect(read.transformation.charge!.map(one => [one.amount, one.unit])).toEqual([
      [amount, 'mL'],
      [amount, 'mL'],
    ])
    if (roles?.[0] === 'wash') expect(read.transformation.charge!.map(one => one.role)).toEqual(roles)
  })
  it('is asked about with the lines to write, and charges nothing by itself', () => {
    const read = prepared('benzoin -> benzil', '5 g each of benzoin and acetone')
    expect(read.problems.filter(one => one.code === 'amount-of-each').map(one => one.cure)).toEqual([
      'Write a line each: 5 g benzoin; 5 g acetone.',
    ])
    expect(read.lines.map(one => one.material)).toEqual([null])
    expect(amountOfEach(`5 g each of ${'a and '.repeat(100_000)}b`, [])).toBeNull()
  })
})
