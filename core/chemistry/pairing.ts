/**
 * Whether every vertex of a graph can be given a partner of its own along one of its edges.
 *
 * Grows augmenting paths and shrinks odd rings (the blossom algorithm): an odd ring, of which the common ones of chemistry are full, hides a
 * path from a plain search.
 *
 * Source: J. Edmonds, Paths, trees, and flowers, Canad. J. Math. 17 (1965) 449.
 *
 * @param partnersOf  of each vertex, the vertices it has an edge to
 */
export function canAllPair(partnersOf: readonly (readonly number[])[]): boolean {
  const mate = partnersOf.map(() => -1)
  return partnersOf.every((_, vertex) => mate[vertex] !== -1 || augment(partnersOf, mate, vertex))
}

/** Gives one more vertex a partner, changing the partners of others; false where that cannot be. */
function augment(partnersOf: readonly (readonly number[])[], mate: number[], root: number): boolean {
  const parent = partnersOf.map(() => -1)
  const base = partnersOf.map((_, vertex) => vertex)
  const reached = new Set([root])
  const queue = [root]

  const commonBase = (one: number, other: number): number => {
    const passed = new Set<number>()
    for (let at = base[one]!; ; at = base[parent[mate[at]!]!]!) {
      passed.add(at)
      if (mate[at] === -1) break
    }
    let at = base[other]!
    while (!passed.has(at)) at = base[parent[mate[at]!]!]!
    return at
  }
  const markRing = (from: number, top: number, below: number, ring: Set<number>): void => {
    let [at, child] = [from, below]
    while (base[at] !== top) {
      ring.add(base[at]!).add(base[mate[at]!]!)
      parent[at] = child
      child = mate[at]!
      at = parent[child]!
    }
  }

  for (let vertex = queue.shift(); vertex !== undefined; vertex = queue.shift())
    for (const next of partnersOf[vertex]!) {
      if (base[vertex] === base[next] || mate[vertex] === next) continue
      if (next === root || (mate[next] !== -1 && parent[mate[next]!] !== -1)) {
        const top = commonBase(vertex, next)
        const ring = new Set<number>()
        markRing(vertex, top, next, ring)
        markRing(next, top, vertex, ring)
        for (const [at, own] of base.entries())
          if (ring.has(own)) {
            base[at] = top
            if (!reached.has(at)) {
              reached.add(at)
              queue.push(at)
            }
          }
      } else if (parent[next] === -1) {
        parent[next] = vertex
        const beyond = mate[next]!
        if (beyond === -1) {
          for (let at = next; at !== -1; ) {
            const before = parent[at]!
            const further = mate[before]!
            mate[at] = before
            mate[before] = at
            at = further
          }
          return true
        }
        reached.add(beyond)
        queue.push(beyond)
      }
    }
  return false
}
