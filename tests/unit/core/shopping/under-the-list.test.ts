import { describe, expect, it } from 'vitest'
import { coversOf } from '../../../../core/shopping/covers.ts'
import { withGained } from '../../../../core/shopping/gained.ts'
import { gainedUses, inOrderOf } from '../../../../core/shopping/gained-uses.ts'
import { leftOvers } from '../../../../core/shopping/next-uses.ts'
import type { ShoppingLine } from '../../../../core/shopping/shopping.ts'
import { solventRecovery, usualRecoveryRule } from '../../../../core/shopping/solvent-recovery.ts'
import { chargedLine, chargedStep } from '../../../support/charged-steps.ts'
import { material, smallLibrary, transformation } from '../../../support/small-library.ts'

const library = smallLibrary(
  [
    material({ id: 'spirit', form: 'liquid', densityGPerMl: 0.79, boilingC: 78 }),
    material({ id: 'near', form: 'liquid', densityGPerMl: 0.8, boilingC: 82 }),
    material({ id: 'ether', form: 'liquid', densityGPerMl: 0.71, boilingC: 35, peroxideClass: 'B' }),
    material({ id: 'a' }),
    material({ id: 'b' }),
  ],
  [
    transformation({
      id: 'onward',
      charge: [{ material: 'spirit', role: 'solvent', amount: 50, unit: 'mL' }],
      reactants: [{ compound: 'b', coefficient: 1 }],
      mainProduct: 'c',
      products: [{ compound: 'c', coefficient: 1 }],
    }),
    transformation({
      id: 'washing',
      charge: [{ material: 'spirit', role: 'wash', amount: 1, unit: 'mL' }],
      mainProduct: 'd',
      products: [{ compound: 'd', coefficient: 1 }],
    }),
  ],
)
const lineOf = (left: number, costMinor = 1000): ShoppingLine =>
  ({
    material: 'spirit',
    left: { amount: left, unit: 'mL' },
    costMinor,
    packs: [{ supplier: 's', amount: 1, unit: 'L', count: 1, priceMinor: costMinor }],
  }) as unknown as ShoppingLine
const step = (charges: Parameters<typeof chargedLine>[0][]) => chargedStep({ transformation: 'onward', charges: charges.map(chargedLine) })

describe('solvents to be got back', () => {
  it('by the stated rule: three quarters of 800 mL in 3 h and half an hour of hands, worth it at 10 a litre only where an hour asks little', () => {
    const steps = [step([{ material: 'spirit', role: 'solvent', volumeMl: 800 }])]
    const [usual] = solventRecovery(library, steps, [lineOf(0)])
    expect(usual).toMatchObject({ usedMl: 800, recoverableMl: 600, hours: 3.5, savesMinor: 600, worthIt: false })
    const [cheap] = solventRecovery(library, steps, [lineOf(0)], { ...usualRecoveryRule, worthPerHourMinor: 100 })
    expect(cheap!.worthIt).toBe(true)
  })

  it('never beside what boils too near, never for a peroxide former, and a recrystallisation liquor stands by itself', () => {
    const mixed = step([
      { material: 'spirit', role: 'solvent', volumeMl: 800 },
      { material: 'near', role: 'wash', volumeMl: 50 },
    ])
    expect(solventRecovery(library, [mixed], [lineOf(0)])[0]).toMatchObject({
      recoverableMl: 0,
      worthIt: false,
      why: expect.stringMatching(/too near/),
    })
    const apart = step([
      { material: 'spirit', role: 'recrystallisation', volumeMl: 400 },
      { material: 'near', role: 'wash', volumeMl: 50 },
    ])
    expect(solventRecovery(library, [apart], [lineOf(0)]).find(s => s.material === 'spirit')!.recoverableMl).toBe(300)
    const [ether] = solventRecovery(library, [step([{ material: 'ether', role: 'solvent', volumeMl: 900 }])], [])
    expect(ether).toMatchObject({ recoverableMl: 0, why: expect.stringMatching(/peroxides/) })
  })
})

describe('left-overs', () => {
  it('could serve what charges them and goes on from the plan, as often as they suffice', () => {
    const [one] = leftOvers(library, [lineOf(120)], { compounds: new Set(['b']), transformations: new Set() })
    expect(one!.couldServe).toEqual([{ transformation: 'onward', makes: 'c', times: 2, downstream: true }])
    expect(leftOvers(library, [lineOf(40)], { compounds: new Set(), transformations: new Set() })[0]!.couldServe).toEqual([])
  })
})

describe('second products on the shelf', () => {
  const shelf = [
    { material: 'b', amount: 0, unit: 'g' as const, gainedIn: 'onward' },
    { material: 'a', amount: 5, unit: 'g' as const },
  ]
  it('follow the plan, and are gone where it no longer makes them', () => {
    const steps = [chargedStep({ transformation: 'onward', number: '2' })]
    expect(withGained(shelf, steps, [{ compound: 'b', step: '2', expectedG: 3.5 }])[0]).toMatchObject({
      amount: 3.5,
      place: expect.stringMatching(/step 2/),
    })
    expect(withGained(shelf, [], []).map(item => item.material)).toEqual(['a'])
  })

  it('serve the steps that can wait for them; a step before them buys what it takes', () => {
    const takes = (massG: number) => [chargedLine({ material: 'b', massG })]
    const to = (step: string | null) => [{ step, goal: step === null ? 0 : null, massG: 1 }]
    const steps = [
      chargedStep({ transformation: 'before', number: '1', charges: takes(2), goesTo: to('onward') }),
      chargedStep({ transformation: 'aside', number: '2', charges: takes(3), goesTo: to(null) }),
      chargedStep({ transformation: 'onward', number: '3', goesTo: to('later') }),
      chargedStep({ transformation: 'later', number: '4', charges: takes(4), goesTo: to(null) }),
    ]
    const uses = gainedUses(shelf, steps)
    expect([...uses.after]).toEqual([
      ['aside', ['onward']],
      ['later', ['onward']],
    ])
    expect(uses.tooEarly).toEqual([{ material: 'b', gainedIn: 'onward', step: 'before' }])
    // Of 20 g gained, 3 + 4 g and their reserve can be used in this plan; the 2 g of the step before are bought.
    expect(withGained(shelf, steps, [{ compound: 'b', step: '3', expectedG: 20 }], 0.1)[0]!.amount).toBeCloseTo(7.7, 12)
    const order = inOrderOf(steps, uses).map(step => step.transformation)
    expect(order.indexOf('aside')).toBeGreaterThan(order.indexOf('onward'))
    expect(order.indexOf('before')).toBeLessThan(order.indexOf('onward'))
  })

  it('of two steps that would each wait for the other, one waits and the other buys', () => {
    const both = [
      { material: 'b', amount: 0, unit: 'g' as const, gainedIn: 'onward' },
      { material: 'a', amount: 0, unit: 'g' as const, gainedIn: 'washing' },
    ]
    const steps = [
      chargedStep({ transformation: 'onward', number: '1', charges: [chargedLine({ material: 'a', massG: 1 })] }),
      chargedStep({ transformation: 'washing', number: '2', charges: [chargedLine({ material: 'b', massG: 1 })] }),
    ]
    const { after, tooEarly } = gainedUses(both, steps)
    expect([...after]).toEqual([['washing', ['onward']]])
    expect(tooEarly).toEqual([{ material: 'a', gainedIn: 'washing', step: 'onward' }])
  })
})

describe('covers', () => {
  const supplier = (id: string) => ({ id, name: id, carriageMinor: 0, hazardousFeeMinor: 0 })
  const [s, t] = [supplier('s'), supplier('t')]
  const offer = (of: typeof s, size: number, priceMinor: number) => ({
    supplier: of,
    size,
    priceMinor,
    pack: { supplier: of.id, material: 'a', amount: size, unit: 'g' as const, priceMinor },
    stated: { price: {}, fees: {} },
  })
  it('are the cheapest for each group of suppliers, and no larger group that is not cheaper', () => {
    const covers = coversOf([offer(s, 10, 100), offer(t, 25, 180)], 30, 0)!
    // By hand: three of ten cost 300; two of twenty-five, 360; one of each covers 35 for 280.
    expect(covers.map(c => [c.suppliers.map(one => one.id).join(''), c.costMinor]).sort()).toEqual([
      ['s', 300],
      ['st', 280],
      ['t', 360],
    ])
    expect(
      coversOf([offer(s, 10, 100), offer(t, 25, 600)], 30, 0)!
        .map(c => c.costMinor)
        .sort(),
    ).toEqual([1200, 300])
  })
})
