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
 *
 * @param only which materials are asked for; without it all
 */
export function materialsOfRoute(library: Library, route: Route, only?: (material: string) => boolean): readonly RouteMaterial[] {
  return materialsOfSteps(
    library,
    route.start,
    [route.target],
    route.steps.map(s => s.transformation),
    only,
  )
}

/** The same for the merged steps of several goals. */
export function materialsOfSteps(
  library: Library,
  start: string,
  targets: readonly string[],
  transformations: readonly string[],
  only?: (material: string) => boolean,
): readonly RouteMaterial[] {
  const uses = new Map<string, MaterialUse[]>()
  const add = (material: string, use: MaterialUse) => {
    if (only !== undefined && !only(material)) return
    const before = uses.get(material)
    if (before === undefined) uses.set(material, [use])
    else if (!before.includes(use)) before.push(use)
  }
  add(start, 'start')
  for (const id of transformations) usesInStep(library, id, add)
  for (const target of targets) add(target, 'product')
  return [...uses].sort(([a], [b]) => byId(a, b)).map(([material, as]) => ({ material, as }))
}

/** Tells each material of one step with what it is there, in the order of the record; one of several roles is told more than once. */
export function usesInStep(library: Library, id: string, tell: (material: string, use: MaterialUse) => void): void {
  const transformation = transformationOf(library, id)
  for (const line of transformation.charge) tell(line.material, 'charged')
  for (const reactant of reactantLines(library, transformation)) {
    if (reactant.lines.length === 0 && !reactant.free) tell(reactant.compound, 'charged')
  }
  for (const { compound } of transformation.products) tell(compound, compound === transformation.mainProduct ? 'made' : 'by-product')
  for (const { compound } of transformation.gasEvolved) tell(compound, 'gas')
}
