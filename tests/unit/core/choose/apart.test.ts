import { describe, expect, it } from 'vitest'
import { atLeastApart, stepsApart } from '../../../../core/choose/apart.ts'

describe('routes at least so many steps different', () => {
  it('counts what the two do not share', () => {
    expect(stepsApart(['a', 'b', 'c'], ['a', 'b', 'c'])).toBe(0)
    expect(stepsApart(['a', 'b', 'c'], ['a', 'x', 'c'])).toBe(1)
    expect(stepsApart(['a', 'b'], ['a', 'x', 'y', 'c'])).toBe(3)
  })

  it('keeps the first of each kind, in order', () => {
    const routes = [
      ['a', 'b', 'c'],
      ['a', 'b', 'd'],
      ['a', 'x', 'y'],
      ['a', 'b', 'e'],
    ].map(steps => ({ steps }))
    expect(atLeastApart(routes, 1, route => route.steps)).toEqual(routes)
    expect(atLeastApart(routes, 2, route => route.steps)).toEqual([routes[0], routes[2]])
  })
})
