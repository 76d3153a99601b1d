import type { HazardCounts } from '../../core/hazards/hazard-list.ts'
import { noBreakSpace } from '../../core/quantity/print.ts'
import type { RouteRow } from '../api/replies.ts'
import { keyOfSteps } from '../state/routes-of.ts'

/** Worst class first: fewer is gentler. Source: design 3.14, counted class by class. */
export function gentler(a: HazardCounts, b: HazardCounts): number {
  return a.gravest - b.gravest || a.unknown - b.unknown || a.danger - b.danger || a.warning - b.warning
}

/** "1 gravest, 2 unknown": counts by class, worst first; what does not occur is not told. */
export function hazardText(counts: HazardCounts): string {
  const parts = (['gravest', 'unknown', 'danger', 'warning'] as const)
    .filter(name => counts[name] > 0)
    .map(name => `${counts[name]} ${name}`)
  return parts.length === 0 ? 'none assigned' : parts.join(', ')
}

/** The two worst classes, for a narrow column. */
export const hazardBrief = (counts: HazardCounts): string =>
  hazardText(counts)
    .split(', ')
    .slice(0, 2)
    .map(part => part.replace(' ', noBreakSpace))
    .join(', ')

/** Steps in which a route differs from another: what it is called by beside it. */
export function differing(row: readonly string[], others: readonly (readonly string[])[]): readonly string[] {
  const shared = new Set(row.filter(id => others.every(other => other.includes(id))))
  const own = row.filter(id => !shared.has(id))
  return own.length === 0 ? row.slice(-1) : own
}

/** What the heading says beside the chosen way: how many points of yield another would give, or that it is the first on its axis. */
export interface WayAnswer {
  /** Steps by which the chosen way is named. */
  readonly chosen: readonly string[]
  readonly gentlest: boolean
  readonly ways: number
  /** Another way with the better yield on start, and by how many points. */
  readonly better: { readonly steps: readonly string[]; readonly points: number } | null
}

export function wayAnswer(chosen: readonly string[], rows: readonly RouteRow[]): WayAnswer {
  const own = rows.find(row => keyOfSteps(row.steps) === keyOfSteps(chosen))
  const others = rows.filter(row => row !== own)
  const all = rows.map(row => row.steps)
  const gentlest = own !== undefined && others.length > 0 && others.every(row => gentler(own.hazard, row.hazard) < 0)
  // A way that buys what this one makes is no fair measure of its yield; where all others do, they have to serve.
  const alike = own === undefined ? others : others.filter(row => keyOfSteps(row.made) === keyOfSteps(own.made))
  const best = (alike.length > 0 ? alike : others).reduce<RouteRow | null>(
    (top, row) => (top === null || row.overallYieldOnStart > top.overallYieldOnStart ? row : top),
    null,
  )
  const points = own === undefined || best === null ? 0 : (best.overallYieldOnStart - own.overallYieldOnStart) * 100
  return {
    chosen: differing(chosen, all.length > 1 ? all : [[]]),
    gentlest,
    ways: rows.length,
    better: best !== null && points >= 0.05 ? { steps: differing(best.steps, own === undefined ? all : [own.steps]), points } : null,
  }
}

/** What a way makes that another does not, and what it buys that the other makes. Ids. */
export function madeOtherwise(
  row: RouteRow,
  other: Pick<RouteRow, 'made'>,
): { readonly makes: readonly string[]; readonly buys: readonly string[] } {
  return { makes: row.made.filter(id => !other.made.includes(id)), buys: other.made.filter(id => row.bought.includes(id)) }
}
