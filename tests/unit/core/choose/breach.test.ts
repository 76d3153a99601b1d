import { describe, expect, it } from 'vitest'
import { breachOf } from '../../../../core/choose/breach.ts'
import { settingsSchema } from '../../../../core/plan/settings.ts'
import { breachSentence, usedText } from '../../../../core/report/breach-text.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { bundledTraits } from '../../../support/bundled-traits.ts'

const { library } = bundled()
const { traits } = bundledTraits()
const settings = settingsSchema.parse({ hood: false })
const by = (options: Parameters<typeof breachOf>[0]['options'], steps = ['benzil-copper-ammonium-nitrate']) =>
  breachOf({ library, traits, settings, options, steps })

describe('what a plan uses against what was asked', () => {
  // Regulation (EC) 1272/2008, Annex VI: acetic acid, index 607-002-00-6, Skin Corr. 1A, H314; ammonium nitrate bears no H314.
  it('names the statement and what bears it', () => {
    const breach = by({ avoidCode: ['H314'] })
    expect(breach?.asked).toEqual(['H314'])
    expect(breach?.used.some(name => name.startsWith('acetic acid'))).toBe(true)
    expect(breach?.used).not.toContain('ammonium nitrate')
  })
  it('names materials, also inside a mixture, steps and equipment', () => {
    expect(by({ avoid: ['ammonium-nitrate'] })).toEqual({ asked: ['ammonium nitrate'], used: ['ammonium nitrate'] })
    expect(by({ avoid: ['nitric-acid'] }, ['benzil-nitric-acid'])?.used[0]).toMatch(/^nitric acid, \d/)
    expect(by({ avoidStep: ['benzil-nitric-acid'] }, ['benzil-nitric-acid'])?.asked).toEqual(['a step that is avoided'])
    expect(by({ ownedOnly: true }, ['benzil-nitric-acid'])?.asked).toEqual(['equipment that the bench does not own'])
  })
  it('is silent where the plan keeps to everything', () => {
    expect(by({ avoid: ['mercury-ii-oxide'], avoidCode: ['H201'] })).toBeNull()
    expect(breachSentence(null)).toBeNull()
  })
  it('is told in one sentence, the rest counted in a heading', () => {
    expect(breachSentence({ asked: ['H314'], used: ['a', 'b'] })).toBe('Without H314 was asked; this plan still uses a and b.')
    expect(usedText(['a', 'b', 'c', 'd'])).toBe('a, b and two others')
    expect(usedText(['ammonia, 25 % in water', 'b'])).toBe('ammonia, 25 % in water; and b')
  })
})
