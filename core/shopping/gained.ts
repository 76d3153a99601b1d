import type { ChargedStep } from '../route/charged.ts'
import { gainedKey, gainedUses } from './gained-uses.ts'
import type { ShelfItem } from './shelf.ts'

/** A second product of a plan, at typical yields. */
export interface Gained {
  readonly compound: string
  /** Number of the step it comes from. */
  readonly step: string
  readonly expectedG: number
}

/**
 * The shelf of a plan: second products that were moved to it stand there with what the plan expects of them now; what it no longer makes is
 * gone, and of what some step would take before it is there, only so much as the other steps take.
 *
 * @param reserve on every need, as a fraction
 */
export function withGained(
  shelf: readonly ShelfItem[],
  steps: readonly ChargedStep[],
  gained: readonly Gained[],
  reserve = 0,
): readonly ShelfItem[] {
  const { mostG } = gainedUses(shelf, steps)
  return shelf.flatMap(item => {
    if (item.gainedIn === undefined) return [item]
    const step = steps.find(s => s.transformation === item.gainedIn)
    const found = gained.find(g => g.compound === item.material && g.step === step?.number)
    if (step === undefined || found === undefined || !(found.expectedG > 0)) return []
    const most = (mostG.get(gainedKey(item.material, item.gainedIn)) ?? Number.POSITIVE_INFINITY) * (1 + reserve)
    const amount = Math.min(found.expectedG, most)
    if (amount <= 0) return []
    return [{ ...item, amount, unit: 'g' as const, place: `expected of step ${step.number} of this plan` }]
  })
}
