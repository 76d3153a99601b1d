/** An activity of a network: how long it takes and what must be done before. */
export interface Activity {
  readonly id: string
  readonly hours: number
  readonly after: readonly string[]
}

export interface CriticalPath {
  readonly hours: number
  readonly earlyStart: ReadonlyMap<string, number>
  readonly totalFloat: ReadonlyMap<string, number>
  /** One longest chain, first to last; of equally long ones the smallest id at each turn. */
  readonly chain: readonly string[]
}

/** Sums of hours that differ by less than this are equal. */
const equalH = 1e-9

/**
 * The critical path method: earliest starts forwards, latest backwards, with unlimited hands.
 *
 * @param activities in working order: whatever one comes after stands before it
 * @throws RangeError for an activity that comes after an unknown or later one: our mistake
 * Source: Kelley and Walker's critical path method as in any textbook; checked against worked examples in print.
 */
export function criticalPath(activities: readonly Activity[]): CriticalPath {
  const earlyStart = new Map<string, number>()
  const hoursOf = new Map<string, number>()
  for (const { id, hours, after } of activities) {
    let start = 0
    for (const before of after) {
      const begun = earlyStart.get(before)
      if (begun === undefined) throw new RangeError(`${id} comes after ${before}, which does not stand before it`)
      start = Math.max(start, begun + hoursOf.get(before)!)
    }
    earlyStart.set(id, start)
    hoursOf.set(id, hours)
  }
  const hours = activities.reduce((most, a) => Math.max(most, earlyStart.get(a.id)! + a.hours), 0)
  const lateStart = new Map<string, number>()
  for (const { id, hours: own, after } of [...activities].reverse()) {
    const start = lateStart.get(id) ?? hours - own
    lateStart.set(id, start)
    for (const before of after) {
      const latest = start - hoursOf.get(before)!
      lateStart.set(before, Math.min(latest, lateStart.get(before) ?? Number.POSITIVE_INFINITY))
    }
  }
  const totalFloat = new Map(activities.map(({ id }) => [id, lateStart.get(id)! - earlyStart.get(id)!]))
  return { hours, earlyStart, totalFloat, chain: chainOf(activities, earlyStart, hours) }
}

/** Back from the end: each time what ended just when its successor began. */
function chainOf(activities: readonly Activity[], earlyStart: ReadonlyMap<string, number>, hours: number): readonly string[] {
  const byId = new Map(activities.map(a => [a.id, a]))
  const endOf = (id: string) => earlyStart.get(id)! + byId.get(id)!.hours
  const smallest = (ids: readonly string[]) => [...ids].sort((a, b) => (a < b ? -1 : 1))[0]
  const chain: string[] = []
  let at = smallest(activities.filter(a => endOf(a.id) > hours - equalH).map(a => a.id))
  while (at !== undefined) {
    chain.unshift(at)
    const { after } = byId.get(at)!
    const start = earlyStart.get(at)!
    at = smallest(after.filter(before => endOf(before) > start - equalH))
  }
  return chain
}
