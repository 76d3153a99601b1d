import { listed } from '../../core/report/words.ts'
import type { RouteRow } from '../api/replies.ts'
import { keyOfSteps } from '../state/routes-of.ts'
import { differing } from './way-answer.ts'

export const isBarred = (row: Pick<RouteRow, 'flags'>): boolean => row.flags.some(flag => flag.kind === 'barred')

/**
 * The heading where the chosen way needs what the public cannot have: that first, then the first way that they can have.
 *
 * @param chosen  steps of the chosen way
 * @param wayText  names of the steps by which a way differs
 * @returns null where they can have the chosen way
 */
export function barredWay(
  chosen: readonly string[],
  rows: readonly RouteRow[],
  nameOf: (id: string) => string,
  wayText: (steps: readonly string[]) => string,
): readonly string[] | null {
  const own = rows.find(row => keyOfSteps(row.steps) === keyOfSteps(chosen))
  if (own === undefined || !isBarred(own)) return null
  const materials = own.flags.flatMap(flag => (flag.kind === 'barred' && flag.material !== null ? [flag.material] : []))
  const next = rows.find(row => !isBarred(row))
  return [
    `The public cannot have ${listed([...new Set(materials)].map(nameOf))};`,
    next === undefined ? 'no way that was found is free of it' : `they can go by ${wayText(differing(next.steps, [own.steps]))}`,
  ]
}
