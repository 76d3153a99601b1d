import { describe, expect, it } from 'vitest'
import type { Route } from '../../../../core/route/route.ts'
import { comesFromStart, firstAgreeing, harmonised, keyOfRoute } from '../../../../web/state/routes-of.ts'
import { smallLibrary, transformation } from '../../../support/small-library.ts'

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

describe('comesFromStart', () => {
  // benzoin > benzil > dihydrazone > acetylene, and another acetylene from a dibromide that is bought.
  const step = (id: string, from: string, to: string) =>
    transformation({ id, reactants: [{ compound: from, coefficient: 1 }], products: [{ compound: to, coefficient: 1 }], mainProduct: to })
  const library = smallLibrary(
    [],
    [
      step('oxidise', 'benzoin', 'benzil'),
      step('condense', 'benzil', 'dihydrazone'),
      step('split', 'dihydrazone', 'acetylene'),
      step('eliminate', 'dibromide', 'acetylene'),
    ],
  )
  const route = (...ids: string[]): Route => ({
    start: 'benzoin',
    target: 'acetylene',
    steps: ids.map(id => ({ transformation: id, makes: library.transformations.get(id)!.mainProduct })),
  })
  it('follows a made compound back to what is in hand', () => {
    expect(comesFromStart(library, route('oxidise', 'condense', 'split'), 'acetylene')).toBe(true)
    expect(comesFromStart(library, route('oxidise', 'eliminate'), 'acetylene')).toBe(false)
    expect(comesFromStart(library, route('oxidise'), 'acetylene')).toBe(false)
  })
})
