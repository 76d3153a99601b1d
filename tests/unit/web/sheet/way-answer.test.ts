import { describe, expect, it } from 'vitest'
import type { HazardCounts } from '../../../../core/hazards/hazard-list.ts'
import type { RouteRow } from '../../../../web/api/replies.ts'
import { differing, gentler, hazardText, madeOtherwise, wayAnswer } from '../../../../web/sheet/way-answer.ts'
import { barredWay } from '../../../../web/sheet/way-barred.ts'

const counts = (gravest: number, unknown: number, danger = 0, warning = 0): HazardCounts => ({ gravest, unknown, danger, warning })
const row = (steps: readonly string[], overallYieldOnStart: number, hazard: HazardCounts): RouteRow => ({
  steps,
  overallYieldOnStart,
  longestLinearYield: overallYieldOnStart,
  yieldTrust: [],
  made: [],
  bought: [],
  value: null,
  hazard,
  flags: [],
})
const rows = [
  row(['nitric-acid', 'lophine'], 0.863, counts(1, 1, 4)),
  row(['copper', 'lophine'], 0.819, counts(0, 1, 3)),
  row(['iron', 'lophine'], 0.603, counts(0, 1, 7)),
]

describe('gentler', () => {
  it('compares class by class, worst first: many of a lesser class never outweigh one of a worse', () => {
    expect(gentler(counts(0, 0, 90), counts(1, 0, 0))).toBeLessThan(0)
    expect(gentler(counts(0, 2), counts(0, 1, 50, 50))).toBeGreaterThan(0)
    expect(gentler(counts(0, 1, 3), counts(0, 1, 3))).toBe(0)
  })
})

describe('hazardText', () => {
  it('names the classes, worst first, and never calls nothing safe', () => {
    expect(hazardText(counts(1, 2, 0, 3))).toBe('1 gravest, 2 unknown, 3 warning')
    expect(hazardText(counts(0, 0))).toBe('none assigned')
  })
})

describe('differing', () => {
  it('names a way by the steps the others do not share', () => {
    expect(
      differing(
        ['copper', 'lophine'],
        rows.map(one => one.steps),
      ),
    ).toEqual(['copper'])
  })
  it('falls back on its last step where nothing differs', () => {
    expect(differing(['copper', 'lophine'], [['copper', 'lophine']])).toEqual(['lophine'])
  })
})

describe('wayAnswer', () => {
  it('says what the gentlest way costs in yield', () => {
    const answer = wayAnswer(['copper', 'lophine'], rows)
    expect(answer).toMatchObject({ chosen: ['copper'], gentlest: true, ways: 3 })
    expect(answer.better?.steps).toEqual(['nitric-acid'])
    expect(answer.better?.points).toBeCloseTo(4.4, 9)
  })
  it('does not call the first way gentlest', () => {
    expect(wayAnswer(['nitric-acid', 'lophine'], rows)).toMatchObject({ gentlest: false, better: null })
  })
})

describe('madeOtherwise', () => {
  it('tells what is made or bought otherwise, and nothing of what only one of them needs', () => {
    const of = (made: string[], bought: string[]) => ({ ...row([], 0.5, counts(0, 0)), made, bought })
    const chosen = of(['benzil', 'dienone'], ['acetylene', 'nitric-acid'])
    expect(madeOtherwise(of(['benzil', 'dihydrazone', 'acetylene'], ['dienone']), chosen)).toEqual({
      makes: ['dihydrazone', 'acetylene'],
      buys: ['dienone'],
    })
    expect(madeOtherwise(of(['benzil'], []), chosen)).toEqual({ makes: [], buys: [] })
  })
})

it('the heading compares a way with those that make the same: another that buys a co-reactant keeps more of the start by that alone', () => {
  const of = (steps: string[], onStart: number, made: string[]) => ({ ...row(steps, onStart, counts(0, 0)), made })
  const answer = wayAnswer(
    ['copper', 'acetylene'],
    [
      of(['nitric-acid'], 0.75, ['benzil']),
      of(['copper', 'acetylene'], 0.37, ['benzil', 'acetylene']),
      of(['nitric-acid', 'acetylene'], 0.39, ['acetylene', 'benzil']),
    ],
  )
  expect(answer.better?.points).toBeCloseTo(2, 9)
  expect(answer.better?.steps).toEqual(['nitric-acid'])
})

describe('barredWay', () => {
  const flag = { kind: 'barred' as const, material: 'ammonium-nitrate', text: 'The public cannot have ammonium nitrate.' }
  const copper = { ...rows[1]!, flags: [flag] }
  const told = (chosen: readonly string[], all: readonly RouteRow[]) =>
    barredWay(
      chosen,
      all,
      id => id,
      steps => steps.join(' '),
    )
  it('says first what the public cannot have, then the first way that they can', () => {
    const acid = { ...rows[0]!, flags: [flag] }
    expect(told(copper.steps, [acid, copper, rows[2]!])).toEqual(['The public cannot have ammonium-nitrate;', 'they can go by iron'])
    expect(told(copper.steps, [copper])).toEqual(['The public cannot have ammonium-nitrate;', 'no way that was found is free of it'])
  })
  it('says nothing of a way that they can have', () => {
    expect(told(rows[2]!.steps, [copper, rows[2]!])).toBeNull()
  })
})
