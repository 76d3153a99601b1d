import type { Library } from '../../core/library/library.ts'
import { canonical } from '../../core/plan/canonical.ts'
import { Refusal } from '../refusal.ts'
import { laidOver } from './laid-over.ts'
import { type Workshop, withLayer } from './workshop.ts'

/**
 * The workshop with what a plan brings along and the library does not hold: a plan made on another machine, or before a record was taken
 * out, is reckoned on with its own records. What the library holds under the same id stays the library's, unless the plan keeps its own.
 *
 * @param slice  of the plan's file
 * @param keeps  records of the plan stand in place of those of the library that differ
 * @throws Refusal where what it brings breaks a rule, or a list ends planning with it
 */
export function withSlice(workshop: Workshop, slice: Pick<Library, 'materials' | 'transformations'>, keeps = false): Workshop {
  const { library } = workshop
  const own = <R extends { readonly id: string }>(brought: ReadonlyMap<string, R>, held: ReadonlyMap<string, R>): R[] =>
    [...brought.values()].filter(one => {
      const here = held.get(one.id)
      return here === undefined || (keeps && canonical(here) !== canonical(one))
    })
  const materials = own(slice.materials, library.materials)
  const transformations = own(slice.transformations, library.transformations)
  if (materials.length + transformations.length === 0) return workshop
  const laid = laidOver(workshop, 'records of the plan', materials, transformations)
  if (!laid.ok) throw new Refusal(laid.problems.some(one => one.code === 'stopped') ? 'no-answer' : 'bad-input', laid.problems)
  return withLayer(workshop, laid.value, laid.warnings)
}
