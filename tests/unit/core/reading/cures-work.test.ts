import { describe, expect, it } from 'vitest'
import { index, library, prepared } from '../../../support/reader.ts'

const curesOf = (line: string) =>
  prepared('benzoin -> benzil', line)
    .problems.filter(one => one.where.includes(line))
    .map(one => one.cure)
const charged = (line: string) =>
  (prepared('benzoin -> benzil', line).transformation.charge ?? []).map(({ material, amount, unit }) => `${material} ${amount} ${unit}`)

describe('what a cure says to write is read when it is written', () => {
  // The right amounts by hand: 5 g of 85 % are 4.25 g, 5 g of 90 % 4.5 g.
  it.each([
    ['1,4 dioxane 5 mL', '1,4 dioxane', '1,4-dioxane', ['dioxane 5 mL']],
    ['5 .0 g benzoin', '5 .0 g', '5.0 g', ['benzoin 5 g']],
    ['1. 5 g benzaldehyde', '1. 5 g', '1.5 g', ['benzaldehyde 1.5 g']],
    ['KOH pellets 85 % 5 g', null, '4.25 g potassium hydroxide {potassium-hydroxide}', ['potassium-hydroxide 4.25 g']],
    ['zinc 90 %, 5 g', null, '4.5 g zinc dust {zinc}', ['zinc 4.5 g']],
    ['sodium amalgam 5 g', 'sodium amalgam', 'sodium-amalgam-2p5pct', ['sodium-amalgam-2p5pct 5 g']],
    ['anhydrous copper sulfate 5 g', 'anhydrous copper sulfate', 'copper-sulfate-pentahydrate', ['copper-sulfate-pentahydrate 5 g']],
  ])('%s', (line, was, written, expected) => {
    expect(charged(line)).toEqual([])
    const cures = curesOf(line)
    expect(cures).toHaveLength(1)
    expect(cures[0]).toContain(written)
    expect(charged(was === null ? written : line.replace(was, written))).toEqual(expected)
  })
  it.each(['acetone 2 5 g', '0 benzaldehyde 5 g', '5 benzoin, 3 g'])('never is the very line that is refused: %s', line => {
    const cures = curesOf(line)
    expect(cures.length).toBeGreaterThan(0)
    for (const cure of cures) for (const [, quoted] of cure.matchAll(/"([^"]+)"/g)) expect(line).not.toBe(quoted)
    expect(cures.join()).toContain('take it out')
  })
  it('is open to what the library does not hold', () => {
    for (const line of ['nitric acid (fuming) 5 mL', 'anhydrous copper sulfate 5 g', 'sodium amalgam 5 g'])
      expect(curesOf(line).join()).toContain('to a library of your own')
  })
  it('asks for no solution of what is only sold as a solid', () => {
    expect(curesOf('zinc 90 %, 5 g').join()).not.toContain('solution')
  })
})

describe('a strength beside a bottle', () => {
  it('by which the bottle is called contradicts nothing', () => {
    expect(charged('conc. HCl (5 mL, 12 M, 60 mmol)')).toEqual(['hydrochloric-acid-conc 5 mL'])
    expect(charged('conc. HCl (5 mL, 11 M)')).toEqual([])
  })
  it('is among its names in the library', () => {
    expect(library.materials.get('hydrochloric-acid-conc')!.synonyms).toContain('12 M HCl')
    expect(index.lookUp('12 M HCl')).toMatchObject({ material: 'hydrochloric-acid-conc' })
  })
})
