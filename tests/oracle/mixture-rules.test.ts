import { describe, expect, it } from 'vitest'
import { hazardClassOf } from '../../core/hazards/classes.ts'
import { knownOf } from '../../core/hazards/known.ts'
import { labelOf } from '../../core/hazards/labels.ts'
import { acuteCategory, acuteToxicityEstimate, asLabelled, type Ingredient, mixtureCodes } from '../../core/hazards/mixture.ts'
import { acuteRoutes } from '../../core/hazards/mixture-limits.ts'
import type { Material } from '../../core/library/material.ts'
import { bundled } from '../../server/library/bundled.ts'
import { allowance, checkValuesOf } from '../support/check-values.ts'
import { bundledTables, libraryWith, materialWith } from '../support/hazards.ts'

const values = checkValuesOf('ghs-ate', 3)
const sums = values.filter(one => one.inputs.ingredients !== undefined)

describe('acute toxicity of mixtures', () => {
  it.each(sums.map(one => [one.id, one] as const))('%s', (_, value) => {
    const ingredients = value.inputs.ingredients.map(({ massPercent, ateMgPerKg }: { massPercent: number; ateMgPerKg: number }) => ({
      fraction: massPercent / 100,
      ate: ateMgPerKg,
    }))
    const estimate = acuteToxicityEstimate(ingredients)!
    expect(Math.abs(estimate - value.expected.ateMixMgPerKg)).toBeLessThanOrEqual(allowance(value, value.expected.ateMixMgPerKg))
    expect(acuteCategory('oral', estimate)).toBe(/^\d$/.test(value.expected.category) ? Number(value.expected.category) : null)
  })
  it('takes the converted point estimate of a category where only that is known', () => {
    const value = values.find(one => one.inputs.fromCategory !== undefined)!
    expect(acuteRoutes.oral.pointEstimates).toEqual(Object.values(value.expected.convertedPointEstimateMgPerKg))
  })
  it('leaves out what falls in no category, as the note to the second example says: 100 / (10 / 636) = 6360', () => {
    const counted = [
      { fraction: 0.6, ate: null },
      { fraction: 0.3, ate: null },
      { fraction: 0.1, ate: 636 },
    ]
    expect(acuteToxicityEstimate(counted)).toBeCloseTo(6360, 6)
  })
  it('and what stands below 1 %', () => {
    expect(acuteToxicityEstimate([{ fraction: 0.0099, ate: 5 }])).toBeNull()
  })
  // By hand with the point estimates of UN GHS table 3.1.2: 100 mg/kg (H301) at 5 % is 2000, still category 4; at 4.9 % it is 2041, none.
  it.each([
    [0.5, ['H301']],
    [0.2, ['H302']],
    [0.05, ['H302']],
    [0.049, []],
  ] as const)('H301 at mass fraction %f', (fraction, codes) => {
    expect(mixtureCodes([{ fraction, codes: ['H301'], extreme: false }])).toEqual(codes)
  })
})

const ingredient = (fraction: number, ...codes: string[]): Ingredient => ({ fraction, codes, extreme: false })

describe('skin and eyes by summation', () => {
  // ECHA Helpdesk, Mixture classification exercises, seminar for Baltic States (paperzz.com/doc/7927667), examples 1 and 2 and its table 3.2.3.
  it('leaves 0.8 % of a skin irritant out, and 1.8 % stays below the 10 % of its table', () => {
    expect(mixtureCodes([ingredient(0.008, 'H315')])).toEqual([])
    expect(mixtureCodes([ingredient(0.018, 'H315')])).toEqual([])
    expect(mixtureCodes([ingredient(0.1, 'H315')])).toEqual(['H315'])
  })
  // enviprofi.cz, Klasifikace ziravosti a drazdivosti: 4 % of a corrosive is not corrosive, 7 % is; at 4 % it irritates.
  // gesi.de, 20 February 2017: from 3 % on it damages eyes all the same, so that GHS05 stands on what is not corrosive.
  it.each([
    [0.07, ['H314'], ['GHS05']],
    [0.05, ['H314'], ['GHS05']],
    [0.04, ['H315', 'H318'], ['GHS05']],
    [0.03, ['H315', 'H318'], ['GHS05']],
    [0.029, ['H315', 'H319'], ['GHS07']],
    [0.01, ['H315', 'H319'], ['GHS07']],
    [0.009, [], []],
  ] as const)('a corrosive at mass fraction %f', (fraction, codes, pictograms) => {
    const found = mixtureCodes([ingredient(fraction, 'H314')])
    expect(found).toEqual(codes)
    const label = labelOf(bundledTables(), materialWith({ id: 'x', hazards: { codes: [...found], signalWord: 'Danger', from: 'test' } }))
    expect(label.pictograms).toEqual(pictograms)
  })
  // UN GHS table 3.2.3, third row: 10 x (skin category 1) + (skin category 2) at 10 % and above; table 3.3.3 alike for eyes. By hand.
  it('weighs corrosives tenfold towards irritation', () => {
    expect(mixtureCodes([ingredient(0.05, 'H315'), ingredient(0.049, 'H315')])).toEqual([])
    expect(mixtureCodes([ingredient(0.05, 'H315'), ingredient(0.05, 'H315')])).toEqual(['H315'])
    expect(mixtureCodes([ingredient(0.02, 'H318'), ingredient(0.04, 'H319')])).toEqual(['H319'])
    expect(mixtureCodes([ingredient(0.06, 'H319')])).toEqual([])
  })
  // CLP Annex I 3.2.3.1.2 and table 3.2.4 (reachonline.eu): acids and bases of extreme pH from 1 % on, whatever the sums say.
  it('does not sum acids and bases of extreme pH', () => {
    expect(mixtureCodes([{ ...ingredient(0.01, 'H314'), extreme: true }])).toEqual(['H314'])
    expect(mixtureCodes([{ ...ingredient(0.009, 'H314'), extreme: true }])).toEqual([])
  })
})

describe('other classes by their own limits', () => {
  // ECHA Helpdesk, same exercises, table 3.7.2: reproductive toxicity does not add up; the UN standard offers 0.1 % beside 0.3 %.
  it.each([
    ['H360D', 0.003, ['H360D']],
    ['H360D', 0.0009, []],
    ['H350', 0.001, ['H350']],
    ['H317', 0.001, ['H317']],
    ['H372', 0.1, ['H372']],
    ['H372', 0.05, ['H373']],
    ['H372', 0.009, []],
    ['H336', 0.2, ['H336']],
    ['H336', 0.19, []],
    ['H304', 0.1, ['H304']],
    ['H225', 0.05, ['H225']],
    ['H280', 0.3, []],
  ] as const)('%s at %f', (code, fraction, codes) => {
    expect(mixtureCodes([ingredient(fraction, code)])).toEqual(codes)
  })
  // UN GHS table 4.1.2: 10 x chronic 1 + chronic 2 at 25 % and above, and so on down. By hand.
  it.each([
    [[0.25], ['H400', 'H410']],
    [[0.024], ['H412']],
    [[0.025], ['H411']],
    [[0.002], []],
  ] as const)('dangerous for water at %j', ([fraction], codes) => {
    expect(mixtureCodes([ingredient(fraction, 'H400', 'H410')])).toEqual(codes)
  })
})

describe('a solution without a stated label', () => {
  const { library } = bundled()
  const solution = (own: Partial<Material>): Material =>
    materialWith({
      id: 'bottle',
      kind: 'mixture',
      form: 'solution',
      contains: { compound: 'sodium-hydroxide', massFraction: 0.04 },
      ...own,
    })
  it('gets one from its constituents, and tells how', () => {
    const labelled = asLabelled(library, solution({}))
    expect(labelled.hazards?.codes).toContain('H314')
    expect(labelled.hazards).toMatchObject({ signalWord: 'Danger' })
    expect(labelled.hazards?.from).toMatch(/mixture rules of the UN GHS, reckoned for 4 % sodium hydroxide in water/)
    expect(labelled.sources.length).toBeGreaterThan(1)
  })
  it('keeps the label that a bought solution states, whatever the rules would give', () => {
    const stated = solution({
      hazards: { codes: ['H315', 'H319'], signalWord: 'Warning', from: 'EU Annex VI with its concentration limits' },
    })
    expect(asLabelled(library, stated)).toBe(stated)
  })
  it('stays unknown where a constituent or the strength is unknown', () => {
    const strange = materialWith({ id: 'strange' })
    const small = libraryWith([strange, materialWith({ id: 'water', hazards: { codes: [], signalWord: 'none', from: 'a list' } })])
    expect(knownOf(asLabelled(small, solution({ contains: { compound: 'strange', massFraction: 0.1 } })))).toBe('unknown')
    expect(knownOf(asLabelled(library, solution({ contains: { compound: 'sodium-hydroxide' } })))).toBe('unknown')
    expect(knownOf(asLabelled(library, solution({ contains: { compound: 'sodium-hydroxide', massFraction: 0.1, rest: 'lophine' } })))).toBe(
      'unknown',
    )
  })
  it('is only as sure as its least sure constituent', () => {
    const benzoin = asLabelled(library, solution({ contains: { compound: 'benzoin', massFraction: 0.3, rest: 'ethanol' } }))
    expect(knownOf(library.materials.get('benzoin')!)).toBe('remembered')
    expect(knownOf(benzoin)).toBe('remembered')
  })
  it('is never called harmless because the rules give nothing, where a constituent has codes', () => {
    const weak = asLabelled(library, solution({ contains: { compound: 'acetic-acid', massFraction: 0.0001 } }))
    expect(hazardClassOf(weak)).not.toBe('none')
  })
  it('comes out no weaker than the stated label for every bundled solution that has one, but for what is named', () => {
    let compared = 0
    const weaker: string[] = []
    const health = /^H3(0|1|3[0-2])/
    for (const material of library.materials.values()) {
      const { hazards, ...unlabelled } = material
      if (material.kind !== 'mixture' || material.form !== 'solution' || hazards === undefined || hazards.codes.length === 0) continue
      const reckoned = asLabelled(library, unlabelled).hazards
      if (reckoned === undefined) continue
      compared += 1
      if (hazards.signalWord === 'Danger' && reckoned.signalWord !== 'Danger' && hazards.codes.some(code => health.test(code)))
        weaker.push(material.id)
    }
    expect(compared).toBeGreaterThan(30)
    // Its maker found a pH above 11.5, for which no ingredient's label tells: where a label is stated it goes first.
    expect(weaker).toEqual(['sodium-carbonate-10pct'])
  })
})
