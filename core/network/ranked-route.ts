export interface RankedRoute {
  /** Arcs of the library's network, in order. */
  readonly arcs: readonly number[]
  readonly value: number
}

/** By steps, then by ids of the arcs in order; a route found along two chains comes once. */
export function inOrder(tied: readonly RankedRoute[]): RankedRoute[] {
  const sorted = [...tied].sort((a, b) => compareArcs(a.arcs, b.arcs))
  return sorted.filter((route, i) => i === 0 || compareArcs(route.arcs, sorted[i - 1]!.arcs) !== 0)
}

export function compareArcs(a: readonly number[], b: readonly number[]): number {
  if (a.length !== b.length) return a.length - b.length
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! - b[i]!
  return 0
}
