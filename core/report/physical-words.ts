import { physicalSource } from '../library/figure-trust.ts'
import type { Library } from '../library/library.ts'
import type { Marked } from '../library/mark.ts'
import { type Physical, physicalFigures, trustInPhysical } from '../library/physical.ts'

/** " (remembered)": how sure a figure of a material is, to stand right behind it in a sentence; empty where the record does not state it. */
export function sureInBrackets(library: Library, material: string, figure: Physical): string {
  const record = library.materials.get(material)
  if (record === undefined) return ''
  const trust = trustInPhysical(record, figure)
  return trust === 'unknown' ? '' : ` (${trust})`
}

/** An exposure limit as it is told, with its mark: "Exposure limit 2 ppm, never above (Ontario)"; null where none is known. */
export function exposureTold(
  library: Library,
  { material, exposureLimit }: { readonly material: string; readonly exposureLimit: string | null },
): { readonly text: string; readonly sure: Marked } | null {
  const record = library.materials.get(material)
  if (exposureLimit === null || record === undefined) return null
  const figure = physicalFigures(record).find(one => one.figure === 'exposure limit')
  const sure = figure === undefined ? ({ mark: 'unknown', source: null } as const) : { mark: figure.trust, source: physicalSource(figure) }
  return { text: `Exposure limit ${exposureLimit}`, sure }
}
