import type { Library, LibraryFile } from '../library/library.ts'
import { compoundIn } from '../library/reference-charge.ts'
import type { Transformation } from '../library/transformation.ts'
import { byId } from '../route/working-order.ts'
import { libraryOfParts } from './library-of-parts.ts'
import type { Plan } from './plan.ts'

/**
 * The part of a library that transformations and named materials use: every material they charge, make, give off or contain, and what
 * solutions are made up with.
 *
 * @param transformations ids
 * @param materials further ids (shelf, start, what packs sell); unknown ones are left out
 */
export function sliceOf(library: Library, transformations: Iterable<string>, materials: Iterable<string> = []): Library {
  const steps = [...new Set(transformations)].sort(byId).flatMap(id => library.transformations.get(id) ?? [])
  const used = new Set<string>()
  const add = (id: string | undefined): void => {
    const material = id === undefined ? undefined : library.materials.get(id)
    if (!material || used.has(material.id)) return
    used.add(material.id)
    add(material.contains?.compound)
    add(material.contains?.rest)
    if (material.kind === 'mixture' && material.contains?.rest === undefined) add('water')
    const compound = compoundIn(material)
    if (compound !== null) add(compound)
  }
  for (const step of steps) for (const id of materialsIn(step)) add(id)
  for (const id of materials) add(id)
  return libraryOfParts(
    library,
    [...used].sort(byId).flatMap(id => library.materials.get(id) ?? []),
    steps,
  )
}

function materialsIn(t: Transformation): string[] {
  return [
    ...t.charge.map(l => l.material),
    ...t.reactants.map(r => r.compound),
    ...t.products.map(r => r.compound),
    ...t.gasEvolved.map(r => r.compound),
    ...(t.coProducts ?? []).map(c => c.compound),
    ...(t.intendedMeetings ?? []).flatMap(m => m.materials),
  ]
}

/**
 * The slice that a plan uses: its routes, logged steps, start, shelf and what its packs hold of the same materials or of their compounds.
 *
 * @param compared further transformations: those of the ways that the plan was compared with
 */
export function sliceOfPlan(library: Library, plan: Plan, compared: readonly string[] = []): Library {
  const steps = [...compared, ...plan.goals.flatMap(g => g.route.steps.map(s => s.transformation)), ...plan.log.map(e => e.step)]
  const own = sliceOf(library, steps, [plan.start.material, ...plan.shelf.map(i => i.material)])
  const sold = (plan.packs?.packs ?? []).map(p => p.material).filter(id => sharesCompound(library, own, id))
  return sliceOf(library, steps, [plan.start.material, ...plan.shelf.map(i => i.material), ...sold])
}

/** Sold as such, or as a stronger or weaker form of something the plan uses. */
function sharesCompound(library: Library, own: Library, id: string): boolean {
  const material = library.materials.get(id)
  const compound = material ? compoundIn(material) : null
  return own.materials.has(id) || (compound !== null && own.materials.has(compound))
}

/** A slice as a library file. */
export const sliceFile = (slice: Library): LibraryFile => ({
  format: 'waybench-library',
  version: 1,
  title: slice.title,
  materials: [...slice.materials.values()],
  transformations: [...slice.transformations.values()],
})
