import type { HazardClass, HazardCounts, HazardSummary, LabelledMaterial } from './hazard-list.ts'

/**
 * Labels taken together: a step or a plan is as dangerous as what it holds. The word is null, not known, where something is unknown and
 * nothing that is known asks for Danger already: no list calls itself harmless while anything is unknown.
 */
export function summaryOf(materials: readonly Pick<LabelledMaterial, 'class' | 'signalWord' | 'pictograms'>[]): HazardSummary {
  const count = (wanted: HazardClass): number => materials.filter(one => one.class === wanted).length
  const counts: HazardCounts = { gravest: count('gravest'), unknown: count('unknown'), danger: count('danger'), warning: count('warning') }
  const words = new Set(materials.map(one => one.signalWord))
  const word = words.has('Danger') ? 'Danger' : counts.unknown > 0 ? null : words.has('Warning') ? 'Warning' : 'none'
  return { counts, signalWord: word, pictograms: [...new Set(materials.flatMap(one => one.pictograms))].sort() }
}
