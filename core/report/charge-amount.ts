import { type Library, materialOf } from '../library/library.ts'
import type { Transformation } from '../library/transformation.ts'
import { massText, volumeText } from '../quantity/print.ts'
import type { ChargedLine } from '../route/charged.ts'

/**
 * What goes in, in one unit wherever it is told: liquids and solutions are poured by volume, and so is what the source gives by volume; all else is
 * weighed, and so is the start and what was made on the way, which were weighed before. Three figures.
 *
 * @param batches divides the line; 1 for all of them together
 * @returns null for what the source leaves open
 */
export function chargeAmountText(library: Library, transformation: Transformation, line: ChargedLine, batches = 1): string | null {
  const { massG, volumeMl } = line
  if (volumeMl !== null && (massG === null || isPoured(library, transformation, line))) return volumeText(volumeMl / batches)
  return massG === null ? null : massText(massG / batches)
}

function isPoured(library: Library, transformation: Transformation, line: ChargedLine): boolean {
  if (line.supply === 'start' || line.supply === 'made') return false
  const own = line.line === null ? undefined : transformation.charge[line.line]
  const { form } = materialOf(library, line.material)
  return form === 'liquid' || form === 'solution' || own?.unit === 'mL' || own?.unit === 'L'
}
