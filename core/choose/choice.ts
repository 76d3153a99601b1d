import type { RouteChoice } from '../plan/route-choice.ts'
import type { Axis } from './query.ts'
import type { RouteRows } from './route-list.ts'

/**
 * The chosen way to a goal, held against what the search listed.
 *
 * @param steps     transformation ids of the chosen way, in any order
 * @param list      ways by one axis
 * @param unbeaten  ways unbeaten on several; null = not asked for
 */
export function routeChoice(target: string, steps: readonly string[], by: Axis, list: RouteRows, unbeaten: RouteRows | null): RouteChoice {
  const key = keyOf(steps)
  const place = list.routes.findIndex(row => keyOf(row.steps) === key)
  const rows = unbeaten?.routes ?? []
  return {
    target,
    by,
    place: place < 0 ? null : place + 1,
    listed: list.routes.length,
    complete: list.complete,
    bestProven: list.best.proven,
    atMostAbovePercent: list.best.atMostAbovePercent,
    axes: unbeaten?.unbeaten?.axes ?? [],
    exact: unbeaten?.unbeaten?.exact ?? false,
    unbeaten: rows.some(row => keyOf(row.steps) === key),
    others: rows
      .filter(row => keyOf(row.steps) !== key)
      .map(row => ({ steps: row.steps, overallYieldOnStart: row.overallYieldOnStart, hazard: row.hazard })),
  }
}

const keyOf = (steps: readonly string[]): string => [...steps].sort().join(' ')
