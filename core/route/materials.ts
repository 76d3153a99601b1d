import { type Library, transformationOf } from '../library/library.ts'
import { reactantLines } from './reactant-lines.ts'
import type { Route } from './route.ts'
import { byId } from './working-order.ts'

/** What a material is in a route. */
export type MaterialUse = 'start' | 'charged' | 'made' | 'product' | 'by-product' | 'gas'

export interface RouteMaterial {
  readonly material: string
  readonly as: readonly MaterialUse[]
}

/**
 * Every material of a route with what it is there, each once, in order of id: as charged (a solution as itself, its compound not a second
 * time), made, by-product and gas. The oxygen and water that no line lists are left out: air and tap.
 */
export function materialsOfRoute(library: Library, route: Route): readonly RouteMaterial[] {
  return materialsOfSteps(
    library,
    route.start,
    [route.target],
    route.steps.map(s => s.transformation),
  )
}

/** The same for the merged steps of several goals. */
export function materialsOfSteps(
  library: Library,
  start: string,
  targets: readonly string[],
  transformations: readonly string[],
): readonly RouteMaterial[] {
  const uses = new Map<string, MaterialUse[]>()
  const add = (material: string, use: MaterialUse) => {
    const before = uses.get(material)
    if (before === undefined) uses.set(material, [use])
    else if (!before.includes(use)) before.push(use)
  }
  add(start, 'start')
  for (const id of transformations) {
    const transformation = transformationOf(library, id)
    for (const line of transformation.charge) add(line.material, 'charged')
    for (const reactant of reactantLines(library, transformation)) {
      if (reactant.lines.length === 0 && !reactant.free) add(reactant.compound, 'charged')
    }
    for (const { compound } of transformation.products) add(compound, compound === transformation.mainProduct ? 'made' : 'by-product')
    for (const { compound } of transformation.gasEvolved) add(compound, 'gas')
  }
  for (const target of targets) add(target, 'product')
  return [...uses].sort(([a], [b]) => byId(a, b)).map(([material, as]) => ({ material, as }))
}
