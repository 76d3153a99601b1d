import type { Material } from './material.ts'
import type { Source } from './source.ts'
import type { Transformation } from './transformation.ts'

/** How sure a figure is: read in a source, remembered, measured at this bench, or not known at all. */
export const trusts = ['seen', 'remembered', 'own bench', 'unknown'] as const
export type Trust = (typeof trusts)[number]

/** A source that is the bench's own notebook. Written so by the entry page; any citation that begins like this counts. */
export const ownBench = 'own bench'
const isOwnBench = ({ citation }: Source): boolean => citation.toLowerCase().startsWith(ownBench)

/** Sources that say anything of this figure: those that name it, or that name nothing in particular. */
export const sourcesFor = (sources: readonly Source[], figure: string): readonly Source[] =>
  sources.filter(source => source.for === undefined || source.for.includes(figure))

const trustOf = (sources: readonly Source[]): Trust =>
  sources.some(isOwnBench) ? 'own bench' : sources.some(source => source.checked) ? 'seen' : 'remembered'

/** How sure the charge and yield of a transformation are. */
export function trustInYield({ sources, confidence }: Transformation): Trust {
  if (sources.some(isOwnBench)) return 'own bench'
  return confidence === 'checked' ? 'seen' : 'remembered'
}

/** How sure the hazards of a material are; an empty list that is only remembered is unknown. */
export function trustInHazards({ hazards, sources }: Material): Trust {
  if (hazards === undefined) return 'unknown'
  const remembered = hazards.from === undefined || /^(from )?memory\b/i.test(hazards.from)
  if (remembered) return hazards.codes.length === 0 ? 'unknown' : 'remembered'
  return hazards.from!.toLowerCase().startsWith(ownBench) ? 'own bench' : trustOf(sources) === 'own bench' ? 'own bench' : 'seen'
}

/** How sure the density of a material is. */
export function trustInDensity({ densityGPerMl, sources }: Material): Trust {
  return densityGPerMl === undefined ? 'unknown' : trustOf(densitySources(sources))
}

/** Sources of a density: those that name it, or the properties it is one of. */
export const densitySources = (sources: readonly Source[]): readonly Source[] =>
  sources.filter(source => source.for === undefined || /\b(?:density|properties)\b/.test(source.for))
