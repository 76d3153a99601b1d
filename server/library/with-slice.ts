import type { Library } from '../../core/library/library.ts'
import { Refusal } from '../refusal.ts'
import { laidOver } from './laid-over.ts'
import type { Workshop } from './workshop.ts'

/**
 * The workshop with what a plan brings along and the library does not hold: a plan made on another machine, or before a record was taken
 * out, is reckoned on with its own records. What the library holds under the same id stays the library's.
 *
 * @param slice  of the plan's file
 * @throws Refusal where what it brings breaks a rule, or a list ends planning with it
 */
export function withSlice(workshop: Workshop, slice: Pick<Library, 'materials' | 'transformations'>): Workshop {
  const { library } = workshop
  const materials = [...slice.materials.values()].filter(one => !library.materials.has(one.id))
  const transformations = [...slice.transformations.values()].filter(one => !library.transformations.has(one.id))
  if (materials.length + transformations.length === 0) return workshop
  const laid = laidOver(workshop, 'records of the plan', materials, transformations)
  if (!laid.ok) throw new Refusal(laid.problems.some(one => one.code === 'stopped') ? 'no-answer' : 'bad-input', laid.problems)
  let traits: ReturnType<Workshop['traits']> | null = null
  return {
    ...workshop,
    library: laid.value.library,
    warnings: [...workshop.warnings, ...laid.warnings],
    traits: () => (traits ??= new Map([...workshop.traits(), ...laid.value.traits])),
  }
}
