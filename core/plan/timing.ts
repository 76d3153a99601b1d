import type { Days } from '../days/days.ts'
import type { Kept, Timing } from '../hazards/kept.ts'
import { freeCompounds } from '../library/reference-charge.ts'
import type { ChargedStep } from '../route/charged.ts'

/**
 * What the calendar tells the hazard list. What is bought or in hand stands there from the first set-up until the last step that takes it has
 * been worked up; what is made stands there from the end of its step until the last step that takes it, and a product until the plan ends.
 * Materials of a step that has no place on the calendar have no dates.
 */
export function timingOf(steps: readonly ChargedStep[], { booked }: Pick<Days, 'booked'>): Timing {
  const spans = new Map<string, { fromH: number; toH: number; workedUp: readonly string[] }>()
  for (const step of steps) {
    const mine = booked.filter(one => one.step === step.transformation || one.step === step.number)
    if (mine.length === 0) continue
    spans.set(step.transformation, {
      fromH: Math.min(...mine.map(one => one.startH)),
      toH: Math.max(...mine.map(one => one.endH)),
      workedUp: [...new Set(mine.map(one => one.batch))].flatMap(batch => workUpDay(mine.filter(one => one.batch === batch)) ?? []),
    })
  }
  const finishH = Math.max(0, ...[...spans.values()].map(span => span.toH))
  const kept = new Map<string, Kept>()
  const undated = new Set<string>()
  const add = (material: string, own: Kept | null): void => {
    if (freeCompounds.has(material)) return
    if (own === null) undated.add(material)
    const before = kept.get(material)
    if (own !== null) kept.set(material, before ? { fromH: Math.min(before.fromH, own.fromH), toH: Math.max(before.toH, own.toH) } : own)
  }
  for (const step of steps) {
    const span = spans.get(step.transformation)
    for (const line of step.charges) {
      if (line.supply === 'free') continue
      add(line.material, span === undefined ? null : { fromH: line.supply === 'made' ? span.fromH : 0, toH: span.toH })
    }
    const stays = step.goesTo.length === 0 || step.goesTo.some(to => to.step === null)
    add(step.makes, span === undefined ? null : { fromH: span.toH, toH: stays ? finishH : span.toH })
  }
  for (const material of undated) kept.delete(material)
  const workedUp = new Map(
    steps.flatMap((step): [string, readonly string[]][] => {
      const dates = spans.get(step.transformation)?.workedUp ?? []
      return dates.length === 0 ? [] : [[step.number, dates]]
    }),
  )
  return { kept, workedUp }
}

/** The day on which hands last worked on a batch; what follows is drying. Null where the calendar has no dates. */
function workUpDay(entries: Days['booked']): string | null {
  const hands = entries.filter(one => one.kind !== 'stand')
  const last = (hands.length > 0 ? hands : entries).reduce((a, b) => (b.endH > a.endH ? b : a))
  return last.end?.slice(0, 10) ?? null
}
