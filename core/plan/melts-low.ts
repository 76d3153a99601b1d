import type { Library } from '../library/library.ts'
import type { LogEntry } from './plan.ts'

/** Two thermometers may differ by this, C; common practice, no source. */
const thermometersC = 2

/**
 * Does a logged product start to melt clearly below its known melting point? What is in it besides lowers and widens the range; without an assay it was
 * taken as pure.
 *
 * @returns the known melting point, C; null where nothing speaks against purity, or an assay says how pure it is
 */
export function meltsBelowC(library: Library, { step, meltingC, purity }: LogEntry): number | null {
  const product = library.transformations.get(step)?.mainProduct
  const known = product === undefined ? undefined : library.materials.get(product)?.meltingC
  if (meltingC === undefined || purity !== null || known === undefined) return null
  return meltingC[0] < known - thermometersC ? known : null
}
