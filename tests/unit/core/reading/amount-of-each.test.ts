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
    ['wash with water, 10 mL each time', null],
    ['5 g of benzil and urea', null],
    ['3 portions of 5 g each', null],
  ])('%s', (line, lines) => {
    expect(eachOf(line)).toEqual(lines)
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
