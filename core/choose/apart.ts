/** How many steps two routes do not share: those of either that the other lacks, the larger of the two counts. */
export function stepsApart(a: readonly string[], b: readonly string[]): number {
  const inB = new Set(b)
  const shared = a.filter(step => inB.has(step)).length
  return Math.max(a.length, b.length) - shared
}

/**
 * Of routes in order, those at least `steps` steps different from every one kept before. Many of the best routes differ in one far step; this
 * thins the list, and what is left is not the k best.
 *
 * @param steps at least 1; with 1 every route stays
 */
export function atLeastApart<R extends { readonly steps: readonly string[] }>(routes: readonly R[], steps: number): R[] {
  const kept: R[] = []
  for (const route of routes) if (kept.every(other => stepsApart(other.steps, route.steps) >= steps)) kept.push(route)
  return kept
}
