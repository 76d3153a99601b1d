import { describe, expect, it } from 'vitest'
import { prepared } from '../../../support/reader.ts'

// 4 R2CO + NaBH4 + 4 H2O -> 4 R2CHOH + NaB(OH)4 is common practice; that it balances is arithmetic, which the reader proves on reading it anew.

describe('a reduction whose equation lacks hydrogen', () => {
  it.each([
    ['O=C(c1ccccc1)c1ccccc1>[BH4-].[Na+].CO>OC(c1ccccc1)c1ccccc1', []],
    ['benzaldehyde -> benzyl alcohol', ['10.6 g benzaldehyde', 'sodium borohydride 2 g']],
    ['benzaldehyde + sodium borohydride -> benzyl alcohol', ['10.6 g benzaldehyde']],
  ])('is written with the borohydride that is there: %s', (equation, lines) => {
    const read = prepared(equation, ...lines)
    const [first] = read.proposals
    expect(first!.equation).toMatch(/^4 .* \+ sodium borohydride \+ 4 water -> 4 .* \+ sodium tetrahydroxyborate$/)
    for (const { equation: whole, text } of read.proposals) expect(`${whole} ${text}`).not.toMatch(/\bH2\b/)
    const again = prepared(first!.equation, ...lines)
    expect(again.balanced).toBe(true)
    expect(again.reactants.map(one => one.compound)).toContain('sodium-borohydride')
    expect(again.products.map(one => one.compound)).toContain('sodium-tetrahydroxyborate')
  })
  it('takes hydrogen where nothing else gives it, and other molecules though a hydride is there', () => {
    expect(prepared('benzaldehyde -> benzyl alcohol', '10.6 g benzaldehyde').proposals.map(one => one.text)).toContain(
      'Add 1 H2 (hydrogen) on the left.',
    )
    const ester = prepared('acetic acid + ethanol -> ethyl acetate', '6 g acetic acid {acetic-acid}', 'sodium borohydride 2 g')
    expect(ester.proposals[0]!.text).toBe('Add 1 H2O (water) on the right.')
  })
})
