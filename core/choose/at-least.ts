import { type Library, transformationOf } from '../library/library.ts'
import { chargesOf } from '../route/charge.ts'
import { flowOf } from '../route/flow.ts'
import { typicalYield, type Yields } from '../route/overall-yield.ts'
import type { Route } from '../route/route.ts'

/**
 * Does a line that a route buys have no amount, by its source or by a rule of thumb, or only the least one (what the equation takes)? What is
 * summed over the lines is then a lower bound.
 *
 * @returns a question that remembers: the routes of one list share most of their steps, and a step's answer depends on the route only by
 *   which of its reactants are there already
 */
export function openAmountsAt(library: Library, yields: Yields): (route: Route) => boolean {
  const known = new Map<string, boolean>()
  return ({ start, steps }) => {
    const made = new Set(steps.map(step => step.makes))
    return steps.some(({ transformation }) => {
      const supplied = transformationOf(library, transformation).reactants.flatMap(({ compound }, index) =>
        compound === start ? [`start ${index}`] : made.has(compound) ? [`${index}`] : [],
      )
      const key = [transformation, ...supplied].join(' ')
      let open = known.get(key)
      if (open === undefined) {
        open = buysWithoutAmount(library, transformation, start, made, yields)
        known.set(key, open)
      }
      return open
    })
  }
}

function buysWithoutAmount(library: Library, transformation: string, start: string, made: ReadonlySet<string>, yields: Yields): boolean {
  const productG = library.molarMass.get(transformationOf(library, transformation).mainProduct) ?? 1
  const fraction = yields.get(transformation) ?? typicalYield(library, transformation)
  const limitingG = productG / (fraction * flowOf(library, transformation).theoryPerG)
  const charges = chargesOf(library, { transformation, limitingG, productG, start: { compound: start, material: start }, made })
  return charges.some(line => line.supply === 'bought' && (line.basis === 'open' || line.basis === 'at-least'))
}
