import type { Checked } from '../problem/problem.ts'
import type { Solver } from '../shopping/shopping.ts'
import { type RoutesAnswer, routeList } from './route-list.ts'
import type { RoutesInput } from './searching.ts'

/**
 * Routes from one material to another, the whole list at once: the JSON of `waybench routes`. See {@link routeList}.
 *
 * @param solver for what the query wants proven; null = what the search proves by itself
 */
export function routeRows(input: RoutesInput, solver: Solver | null = null): Checked<RoutesAnswer> {
  const search = routeList(input)
  for (let step = search.next(); ; ) {
    if (step.done) return step.value
    step = search.next(step.value.kind === 'solve' ? solver?.(step.value.model) : undefined)
  }
}
