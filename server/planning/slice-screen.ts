import { materialsOfStep } from '../../core/choose/forbidden.ts'
import type { RegulatedHit } from '../../core/hazards/hazard-list.ts'
import { stopsAmong } from '../../core/hazards/regulated.ts'
import { traitsOf } from '../../core/hazards/traits.ts'
import type { Library } from '../../core/library/library.ts'
import type { Material } from '../../core/library/material.ts'
import type { Transformation } from '../../core/library/transformation.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { stopProblems } from '../../core/report/stops.ts'
import { materialsOfRoute } from '../../core/route/materials.ts'
import type { Workshop } from '../library/workshop.ts'

/** What a material is found in the lists by. */
const identity = ({ name, synonyms, cas, smiles, contains }: Material): string => JSON.stringify([name, synonyms, cas, smiles, contains])

/**
 * Stop rows among the materials that a plan file brings along. A file was written on somebody else's library, against somebody else's lists:
 * whoever opens it screens what it carries. Records that are the same here have been screened with this library.
 */
export function stopsInSlice({ library, tables, toolkit }: Workshop, slice: Library): readonly RegulatedHit[] {
  const strange = [...slice.materials.values()].filter(material => {
    const here = library.materials.get(material.id)
    return here === undefined || identity(here) !== identity(material)
  })
  if (strange.length === 0) return []
  const inside = strange.flatMap(({ contains }) => [contains?.compound, contains?.rest])
  const parts = inside.flatMap(id => (id === undefined ? [] : (slice.materials.get(id) ?? library.materials.get(id) ?? [])))
  const materials = new Map([...parts, ...strange].map(material => [material.id, material]))
  return stopsAmong(
    traitsOf({ ...slice, materials }, tables, toolkit),
    strange.map(material => material.id),
  )
}

/** Why a step is handed out to nobody: the stop rows among what it names in any role, as problems; empty where there is none. */
export function stopsInStep({ library, traits }: Workshop, step: Transformation): readonly Problem[] {
  const known = traits()
  const hits = stopsAmong(
    known,
    [...materialsOfStep(step)].filter(id => known.has(id)),
  )
  return stopProblems(library, hits)
}

/** Stop rows among what the routes of a plan name in any role, by the lists that are loaded here; what the library does not hold is told elsewhere. */
export function stopsInPlan({ library, traits }: Workshop, { start, goals }: Plan): readonly RegulatedHit[] {
  const routes = goals.map(goal => goal.route).filter(({ steps }) => steps.every(step => library.transformations.has(step.transformation)))
  const named = new Set([start.material, ...routes.flatMap(route => materialsOfRoute(library, route).map(one => one.material))])
  const known = traits()
  return stopsAmong(
    known,
    [...named].filter(id => known.has(id)),
  )
}
