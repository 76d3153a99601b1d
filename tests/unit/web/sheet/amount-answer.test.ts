import { describe, expect, it } from 'vitest'
import { chanceText } from '../../../../web/sheet/amount-answer.ts'

describe('chanceText', () => {
  it('never rounds up to certainty nor down to never', () => {
    expect(chanceText(0.9)).toBe('90\u00a0%')
    expect(chanceText(0.9999)).toBe('over 99\u00a0%')
    expect(chanceText(0.0001)).toBe('under 1\u00a0%')
    expect(chanceText(1)).toBe('100\u00a0%')
    expect(chanceText(0)).toBe('0\u00a0%')
  })
})
