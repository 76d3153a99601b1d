import { describe, expect, it } from 'vitest'
import { prepared } from '../../../support/reader.ts'

const read = (line: string) => prepared('benzoin -> benzil', line)
const asked = (line: string) => read(line).problems.filter(one => one.where.includes(line))

describe('a line of which nothing is made', () => {
  // A pound is 453.59237 g (agreement of 1959), a decilitre 100 mL (SI); 10 drops are 0.5 mL by 0.05 mL a drop (common practice).
  it.each([
    ['5 G urea', '5 g urea', ['urea 5 g']],
    ['5 lb urea', '2267.96 g urea', ['urea 2267.96 g']],
    ['5 dL water', '500 mL water', ['water 500 mL']],
    ['5 grms urea', '5 g urea', ['urea 5 g']],
    ['ten drops piperidine', '10 drops piperidine', ['piperidine 0.5 mL']],
    ['5 benzoin', '5 g benzoin', ['benzoin 5 g']],
  ])('is told with a line that is read: %s', (line, offered, expected) => {
    expect(read(line).unread).toEqual([line])
    expect(asked(line).map(one => one.code)).toEqual(['line-unread'])
    expect(asked(line)[0]!.cure).toContain(`"${offered}"`)
    expect(read(offered).transformation.charge!.map(one => `${one.material} ${one.amount} ${one.unit}`)).toEqual(expected)
  })
  it.each(['1 cup water', '10 vol ethanol', 'half the acetone', 'hello world', `${'very long prose '.repeat(30)}`.trim()])(
    'is told where nothing can be offered: %s',
    line => {
      expect(read(line).unread).toEqual([line])
      expect(asked(line).map(one => one.code)).toEqual(['line-unread'])
      expect(asked(line)[0]!.cure).not.toContain('If that is meant')
    },
  )
  it('an amount in words is never left aside', () => {
    expect(read('piperidine, ten drops').transformation.charge).toBeUndefined()
    expect(asked('piperidine, ten drops')).toHaveLength(1)
  })
})
