import { BUY, type Overlay, type PartialRoutes } from './partial.ts'
import type { Space } from './space.ts'

export interface StraightDown {
  readonly space: Space
  readonly partial: PartialRoutes
  readonly target: number
  readonly overlay: Overlay | null
  /** Node, choice, node, choice ... of the partial route; what completes it is added. */
  readonly decisions: number[]
  /** Best choice for an open node; undefined = it has none. */
  readonly bestOf: (node: number) => number | undefined
  /** Asked after each look at the whole route; false ends it. */
  readonly goesOn: () => boolean
}

/**
 * Makes a partial route complete by the best choice for whatever is open, as long as it is worth no more than its bound says.
 *
 * @returns true where it stands evaluated as a complete route of that value; false where it goes round in a circle or is worth less
 */
export function straightDown(way: StraightDown): boolean {
  const { partial, decisions } = way
  let most = Number.POSITIVE_INFINITY
  for (;;) {
    partial.begin()
    for (let i = 0; i < decisions.length; i += 2) partial.decide(decisions[i]!, decisions[i + 1]!)
    const value = partial.evaluate(way.target, way.overlay, -1, 0)
    if (!(value < Number.POSITIVE_INFINITY && value <= most) || !way.goesOn()) return false
    if (partial.found.open === -1) return true
    if (most === Number.POSITIVE_INFINITY) most = value + 1e-12 * (1 + Math.abs(value))
    if (!decideBelow(way, partial.found.open)) return false
  }
}

/**
 * Decides a node for its best, and whatever has to be made below it and is not decided yet: all at once, for each look at a route as a whole
 * takes as long as the route.
 */
function decideBelow({ space, partial, decisions, bestOf }: StraightDown, node: number): boolean {
  const { network, mayBeLeaf, twin, start } = space
  const chain = twin === null ? Number.POSITIVE_INFINITY : twin.length / 2
  const stack = [node]
  for (let made = stack.pop(); made !== undefined; made = stack.pop()) {
    if (partial.isDecided(made)) continue
    const choice = bestOf(made)
    if (choice === undefined) return false
    partial.decide(made, choice)
    decisions.push(made, choice)
    if (choice === BUY) continue
    for (let u = network.bodyStart[choice]!; u < network.bodyStart[choice + 1]!; u++) {
      const x = network.body[u]!
      if (mayBeLeaf[x] === 1 || x === start) continue
      // Beside a chain nothing is decided before the chain stands, which may supply it.
      const isSupplied = x < chain && twin !== null && partial.isDecided(twin[x]!)
      if (x >= chain === made >= chain && !isSupplied) stack.push(x)
    }
  }
  return true
}
