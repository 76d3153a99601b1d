import { fromMemory, namesAssigner, namesSources } from './from-words.ts'
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

/** What speaks for a figure that differs from the record it stands over, which names no source of its own for it. */
export const unsourced = 'changed without a source that was read'
const changes = new RegExp(`^(from the (table|file) |${unsourced})`)

/** Sources that speak for a figure now: one that a change gave it speaks alone, since the others give the figure as it was. */
export function lastWord(sources: readonly Source[]): readonly Source[] {
  const changed = sources.filter(({ citation, checked }) => !checked && changes.test(citation))
  return changed.length > 0 ? changed : sources
}

export function trustOf(sources: readonly Source[]): Trust {
  const speaking = lastWord(sources)
  return speaking.some(isOwnBench) ? 'own bench' : speaking.some(source => source.checked) ? 'seen' : 'remembered'
}

/** How sure the yield of a transformation is. A range from memory is remembered, though its charges were seen. */
export function trustInYield({ sources, confidence, yieldPercent }: Transformation): Trust {
  const { from } = yieldPercent
  if (from === unsourced) return 'remembered'
  if (sources.some(isOwnBench) || from?.toLowerCase().startsWith(ownBench)) return 'own bench'
  return confidence === 'checked' && (from === undefined || namesSources(from, sources)) ? 'seen' : 'remembered'
}

/** The least sure of several yields: what an overall yield that rests on them is no surer than. */
export function leastSureYield(transformations: readonly Transformation[]): Trust {
  const sure = new Set(transformations.map(trustInYield))
  return sure.has('remembered') ? 'remembered' : sure.has('own bench') ? 'own bench' : 'seen'
}

/** How sure the hazards of a material are; an empty list that is only remembered is unknown. */
export function trustInHazards({ hazards, sources }: Pick<Material, 'hazards' | 'sources'>): Trust {
  if (hazards === undefined) return 'unknown'
  const { codes, from = '' } = hazards
  if (from.toLowerCase().startsWith(ownBench)) return 'own bench'
  if (fromMemory.test(from) || !namesAssigner(from, sources)) return codes.length === 0 ? 'unknown' : 'remembered'
  // Who entered the record speaks for its hazards only where no source names them.
  const named = sources.filter(source => source.for?.includes('hazards'))
  return trustOf(named.length > 0 ? named : sourcesFor(sources, 'hazards')) === 'own bench' ? 'own bench' : 'seen'
}
