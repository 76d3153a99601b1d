import { slackH } from './bench-time.ts'
import type { Order, Times, TimetableInput, VesselUse } from './timetable-input.ts'

/** The ways to resolve the first conflict in time, each an order of two tasks; null where hands, heat and vessels suffice. */
export function firstConflict(input: TimetableInput, times: Times): readonly Order[] | null {
  const found = [handsConflict(input, times), heatConflict(input, times), vesselConflict(input, times)].filter(c => c !== null)
  if (found.length === 0) return null
  return found.reduce((first, other) => (other.at < first.at ? other : first)).ways
}

function handsConflict({ tasks }: TimetableInput, { starts, ends }: Times): Conflict | null {
  const order = tasks
    .flatMap((task, index) => (task.hands && task.hours > 0 ? [index] : []))
    .sort((a, b) => starts[a]! - starts[b]! || a - b)
  let busy: number | null = null
  for (const index of order) {
    if (busy !== null && starts[index]! < ends[busy]! - slackH)
      return { at: starts[index]!, ways: bothWays([busy], [index], (a, b) => [a, b]) }
    if (busy === null || ends[index]! > ends[busy]!) busy = index
  }
  return null
}

function heatConflict({ tasks, heatSources }: TimetableInput, { starts, ends }: Times): Conflict | null {
  if (heatSources === null) return null
  const order = tasks
    .flatMap((task, index) => (task.heated && task.hours > 0 ? [index] : []))
    .sort((a, b) => starts[a]! - starts[b]! || a - b)
  for (const [position, index] of order.entries()) {
    const running = order.slice(0, position).filter(other => ends[other]! > starts[index]! + slackH)
    if (running.length < Math.max(1, heatSources)) continue
    return { at: starts[index]!, ways: bothWays(running, [index], (a, b) => [a, b]) }
  }
  return null
}

function vesselConflict({ vesselUses, vesselCounts }: TimetableInput, { starts, ends }: Times): Conflict | null {
  const order = vesselUses.filter(use => use.fits.length > 0).sort((a, b) => starts[a.first]! - starts[b.first]! || a.first - b.first)
  for (const [position, use] of order.entries()) {
    const running = order.slice(0, position).filter(other => ends[other.last]! > starts[use.first]! + slackH)
    if (running.length === 0 || allFit([...running, use], vesselCounts)) continue
    return { at: starts[use.first]!, ways: bothWays(running, [use], (a, b) => [a.last, b.first]) }
  }
  return null
}

interface Conflict {
  readonly at: number
  readonly ways: readonly Order[]
}

/** Of all that meet, some pair must come one after the other: every pair, both ways. */
function bothWays<T>(
  running: readonly T[],
  more: readonly T[],
  pair: (before: T, after: T) => readonly [number, number],
): readonly Order[] {
  const all = [...running, ...more]
  return all.flatMap((a, i) =>
    all.flatMap((b, j) => {
      const [from, to] = pair(a, b)
      return i === j ? [] : [{ from, to, since: 'end' as const }]
    }),
  )
}

/** Does each find a vessel of its own? Augmenting paths over so few that nothing better pays. */
function allFit(uses: readonly VesselUse[], counts: readonly number[]): boolean {
  const takers: number[][] = counts.map(() => [])
  const place = (use: number, tried: Set<number>): boolean => {
    for (const vessel of uses[use]!.fits) {
      if (tried.has(vessel)) continue
      tried.add(vessel)
      const held = takers[vessel]!
      if (held.length < counts[vessel]!) {
        held.push(use)
        return true
      }
      for (const [at, other] of held.entries())
        if (place(other, tried)) {
          held[at] = use
          return true
        }
    }
    return false
  }
  return uses.every((_, use) => place(use, new Set()))
}
