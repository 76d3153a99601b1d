import type { Library } from '../../core/library/library.ts'
import type { Route } from '../../core/route/route.ts'

/** Steps in working order as a route; null where the library does not hold one of them. */
export function routeOfSteps(library: Library, start: string, ids: readonly string[]): Route | null {
  const steps = ids.map(id => library.transformations.get(id))
  const last = steps[steps.length - 1]
  if (last === undefined || steps.some(step => step === undefined)) return null
  return {
    start,
    target: last.mainProduct,
    steps: steps.flatMap(step => (step ? [{ transformation: step.id, makes: step.mainProduct }] : [])),
  }
}

/** Steps as one text: two routes with the same steps are the same way. */
export const keyOfSteps = (steps: readonly string[]): string => [...steps].sort().join(' ')
export const keyOfRoute = (route: Route): string => keyOfSteps(route.steps.map(step => step.transformation))

/** Which transformation makes each compound of a route. */
export const makersOf = (route: Route): ReadonlyMap<string, string> => new Map(route.steps.map(step => [step.makes, step.transformation]))

/**
 * The other goals' routes once one goal's way is chosen: a compound that several goals pass through is made in one way for all of them,
 * since it is one batch on the bench. Each other goal takes, of the routes it has, the one that agrees with the chosen makers and keeps
 * most of its own steps; where none agrees it stays as it is.
 *
 * @param candidates  routes that are known for each target
 */
export function harmonised(routes: readonly Route[], chosen: Route, candidates: ReadonlyMap<string, readonly Route[]>): readonly Route[] {
  const makers = makersOf(chosen)
  return routes.map(route => {
    if (route.target === chosen.target) return chosen
    if (agrees(route, makers)) return route
    const own = new Set(route.steps.map(step => step.transformation))
    const kept = (other: Route): number => other.steps.filter(step => own.has(step.transformation)).length - other.steps.length
    const agreeing = (candidates.get(route.target) ?? []).filter(other => agrees(other, makers))
    return agreeing.reduce<Route | null>((best, other) => (best === null || kept(other) > kept(best) ? other : best), null) ?? route
  })
}

/** Whatever both make, both make in the same way. */
const agrees = (route: Route, makers: ReadonlyMap<string, string>): boolean =>
  route.steps.every(step => (makers.get(step.makes) ?? step.transformation) === step.transformation)

/** Of the routes for a new goal the first that agrees with the goals there are; else the first. */
export function firstAgreeing(routes: readonly Route[], others: readonly Route[]): Route | null {
  const makers = new Map(others.flatMap(other => [...makersOf(other)]))
  return routes.find(route => agrees(route, makers)) ?? routes[0] ?? null
}

/** Does a compound that a route makes come from its start, through however many steps? */
export function comesFromStart(library: Library, route: Route, compound: string): boolean {
  const step = route.steps.find(one => one.makes === compound)
  const reactants = step === undefined ? [] : (library.transformations.get(step.transformation)?.reactants ?? [])
  return reactants.some(one => one.compound === route.start || comesFromStart(library, route, one.compound))
}
