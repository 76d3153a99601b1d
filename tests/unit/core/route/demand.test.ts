import { describe, expect, it } from 'vitest'
import { libraryOfParts } from '../../../../core/plan/library-of-parts.ts'
import { demandOf, reachOf } from '../../../../core/route/demand.ts'
import { overallYieldOnStart } from '../../../../core/route/overall-yield.ts'
import { workingOrder } from '../../../../core/route/working-order.ts'
import { bundled } from '../../../../server/library/bundled.ts'
import { material, transformation } from '../../../support/small-library.ts'

const chain = (lossG: number) =>
  libraryOfParts(
    { title: 'a test' },
    ['a', 'b', 'c'].map(id => material({ id, formula: 'C6H6O' })),
    [
      transformation({ id: 'one', lossG }),
      transformation({
        id: 'two',
        reactants: [{ compound: 'b', coefficient: 1 }],
        products: [{ compound: 'c', coefficient: 1 }],
        mainProduct: 'c',
        limiting: 'b',
        charge: [{ material: 'b', role: 'substrate', amount: 10, unit: 'g' }],
        yieldPercent: { low: 40, typical: 50, high: 60 },
        lossG,
      }),
    ],
  )

describe('a fixed loss per isolation', () => {
  const library = chain(0.5)
  const steps = workingOrder(library, 'a', ['two', 'one'])
  it('makes the chain affine, exact both ways', () => {
    // (4 + 0.5) / 0.5 = 9 of b; (9 + 0.5) / 0.8 = 11.875 of a.
    expect(demandOf(library, steps, new Map([['c', 4]])).compoundG.get('a')).toBeCloseTo(11.875, 12)
    expect(reachOf(library, steps, new Map([['c', 1]]), new Map([['a', 11.875]])).scale).toBeCloseTo(4, 12)
    expect(demandOf(library, steps, new Map([['c', 8]])).compoundG.get('a')).toBeCloseTo(21.875, 12)
  })
  it('leaves nothing where the start does not even cover it', () => {
    expect(reachOf(library, steps, new Map([['c', 1]]), new Map([['a', 1]])).scale).toBe(0)
  })
  it('takes nothing where nothing is wanted', () => {
    const none = demandOf(library, steps, new Map())
    expect([...none.limitingG.values()]).toEqual([0, 0])
    expect(none.compoundG.size).toBe(0)
  })
})

describe('forwards', () => {
  it('names the material that sets the scale', () => {
    const { library } = bundled()
    const ids = ['benzil-nitric-acid', 'tetraphenylcyclopentadienone-koh', 'hexaphenylbenzene']
    const steps = workingOrder(library, 'benzoin', ids)
    const stock = new Map([
      ['benzoin', 24],
      ['diphenylacetylene', 1],
    ])
    const reach = reachOf(library, steps, new Map([['hexaphenylbenzene', 1]]), stock)
    expect(reach.setBy).toBe('diphenylacetylene')
    expect(demandOf(library, steps, new Map([['hexaphenylbenzene', reach.scale]])).compoundG.get('diphenylacetylene')).toBeCloseTo(1, 9)
    expect(reachOf(library, steps, new Map([['hexaphenylbenzene', 1]]), new Map()).scale).toBe(Number.POSITIVE_INFINITY)
  })
  it('stops at what is in hand and asks no more of what is above', () => {
    const library = chain(0)
    const steps = workingOrder(library, 'a', ['two', 'one'])
    const demand = demandOf(library, steps, new Map([['c', 4]]), { inHand: new Set(['b']) })
    expect(demand.compoundG.get('a')).toBeUndefined()
    expect(demand.compoundG.get('b')).toBeCloseTo(8, 12)
  })
})

describe('an isolation', () => {
  const { library } = bundled()
  it('takes feedstock by its recovery, which the overall yield on start leaves out', () => {
    const recovery = library.transformations.get('extract-trimyristin-nutmeg')!.yieldPercent.typical / 100
    const only = workingOrder(library, 'nutmeg', ['extract-trimyristin-nutmeg'])
    expect(demandOf(library, only, new Map([['trimyristin', 1]])).compoundG.get('nutmeg')).toBeCloseTo(1 / recovery, 9)
    expect(overallYieldOnStart(library, { start: 'nutmeg', target: 'trimyristin', steps: only })).toBe(1)
    const further = library.users.get('trimyristin')!.find(t => t.limiting === 'trimyristin')!
    const steps = workingOrder(library, 'nutmeg', ['extract-trimyristin-nutmeg', further.id])
    expect(overallYieldOnStart(library, { start: 'nutmeg', target: further.mainProduct, steps })).toBeCloseTo(
      further.yieldPercent.typical / 100,
      9,
    )
  })
})
