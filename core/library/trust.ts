import type { Material } from './material.ts'
import type { Source } from './source.ts'
import type { Transformation } from './transformation.ts'

/** How sure a figure is: read in a source, remembered, measured at this bench, made up for a demonstration, or not known at all. */
export const trusts = ['seen', 'remembered', 'own bench', 'invented', 'unknown'] as const
export type Trust = (typeof trusts)[number]

/** A source that is the bench's own notebook. Written so by the entry page; any citation that begins like this counts. */
export const ownBench = 'own bench'
export const isOwnBench = ({ citation }: Source): boolean => citation.toLowerCase().startsWith(ownBench)

/** Sources that say anything of this figure: those that name it, or that name nothing in particular. */
export const sourcesFor = (sources: readonly Source[], figure: string): readonly Source[] =>
  sources.filter(source => source.for === undefined || source.for.includes(figure))

export const trustOf = (sources: readonly Source[]): Trust =>
  sources.some(isOwnBench) ? 'own bench' : sources.some(source => source.checked) ? 'seen' : 'remembered'

/** How the text of a `from` begins whose figure is only remembered. */
export const fromMemory = /^(from )?memory\b/i

/** How sure the yield of a transformation is. A range from memory is remembered, though its charges were seen. */
export function trustInYield({ sources, confidence, yieldPercent }: Transformation): Trust {
  if (sources.some(isOwnBench)) return 'own bench'
  return confidence === 'checked' && !fromMemory.test(yieldPercent.from ?? '') ? 'seen' : 'remembered'
}

/** The least sure of several yields: what an overall yield that rests on them is no surer than. */
export function leastSureYield(transformations: readonly Transformation[]): Trust {
  const sure = new Set(transformations.map(trustInYield))
  return sure.has('remembered') ? 'remembered' : sure.has('own bench') ? 'own bench' : 'seen'
}

/** How sure the hazards of a material are; an empty list that is only remembered is unknown. */
export function trustInHazards({ hazards, sources }: Pick<Material, 'hazards' | 'sources'>): Trust {
  if (hazards === undefined) return 'unknown'
  const remembered = hazards.from === undefined || fromMemory.test(hazards.from)
  if (remembered) return hazards.codes.length === 0 ? 'unknown' : 'remembered'
  if (hazards.from!.toLowerCase().startsWith(ownBench)) return 'own bench'
  // Who entered the record speaks for its hazards only where no source names them.
  const named = sources.filter(source => source.for?.includes('hazards'))
  return trustOf(named.length > 0 ? named : sourcesFor(sources, 'hazards')) === 'own bench' ? 'own bench' : 'seen'
}
