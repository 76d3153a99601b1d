import type { HazardCounts } from '../../core/hazards/hazard-list.ts'

/** Counts by class, worst first: "1 gravest, 2 unknown". Zero of all is told as what it is: none assigned, which is not safe. */
export function hazardWords(counts: HazardCounts): string {
  const words = (['gravest', 'unknown', 'danger', 'warning'] as const).filter(key => counts[key] > 0).map(key => `${counts[key]} ${key}`)
  return words.length > 0 ? words.join(', ') : 'none assigned to any material, by the sources'
}
