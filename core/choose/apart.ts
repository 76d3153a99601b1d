/** How many steps two routes do not share: those of either that the other lacks, the larger of the two counts. */
export function stepsApart<Id>(a: readonly Id[], b: readonly Id[]): number {
  const inB = new Set(b)
  const shared = a.filter(step => inB.has(step)).length
  return Math.max(a.length, b.length) - shared
}

/**
 * Of routes in order, those at least `least` steps different from every one kept before. Many of the best routes differ in one far step; this
 * thins the list, and what is left is not the k best.
 *
 * @param least at least 1; with 1 every route stays
 */
export function atLeastApart<R>(routes: readonly R[], least: number, stepsOf: (route: R) => readonly unknown[]): R[] {
  if (least <= 1) return [...routes]
  const kept: R[] = []
  for (const route of routes) if (kept.every(other => stepsApart(stepsOf(other), stepsOf(route)) >= least)) kept.push(route)
  return kept
}
