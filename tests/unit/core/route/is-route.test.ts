import { describe, expect, it } from 'vitest'
import { isRoute } from '../../../../core/route/is-route.ts'
import { routeOf } from '../../../../core/route/route-of.ts'
import { workingOrder } from '../../../../core/route/working-order.ts'
import { bundled } from '../../../../server/library/bundled.ts'

const { library } = bundled()
const step = (transformation: string) => ({ transformation, makes: library.transformations.get(transformation)!.mainProduct })
const faults = (target: string, ids: readonly string[]) => isRoute(library, { start: 'benzoin', target, steps: ids.map(step) })

describe('what is a route', () => {
  it('is one with a shared intermediate', () => {
    const ids = [
      'benzil-nitric-acid',
      'benzil-dihydrazone',
      'diphenylacetylene-dihydrazone',
      'tetraphenylcyclopentadienone-koh',
      'hexaphenylbenzene',
    ]
    expect(faults('hexaphenylbenzene', ids)).toEqual([])
  })
  it.each([
    ['no step', 'lophine', [], 'no steps'],
    ['a step too much', 'lophine', ['benzil-nitric-acid', 'lophine', 'diphenylquinoxaline'], 'no step takes it'],
    ['two makers', 'lophine', ['benzil-copper-acetate', 'benzil-nitric-acid', 'lophine'], 'made twice'],
    ['the wrong order', 'lophine', ['lophine', 'benzil-nitric-acid'], 'before it is made'],
    ['another target', 'vanillin', ['benzil-nitric-acid', 'lophine'], 'No step makes vanillin'],
    ['a start that nobody takes', 'lophine', ['lophine'], 'No step takes benzoin'],
    ['a start that is made', 'lophine', ['benzoin-thiamine', 'benzil-nitric-acid', 'lophine'], 'may not be made'],
    ['the start as target', 'benzoin', ['benzil-nitric-acid'], 'start already'],
  ] as const)('is none with %s', (_name, target, ids, fault) => {
    expect(faults(target, ids).join(' ')).toContain(fault)
  })
  it('must name what its steps make', () => {
    expect(
      isRoute(library, { start: 'benzoin', target: 'benzil', steps: [{ transformation: 'benzil-nitric-acid', makes: 'lophine' }] }).join(),
    ).toContain('makes benzil, not lophine')
    expect(
      isRoute(library, { start: 'benzoin', target: 'benzil', steps: [{ transformation: 'no-such', makes: 'benzil' }] }).join(),
    ).toContain('No transformation is called no-such')
  })
  it('asks for what is bought to be for sale', () => {
    const materials = new Map(library.materials)
    materials.set('benzaldehyde', { ...materials.get('benzaldehyde')!, buyable: false })
    const route = { start: 'benzoin', target: 'lophine', steps: ['benzil-nitric-acid', 'lophine'].map(step) }
    expect(isRoute({ ...library, materials }, route)).toEqual(['benzaldehyde is not made by the route and cannot be bought.'])
    expect(isRoute({ ...library, materials }, route, { buyable: false })).toEqual([])
  })
})

describe('working order', () => {
  it('takes of those ready the smallest id first', () => {
    const ids = [
      'hexaphenylbenzene',
      'tetraphenylcyclopentadienone-koh',
      'diphenylacetylene-dihydrazone',
      'benzil-nitric-acid',
      'benzil-dihydrazone',
    ]
    expect(workingOrder(library, 'benzoin', ids).map(s => s.transformation)).toEqual([
      'benzil-nitric-acid',
      'benzil-dihydrazone',
      'diphenylacetylene-dihydrazone',
      'tetraphenylcyclopentadienone-koh',
      'hexaphenylbenzene',
    ])
  })
})

describe('a route from what somebody typed', () => {
  it('is put in order', () => {
    const route = routeOf(library, 'benzoin', 'lophine', ['lophine', 'benzil-nitric-acid'])
    expect(route.ok && route.value.steps.map(s => s.transformation)).toEqual(['benzil-nitric-acid', 'lophine'])
  })
  it('answers a slip with what was meant', () => {
    const route = routeOf(library, 'benzoin', 'lophine', ['lophin', 'benzil-nitric-acid'])
    expect(route.ok ? [] : route.problems.map(p => [p.code, p.cure])).toEqual([['step-unknown', expect.stringContaining('lophine')]])
  })
  it('names a circle', () => {
    const ids = [
      'copper-copper-oxide-charcoal',
      'copper-hydroxide-copper-nitrate',
      'copper-nitrate-copper',
      'copper-oxide-copper-hydroxide',
    ]
    const route = routeOf(library, 'sodium-hydroxide', 'copper-oxide', ids)
    expect(route.ok ? [] : route.problems.map(p => p.code)).toEqual(['route-circle'])
  })
})
