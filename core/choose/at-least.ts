import { type Library, transformationOf } from '../library/library.ts'
import { chargesOf } from '../route/charge.ts'
import { flowOf } from '../route/flow.ts'
import { typicalYield, type Yields } from '../route/overall-yield.ts'
import type { Route } from '../route/route.ts'

/**
 * Does a line that the route buys have no amount, by its source or by a rule of thumb, or only the least one (what the equation takes)? What
 * is summed over the lines is then a lower bound.
 */
export function hasOpenAmounts(library: Library, route: Route, yields: Yields): boolean {
  const made = new Set(route.steps.map(step => step.makes))
  return route.steps.some(({ transformation }) => {
    const productG = library.molarMass.get(transformationOf(library, transformation).mainProduct) ?? 1
    const fraction = yields.get(transformation) ?? typicalYield(library, transformation)
    const limitingG = productG / (fraction * flowOf(library, transformation).theoryPerG)
    const start = { compound: route.start, material: route.start }
    return chargesOf(library, { transformation, limitingG, productG, start, made }).some(
      line => line.supply === 'bought' && (line.basis === 'open' || line.basis === 'at-least'),
    )
  })
}
