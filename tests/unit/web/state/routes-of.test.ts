import { describe, expect, it } from 'vitest'
import type { Route } from '../../../../core/route/route.ts'
import { firstAgreeing, harmonised, keyOfRoute } from '../../../../web/state/routes-of.ts'

/** benzil is made in one of several ways, then something is made of it. */
const by = (oxidation: string, target: string): Route => ({
  start: 'benzoin',
  target,
  steps: [
    { transformation: oxidation, makes: 'benzil' },
    { transformation: `make-${target}`, makes: target },
  ],
})
const ways = (target: string): readonly Route[] => ['nitric-acid', 'copper', 'iron'].map(oxidation => by(oxidation, target))
const candidates = new Map(['lophine', 'quinoxaline'].map(target => [target, ways(target)] as const))

describe('harmonised', () => {
  it('makes a shared compound in one way for all goals', () => {
    const routes = harmonised([by('nitric-acid', 'lophine'), by('nitric-acid', 'quinoxaline')], by('copper', 'lophine'), candidates)
    expect(routes.map(keyOfRoute)).toEqual(['copper make-lophine', 'copper make-quinoxaline'])
  })

  it('leaves a goal alone that shares nothing', () => {
    const alone: Route = { start: 'benzoin', target: 'stilbene', steps: [{ transformation: 'reduce', makes: 'stilbene' }] }
    expect(harmonised([by('nitric-acid', 'lophine'), alone], by('copper', 'lophine'), candidates)[1]).toBe(alone)
  })

  it('leaves a goal as it is where no known route agrees', () => {
    const other = by('nitric-acid', 'dienone')
    expect(harmonised([by('nitric-acid', 'lophine'), other], by('copper', 'lophine'), candidates)[1]).toBe(other)
  })
})

describe('firstAgreeing', () => {
  it('goes the way the other goals go, though another is first by itself', () => {
    expect(keyOfRoute(firstAgreeing(ways('quinoxaline'), [by('iron', 'lophine')])!)).toBe('iron make-quinoxaline')
  })
  it('takes the first for a first goal', () => {
    expect(keyOfRoute(firstAgreeing(ways('quinoxaline'), [])!)).toBe('make-quinoxaline nitric-acid')
  })
  it('has none where there is none', () => {
    expect(firstAgreeing([], [])).toBeNull()
  })
})
