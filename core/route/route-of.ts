import type { Library } from '../library/library.ts'
import { didYouMean } from '../problem/nearest.ts'
import { bad, type Checked, good, type Problem } from '../problem/problem.ts'
import { isRoute } from './is-route.ts'
import type { Route } from './route.ts'
import { workingOrder } from './working-order.ts'

/**
 * A route from transformation ids that a person gave, in any order.
 *
 * @returns the route in working order; or Problems: step-unknown, route-circle, route-fault. Warning route-fault for what cannot be bought
 * @example routeOf(library, 'benzoin', 'lophine', ['lophine', 'benzil-nitric-acid'])
 */
export function routeOf(library: Library, start: string, target: string, transformations: readonly string[]): Checked<Route> {
  const where = ['steps']
  const unknown = [...new Set(transformations)].filter(id => !library.transformations.has(id))
  if (unknown.length > 0) {
    return bad(
      unknown.map(id => ({
        code: 'step-unknown',
        where: [...where, id],
        what: `The library knows no transformation ${id}.`,
        why: 'A route is made of transformations of the library.',
        cure: `${didYouMean(id, library.transformations.keys())}Name one that the library holds.`,
      })),
    )
  }
  let route: Route
  try {
    route = { start, target, steps: workingOrder(library, start, transformations) }
  } catch {
    return bad([
      {
        code: 'route-circle',
        where,
        what: `These steps go round in a circle: ${transformations.join(', ')}.`,
        why: 'No step can come first.',
        cure: 'Leave out the one that makes what an earlier one takes.',
      },
    ])
  }
  const faults = isRoute(library, route, { buyable: false })
  if (faults.length > 0) return bad(faults.map(fault))
  return good(route, isRoute(library, route).map(fault))
}

const fault = (what: string): Problem => ({
  code: 'route-fault',
  where: ['steps'],
  what,
  why: 'In a route each made compound has one maker and a use, and it starts from what is in hand.',
  cure: 'Take a route that the route list offers, or correct the steps.',
})
