import { describe, expect, it } from 'vitest'
import type { RouteChoice } from '../../../../core/plan/route-choice.ts'
import { choiceText } from '../../../../core/report/choice-text.ts'
import { boundText, type ListEnd, listEnd, unbeatenText } from '../../../../core/report/list-end.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

// Molar masses from IUPAC conventional weights: benzoin C14H12O2 212.24, benzil C14H10O2 210.23 g/mol.
const library = smallLibrary(
  [material({ id: 'benzoin', formula: 'C14H12O2' }), material({ id: 'benzil', formula: 'C14H10O2' }), material({ id: 'unknown-one' })],
  [
    transformation({ id: 'hot', name: 'Benzoin to benzil, nitric acid' }),
    transformation({ id: 'mild', name: 'Benzoin to benzil, copper' }),
  ],
)
const between = { library, start: 'benzoin', target: 'benzil', currency: 'EUR' }
const plain = (text: string | null) => text?.replace(/[\u00a0\u202f]/g, ' ')

const whole: ListEnd = { complete: true, proven: true, tiesInOrder: true, best: { proven: true, atMostAbovePercent: 0 } }
const cut: ListEnd = { ...whole, complete: false, bound: 1.2 }
const told = (...asked: Parameters<typeof listEnd>) => plain(listEnd(...asked).join(' '))

describe('what no way can do that is not listed', () => {
  // By hand: 1.2 mol of benzoin a mole of benzil is 1.2 x 212.24 / 210.23 = 1.2115 g a gram; rounded down, since rounded up it would not hold.
  it('is told per gram, rounded down', () => {
    expect(plain(boundText(between, 'start', 1.2))).toBe('need less than 1.21 g of benzoin for each gram of benzil')
    expect(plain(boundText(between, 'mass-intensity', 23.79))).toBe('take in less than 23.7 g for each gram of benzil')
  })
  // 2,500 cents a mole over 210.23 g/mol is 11.89 cents a gram.
  it('is told in money, whole steps and hours', () => {
    expect(plain(boundText(between, 'cost', 2500))).toBe('cost less than € 0.11 for each gram of benzil')
    expect(boundText(between, 'steps', 3.00000000002)).toBe('take fewer than three steps')
    expect(boundText(between, 'steps', 2.2)).toBe('take fewer than three steps')
    expect(plain(boundText(between, 'hands-on', 3.999))).toBe('take less than 3.9 h of hands')
  })
  it('is left out where it cannot be told', () => {
    expect(boundText({ ...between, target: 'unknown-one' }, 'start', 1)).toBeNull()
    expect(boundText({ ...between, currency: null }, 'cost', 1)).toBeNull()
    expect(boundText(between, 'hazard', 1)).toBeNull()
  })
})

describe('the end of a list', () => {
  it('says whether these are all', () => {
    expect(told(between, 'start', whole, 4)).toBe('These are all four ways there are. Their order by start needed is proven.')
    expect(told(between, 'start', whole, 1)).toBe('This is the only way there is.')
    expect(told(between, 'start', { ...whole, apart: 2 }, 3)).toMatch(/^These are all three ways there are, at least two steps apart\./)
  })
  it('says what bound holds, and that it was stopped', () => {
    expect(told(between, 'start', cut, 24)).toBe(
      '24 ways are listed; there are more, and none that is not listed can need less than 1.21 g of benzoin for each gram of benzil. Their order by start needed is proven.',
    )
    expect(told(between, 'start', cut, 7, true)).toMatch(/the search was stopped, and there may be others, and none/)
  })
  it('never calls proven what is not', () => {
    const open = { ...cut, proven: false, best: { proven: false, atMostAbovePercent: 3.14 } }
    expect(told(between, 'hands-on', open, 10)).toMatch(/not proven the best by hands-on time; it is at most 3.1 % above the proven bound/)
    expect(told(between, 'hands-on', { ...open, best: { proven: false, atMostAbovePercent: null } }, 10)).toMatch(/is not proven\./)
    expect(told(between, 'hazard', { ...open, best: { proven: false, atMostAbovePercent: null } }, 10)).toMatch(
      /among those that were looked at/,
    )
    expect(told(between, 'steps', { ...cut, proven: false }, 10)).toMatch(/The first is proven the best by steps; later ones/)
    expect(unbeatenText(['start', 'hazard'], false, 2)).toMatch(/among those that were looked at/)
  })
})

describe('the choice of a way, as it is printed', () => {
  const choice: RouteChoice = {
    target: 'benzil',
    by: 'start',
    place: 2,
    listed: 4,
    complete: true,
    bestProven: true,
    atMostAbovePercent: 0,
    axes: ['start', 'hazard'],
    exact: true,
    unbeaten: true,
    others: [{ steps: ['hot'], overallYieldOnStart: 0.959, hazard: { gravest: 1, unknown: 0, danger: 2, warning: 0 } }],
  }
  it('names its place, whether that is proven, and what else nothing beats', () => {
    expect(plain(choiceText(library, choice, ['mild']))).toBe(
      'Benzil: by start needed the way taken is number 2 of all four ways; the first is proven the best. On start needed and hazard together nothing beats it, nor the way by benzoin to benzil, nitric acid (95.9 % on start; hazard 1 gravest, 2 danger).',
    )
  })
  it('says what is not proven, not exact, beaten or not among those found', () => {
    const loose = { ...choice, place: 1, complete: false, bestProven: false, atMostAbovePercent: null, exact: false, unbeaten: false }
    const text = choiceText(library, loose, ['mild'])
    expect(text).toMatch(/the first of the four ways listed of more; that it is the best is not proven/)
    expect(text).toMatch(/among the ways that were looked at it is beaten; not so the way by/)
    expect(choiceText(library, { ...choice, place: null }, ['mild'])).toBe(
      'Benzil: the way taken is none of the four ways found under what is asked for.',
    )
  })
})
