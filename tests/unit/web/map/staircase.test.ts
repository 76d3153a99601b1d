import { describe, expect, it } from 'vitest'
import { reckoned } from '../../../../core/plan/reckoned.ts'
import { openWorkshop } from '../../../../server/library/workshop.ts'
import { textWidth } from '../../../../web/map/scheme/text-width.ts'
import { staircaseOf, staircaseSentence } from '../../../../web/map/staircase.tsx'
import { benzoinGoal, benzoinPlan, rest } from '../../../support/benzoin-plans.ts'

const stairs = [
  { name: 'benzil', p10: 0.85, expected: 0.91, p90: 0.95 },
  { name: 'dihydrazone', p10: 0.72, expected: 0.78, p90: 0.82 },
  { name: 'hexaphenylbenzene', p10: 0.33, expected: 0.36, p90: 0.39 },
]

describe('the staircase', () => {
  it('puts what typical yields leave on the axis of the start', () => {
    const { treads, ticks } = staircaseOf(stairs, 330)
    // Axis 6 to 324 px: 0.91 of 318 px is 289.38.
    expect(ticks).toEqual([6, 85.5, 165, 244.5, 324])
    expect(treads[0]?.x).toBeCloseTo(295.38, 6)
    expect(treads.map(tread => tread.figure)).toEqual(['91', '78', '36'])
  })

  it.each([330, 280, 240])('keeps names and figures apart and inside %i px', width => {
    for (let percent = 1; percent <= 99; percent += 2) {
      const expected = percent / 100
      const { treads } = staircaseOf(
        [{ name: 'tetraphenylthing', p10: expected * 0.8, expected, p90: Math.min(1, expected * 1.15) }],
        width,
      )
      const tread = treads[0]!
      const name = [tread.nameX, tread.nameX + textWidth(tread.name, 13.33)] as const
      const figure = [tread.figureX, tread.figureX + textWidth(tread.figure, 13.33, 680)] as const
      expect(Math.min(name[1], figure[1]) - Math.max(name[0], figure[0]), `${percent} %`).toBeLessThan(0)
      for (const [from, to] of [name, figure]) {
        expect(from, `${percent} %`).toBeGreaterThanOrEqual(0)
        expect(to, `${percent} %`).toBeLessThanOrEqual(width + 0.5)
        const [a, b] = tread.spread
        expect(Math.min(to, b) - Math.max(from, a), `${percent} % against the spread`).toBeLessThan(0)
      }
    }
  })

  it('draws what lies beyond the axis at its end and never outside', () => {
    const { treads } = staircaseOf([{ name: 'wet', p10: -0.1, expected: 1.03, p90: 1.2 }], 330)
    expect(treads[0]?.x).toBe(324)
    expect(treads[0]?.spread).toEqual([6, 324])
    expect(treads[0]?.figure).toBe('103')
  })

  it('is told in words', () => {
    expect(staircaseSentence(stairs.slice(0, 1))).toBe('What survives of the start, at typical yields (P10 to P90): benzil 91 % (85 to 95)')
  })
})

it('each tread is the one before times the yield of its step, as the scheme has it', async () => {
  const { library } = await openWorkshop([])
  const own = ['benzil-iron-chloride', 'lophine']
  const result = reckoned(library, benzoinPlan([benzoinGoal(library, 'lophine', rest, own)])).goals[0]!
  const { treads } = staircaseOf(
    result.stairs.map(stair => ({ ...stair, name: stair.compound })),
    330,
  )
  const [first, second] = own.map(id => library.transformations.get(id)!.yieldPercent.typical / 100)
  const left = [first!, first! * second!].map(fraction => String(Math.round(fraction * 100)))
  expect(treads.map(tread => tread.figure)).toEqual(left)
})
