import type { Library } from '../library/library.ts'
import type { RouteMaterial } from '../route/materials.ts'
import { hazardClassOf } from './classes.ts'
import type { HazardCounts } from './hazard-list.ts'
import { labelledMaterialOf } from './mixture.ts'

/**
 * Materials counted once each by class; `none` is not counted.
 *
 * @param materials each once, as `materialsOfRoute` lists them: charged, made, by-product and gas, a solution as itself
 */
export function hazardCounts(library: Library, materials: readonly RouteMaterial[]): HazardCounts {
  const counts = { gravest: 0, unknown: 0, danger: 0, warning: 0 }
  for (const { material, as } of materials) {
    const hazardClass = hazardClassOf(labelledMaterialOf(library, material), as)
    if (hazardClass !== 'none') counts[hazardClass] += 1
  }
  return counts
}

/** Negative where `a` is the gentler: compared class by class, worst first. */
export const compareCounts = (a: HazardCounts, b: HazardCounts): number =>
  a.gravest - b.gravest || a.unknown - b.unknown || a.danger - b.danger || a.warning - b.warning
