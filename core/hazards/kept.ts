/** From when to when something stands in the cabinet, hours from the first set-up. */
export interface Kept {
  readonly fromH: number
  readonly toH: number
}

/** What the calendar tells the hazard list: how long materials are kept, and on which day each step is worked up. */
export interface Timing {
  readonly kept: ReadonlyMap<string, Kept>
  /** By step number the ISO date of each batch; a step that is not placed is absent. */
  readonly workedUp: ReadonlyMap<string, readonly string[]>
}

/** Hours as days of storage: what stands there at all stands there a day. */
const wholeDays = (hours: number): number => Math.max(1, Math.ceil(hours / 24 - 1e-9))

export const daysKept = (timing: Timing | null, material: string): number | null => {
  const kept = timing?.kept.get(material)
  return kept === undefined ? null : wholeDays(kept.toH - kept.fromH)
}

/**
 * The longest that any of the one stands beside any of the other, in whole days; 0 where they never do, null where one of them has no dates:
 * then they may.
 */
export function daysTogether(timing: Timing | null, some: readonly string[], others: readonly string[]): number | null {
  if (timing === null) return null
  let most = 0
  for (const one of some) {
    for (const other of others) {
      if (one === other) continue
      const [a, b] = [timing.kept.get(one), timing.kept.get(other)]
      if (a === undefined || b === undefined) return null
      const together = Math.min(a.toH, b.toH) - Math.max(a.fromH, b.fromH)
      if (together >= 0) most = Math.max(most, wholeDays(together))
    }
  }
  return most
}
