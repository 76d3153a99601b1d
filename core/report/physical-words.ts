import type { Library } from '../library/library.ts'
import { type Physical, trustInPhysical } from '../library/physical.ts'

/** " (remembered)": how sure a figure of a material is, to stand right behind it in a sentence; empty where the record does not state it. */
export function sureInBrackets(library: Library, material: string, figure: Physical): string {
  const record = library.materials.get(material)
  if (record === undefined) return ''
  const trust = trustInPhysical(record, figure)
  return trust === 'unknown' ? '' : ` (${trust})`
}

/** "Exposure limit 2 ppm, never above (Ontario) (seen)." with how sure it is; empty where none is known. */
export const exposureTold = (
  library: Library,
  { material, exposureLimit }: { readonly material: string; readonly exposureLimit: string | null },
) =>
  exposureLimit === null
    ? ''
    : `Exposure limit ${exposureLimit}${sureInBrackets(library, material, 'exposure limit').replace(' (', ', ').replace(')', '')}.`
