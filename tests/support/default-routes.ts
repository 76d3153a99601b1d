import { type Library, materialOf } from '../../core/library/library.ts'
import { isBuyable } from '../../core/library/material.ts'
import { freeCompounds } from '../../core/library/reference-charge.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import type { Route } from '../../core/route/route.ts'
import { routeOf } from '../../core/route/route-of.ts'

/**
 * Every default route of a library up to so many steps whose co-reactants can all be bought: chains from a start, each step taking the
 * product before it. Listed plainly, without the search.
 */
export function defaultRoutes(library: Library, mostSteps: number): readonly Route[] {
  const routes: Route[] = []
  const chain: Transformation[] = []
  const grow = (start: string, last: string): void => {
    for (const next of library.users.get(last) ?? []) {
      if (next.mainProduct === start || chain.some(t => t.mainProduct === next.mainProduct || t === next)) continue
      chain.push(next)
      // A chain may need what it makes later, and is then no route.
      const route = routeOf(
        library,
        start,
        next.mainProduct,
        chain.map(t => t.id),
      )
      if (route.ok && route.warnings.length === 0) routes.push(route.value)
      if (chain.length < mostSteps) grow(start, next.mainProduct)
      chain.pop()
    }
  }
  for (const start of [...library.users.keys()].sort()) {
    if (!freeCompounds.has(start) && library.materials.has(start) && (isBuyable(materialOf(library, start)) || library.makers.has(start)))
      grow(start, start)
  }
  return routes
}
