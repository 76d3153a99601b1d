import type { Library } from '../library/library.ts'
import { type Physical, trustInPhysical } from '../library/physical.ts'
import type { Trust } from '../library/trust.ts'

/** " (remembered)": how sure a figure of a material is, to stand right behind it in a sentence; empty where the record does not state it. */
export function sureInBrackets(library: Library, material: string, figure: Physical): string {
  const record = library.materials.get(material)
  if (record === undefined) return ''
  const trust = trustInPhysical(record, figure)
  return trust === 'unknown' ? '' : ` (${trust})`
}

/** How sure the exposure limit of a material is. */
export const exposureMark = (library: Library, material: string): Trust => {
  const record = library.materials.get(material)
  return record === undefined ? 'unknown' : trustInPhysical(record, 'exposure limit')
}

/** "Exposure limit 2 ppm, never above (Ontario) (seen)." with how sure it is; empty where none is known. */
export const exposureTold = (
  library: Library,
  { material, exposureLimit }: { readonly material: string; readonly exposureLimit: string | null },
) =>
  exposureLimit === null
    ? ''
    : `Exposure limit ${exposureLimit}${sureInBrackets(library, material, 'exposure limit').replace(' (', ', ').replace(')', '')}.`
