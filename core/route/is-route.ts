import type { Library } from '../library/library.ts'
import { isBuyable } from '../library/material.ts'
import type { Transformation } from '../library/transformation.ts'
import { boughtBy } from './made-bought.ts'
import type { Route } from './route.ts'

/**
 * What keeps a list of steps from being a route; empty for a route. Serves as the witness of every search, so it looks at the whole
 * definition: one maker a compound, no circle, every step needed, the start used and neither made nor bought, the rest buyable, working order.
 *
 * @param opts.buyable also demand that whatever is bought may be bought (default true)
 * @returns faults as sentences
 */
export function isRoute(library: Library, route: Route, opts: { readonly buyable?: boolean } = {}): readonly string[] {
  const faults: string[] = []
  if (route.start === route.target) faults.push(`${route.target} is the start already.`)
  const steps: Transformation[] = []
  for (const step of route.steps) {
    const transformation = library.transformations.get(step.transformation)
    if (!transformation) {
      faults.push(`No transformation is called ${step.transformation}.`)
      continue
    }
    if (transformation.mainProduct !== step.makes)
      faults.push(`${step.transformation} makes ${transformation.mainProduct}, not ${step.makes}.`)
    steps.push(transformation)
  }
  if (faults.length > 0) return faults
  if (steps.length === 0) return ['It has no steps.']

  const makers = new Map<string, Transformation>()
  for (const step of steps) {
    const other = makers.get(step.mainProduct)
    if (other) faults.push(`${step.mainProduct} would be made twice, by ${other.id} and by ${step.id}.`)
    else makers.set(step.mainProduct, step)
  }
  if (makers.has(route.start)) faults.push(`${route.start} is the start and may not be made, but ${makers.get(route.start)?.id} makes it.`)
  if (!makers.has(route.target)) faults.push(`No step makes ${route.target}.`)

  const consumed = new Set(steps.flatMap(s => s.reactants.map(r => r.compound)))
  for (const compound of makers.keys()) {
    if (compound !== route.target && !consumed.has(compound)) faults.push(`${compound} is made but no step takes it.`)
  }
  if (!consumed.has(route.start)) faults.push(`No step takes ${route.start}.`)

  const done = new Set<string>()
  for (const step of steps) {
    for (const { compound } of step.reactants) {
      if (makers.has(compound) && !done.has(compound)) faults.push(`${step.id} takes ${compound} before it is made.`)
    }
    done.add(step.mainProduct)
  }
  // With one maker a compound, no circle and a use for every product but the target, each step feeds the target in the end.
  if (faults.length > 0) return faults
  if (opts.buyable ?? true) {
    for (const id of boughtBy(library, route)) {
      const material = library.materials.get(id)
      if (material && !isBuyable(material)) faults.push(`${id} is not made by the route and cannot be bought.`)
    }
  }
  return faults
}
