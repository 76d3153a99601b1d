import { describe, expect, it } from 'vitest'
import { sliceFile } from '../../../../core/plan/slice.ts'
import type { SliceReply } from '../../../../web/api/replies.ts'
import { certain, grown, keeping, noFacts } from '../../../../web/state/facts.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const yieldOf = (typical: number) => ({ low: typical - 5, typical, high: typical + 5 })
const reply = (typical: number, ...more: string[]): SliceReply => ({
  library: sliceFile(
    smallLibrary(
      ['a', 'b', ...more].map(id => material({ id })),
      [transformation({ id: 'a-to-b', yieldPercent: yieldOf(typical) })],
    ),
  ),
  traits: {},
  drawings: {},
  makeable: ['b'],
})
const typicalIn = (facts: typeof noFacts): number | undefined => facts.library.transformations.get('a-to-b')?.yieldPercent.typical

describe('facts of a page', () => {
  it('grow with each slice, the newest word standing', () => {
    const facts = grown(grown(noFacts, reply(80)), reply(85, 'c'))
    expect(typicalIn(facts)).toBe(85)
    expect([...facts.library.materials.keys()]).toEqual(['a', 'b', 'c'])
  })

  it('keep the library of an old plan where that was chosen, whatever the server says later', () => {
    const kept = keeping(grown(noFacts, reply(85)), reply(70).library)
    expect(typicalIn(kept)).toBe(70)
    const later = grown(kept, reply(90, 'c'))
    expect(typicalIn(later)).toBe(70)
    expect(later.library.materials.has('c')).toBe(true)
  })

  it('stand after a change of the library until the new word comes, which then stands alone', () => {
    const before = { ...grown(noFacts, { ...reply(80, 'c'), beneath: { 'a-to-b': 75 } }), stale: true }
    expect(typicalIn(before)).toBe(80)
    expect(typicalIn(certain(before))).toBeUndefined()
    const after = grown(before, reply(85))
    expect(typicalIn(after)).toBe(85)
    expect([...after.library.materials.keys()]).toEqual(['a', 'b'])
    expect([after.stale, after.beneath.yields.size]).toEqual([false, 0])
  })
})
