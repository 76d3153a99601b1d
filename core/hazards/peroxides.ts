import { type Library, materialOf } from '../library/library.ts'
import { isBuyable } from '../library/material.ts'
import type { ChargedStep } from '../route/charged.ts'
import type { PeroxideLine } from './hazard-list.ts'
import type { HazardTables } from './tables.ts'

/** A bottle on the shelf, as far as its age matters. */
export interface Bottle {
  readonly material: string
  readonly opened?: string | undefined
  readonly place?: string | undefined
}

/** The day so many months after a date; a month without its day begins with it. Null for what is no date. */
export function monthsAfter(date: string, months: number): string | null {
  const read = /^(\d{4})-(\d{2})(?:-(\d{2}))?$/.exec(date)
  if (read === null) return null
  const month = Number(read[1]) * 12 + Number(read[2]) - 1 + months
  const [year, inYear] = [Math.floor(month / 12), month % 12]
  // The 31st of a short month would be a day of the next one: the last day of its own is meant.
  const days = [31, year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
  const day = Math.min(Number(read[3] ?? 1), days[inYear] ?? 31)
  return [String(year).padStart(4, '0'), String(inYear + 1).padStart(2, '0'), String(day).padStart(2, '0')].join('-')
}

/**
 * Peroxide formers that the plan charges or makes, each with the bottles of it on the shelf and the day by which each is tested or thrown
 * out, counted from its opening. A bottle without an opening date is overdue: nobody knows how long it has stood open.
 *
 * @param today ISO date that decides what is overdue; null = not known, then a dated bottle is neither
 */
export function peroxideLines(
  library: Library,
  tables: HazardTables,
  steps: readonly ChargedStep[],
  shelf: readonly Bottle[],
  today: string | null,
): readonly PeroxideLine[] {
  const used = new Map<string, Set<string>>()
  for (const step of steps)
    for (const id of [step.makes, ...step.charges.map(line => line.material)])
      if (materialOf(library, id).peroxideClass !== undefined) used.set(id, (used.get(id) ?? new Set()).add(step.number))
  return [...used].map(([id, numbers]) => {
    const material = materialOf(library, id)
    const known = tables.peroxideClasses[material.peroxideClass ?? '']
    // A class that the tables do not hold is treated as the strictest.
    const months = known?.testIntervalMonths ?? 3
    return {
      material: id,
      class: material.peroxideClass ?? '',
      action: known?.action ?? 'test before use',
      testAfterMonths: months,
      steps: [...numbers],
      bottles: shelf
        .filter(bottle => bottle.material === id)
        .map(({ opened, place }) => {
          const testBy = opened === undefined ? null : monthsAfter(opened, months)
          return {
            opened: opened ?? null,
            place: place ?? null,
            testBy,
            overdue: testBy === null ? true : today === null ? null : testBy < today,
          }
        }),
      mayBeBought: isBuyable(material),
    }
  })
}
