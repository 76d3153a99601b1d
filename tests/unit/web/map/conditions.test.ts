import { describe, expect, it } from 'vitest'
import { sureWord } from '../../../../web/map/conditions.ts'
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
