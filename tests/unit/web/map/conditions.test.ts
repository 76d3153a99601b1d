import { describe, expect, it } from 'vitest'
import type { Transformation } from '../../../../core/library/transformation.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { arrowMarks, conditionsOf, sureWord } from '../../../../web/map/conditions.ts'
import { spoken } from '../../../../web/map/scheme/runs.ts'
import { transformation } from '../../../support/small-library.ts'

const source = (citation: string) => ({ citation, checked: true })

describe('the word under an arrow', () => {
  it('tells a yield of the own bench, and what it stands in place of', () => {
    const step = { id: 't', confidence: 'checked', sources: [source('own bench, 2026-11-20'), source('a book')] } as const
    expect(sureWord(transformation({ ...step, sources: [...step.sources] }))).toBe('own bench')
    expect(sureWord(transformation({ ...step, sources: [...step.sources] }), 90)).toBe('own bench, in place of 90\u00a0%')
    const isolation = transformation({ ...step, sources: [...step.sources], kind: 'isolation' })
    expect(sureWord(isolation, 2.5)).toBe('own bench, in place of 2.5\u00a0g per 100\u00a0g')
  })

  it('is none where the yield was seen in a source', () => {
    expect(sureWord(transformation({ id: 't', confidence: 'checked', sources: [source('a book')] }))).toBeNull()
  })
})

it('marks the equivalents of an amount that is only remembered, where the line of the arrow is solid', () => {
  const { library } = bundled()
  // As the record says of itself: 8 mol of the acetate per mol of benzil, from memory; the yield was read.
  const lophine = library.transformations.get('lophine')!
  const texts = (step: Transformation) => conditionsOf(library, step, new Set(['benzil'])).over.map(spoken)
  expect(texts(lophine)).toContain('NH4OAc 8.00 eq, remembered')
  expect(texts(lophine).filter(text => text.includes('remembered'))).toHaveLength(1)
  expect(arrowMarks(library, lophine)).toEqual(['remembered', 'estimated'])
  // A dashed line says it of everything that stands at it.
  const dashed: Transformation = { ...lophine, confidence: 'memory' }
  expect(texts(dashed).join()).not.toContain('remembered')
})
