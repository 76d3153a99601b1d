import { labelsOf } from '../../../core/network/best.ts'
import type { Space } from '../../../core/network/space.ts'

/**
 * The k best values by branching on the best route with a fresh run of labels for each branch: a plain way that shares nothing of the ranked
 * search but the labels. A branch fixes the makers before one place of the best route, and forbids the maker at that place.
 *
 * Source of the method: Nielsen, Andersen, Pretolani, Comput. Oper. Res. 32 (2005).
 */
export function branchingValues(space: Space, target: number, k: number): number[] {
  interface Branch {
    readonly forbidden: ReadonlySet<number>
    readonly value: number
    readonly order: readonly number[]
  }
  const { network } = space
  const solve = (forbidden: ReadonlySet<number>): Branch | null => {
    const masked = space.masked.slice()
    for (const a of forbidden) masked[a] = 1
    const { value, best } = labelsOf({ ...space, masked })
    if (value[target] === Number.POSITIVE_INFINITY) return null
    const order: number[] = []
    const seen = new Set<number>()
    const walk = (c: number): void => {
      if (seen.has(c) || space.mayBeLeaf[c]) return
      seen.add(c)
      order.push(best[c]!)
      for (let u = network.bodyStart[best[c]!]!; u < network.bodyStart[best[c]! + 1]!; u++) walk(network.body[u]!)
    }
    walk(target)
    return { forbidden, value: value[target]!, order }
  }
  const open = [solve(new Set())].filter(branch => branch !== null)
  const values: number[] = []
  while (values.length < k && open.length > 0) {
    open.sort((a, b) => b.value - a.value)
    const best = open.pop()!
    values.push(best.value)
    const forbidden = new Set(best.forbidden)
    for (const arc of best.order) {
      const branch = solve(new Set([...forbidden, arc]))
      if (branch !== null) open.push(branch)
      // From here on this compound is made by this arc alone.
      const head = network.head[arc]!
      for (let i = network.makerStart[head]!; i < network.makerStart[head + 1]!; i++) {
        if (network.makers[i] !== arc) forbidden.add(network.makers[i]!)
      }
    }
  }
  return values
}
