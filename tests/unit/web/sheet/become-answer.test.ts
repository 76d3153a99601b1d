import { describe, expect, it } from 'vitest'
import type { ReachRow } from '../../../../web/api/replies.ts'
import { becomeAnswer, reachShown } from '../../../../web/sheet/become-answer.ts'

const row = (name: string, steps: number | null, bestYieldOnStart: number | null): ReachRow => ({
  compound: name.toLowerCase().replaceAll(' ', '-'),
  name,
  steps,
  bestYieldOnStart,
  yieldTrust: null,
  route: null,
  routes: 1,
  counted: true,
  proven: steps !== null,
  flags: [],
})
const rows = [row('benzil', 1, 0.96), row('lophine', 2, 0.86), row('benzil dioxime', 2, 0.72), row('somewhere far', null, null)]

describe('becomeAnswer', () => {
  it('counts what is reachable and what is wanted', () => {
    expect(becomeAnswer(rows, ['lophine']).join(' ')).toBe('Three compounds within two steps, one more not proven; one is your goal')
    expect(becomeAnswer(rows, []).join(' ')).toBe('Three compounds within two steps, one more not proven; choose a goal')
    expect(becomeAnswer([], [])).toEqual([])
  })
})

describe('reachShown', () => {
  const names = (shown: readonly ReachRow[]): readonly string[] => shown.map(one => one.name)
  it('filters by every part of a name', () => {
    expect(names(reachShown(rows, 'oxime BENZ', 'steps'))).toEqual(['benzil dioxime'])
  })
  it('puts what is not proven last, never first', () => {
    expect(names(reachShown(rows, '', 'steps'))).toEqual(['benzil', 'lophine', 'benzil dioxime', 'somewhere far'])
    expect(names(reachShown(rows, '', 'yield')).at(-1)).toBe('somewhere far')
    expect(names(reachShown(rows, '', 'name'))[0]).toBe('benzil')
  })
})
