import type { Settings } from './settings.ts'

type Range = Settings['yields'][string]

/**
 * A range with one end rewritten, the two others moved along where it passes them, so that low, typical and high stay in order.
 *
 * @param percent of theory, or g per 100 g of feedstock
 * @returns null for what is no percentage above 0 and at most 100
 */
export function withEnd(range: Range, end: keyof Range, percent: number): Range | null {
  if (!(percent > 0 && percent <= 100)) return null
  if (end === 'low') return { low: percent, typical: Math.max(percent, range.typical), high: Math.max(percent, range.high) }
  if (end === 'high') return { low: Math.min(percent, range.low), typical: Math.min(percent, range.typical), high: percent }
  return { low: Math.min(percent, range.low), typical: percent, high: Math.max(percent, range.high) }
}
