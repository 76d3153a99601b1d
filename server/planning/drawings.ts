import type { Depiction } from '../../core/chemistry/drawing.ts'
import type { Library } from '../../core/library/library.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { sliceOfPlan } from '../../core/plan/slice.ts'
import { depictionOf } from '../depict/depiction-of.ts'

/** How each material of a slice stands on the map, drawn here so that the page needs no toolkit. */
export const depictionsOf = (slice: Library): Readonly<Record<string, Depiction>> =>
  Object.fromEntries([...slice.materials.values()].map(material => [material.id, depictionOf(material)]))

/** The same for what a plan uses. */
export const drawingsFor = (library: Library, plan: Plan): Readonly<Record<string, Depiction>> => depictionsOf(sliceOfPlan(library, plan))
