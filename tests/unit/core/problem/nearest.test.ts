import { describe, expect, it } from 'vitest'
import { didYouMean, nearest } from '../../../../core/problem/nearest.ts'

describe('nearest', () => {
  it.each([
    ['benzion', 'benzoin'], // two neighbours swapped
    ['benzil-dioxme', 'benzil-dioxime'], // one left out
    ['Lophine', 'lophine'], // case does not count
    ['benzol', 'benzil'], // one changed; benzoin would take one slip too, but comes later
    ['xylophone', null],
    ['ab', null], // too short to guess from
    ['', null],
  ])('%s: %s', (typed, meant) => expect(nearest(typed, ['lophine', 'benzoin', 'benzil-dioxime', 'benzil'])).toBe(meant))
  it('does not depend on the order of the candidates', () => {
    expect(nearest('cat1', ['cat2', 'cat3'])).toBe(nearest('cat1', ['cat3', 'cat2']))
  })
  it('asks, or says nothing', () => {
    expect(didYouMean('watter', ['water'])).toBe('Did you mean "water"? ')
    expect(didYouMean('granite', ['water'])).toBe('')
  })
})
