import { Heap } from './heap.ts'
import { lesser, type Space } from './space.ts'

/** The best value of making each node, and how; or a circle that makes more of itself. */
export interface Labels {
  /** Infinity where nothing makes it. A leaf has a label too where it can be made. */
  readonly value: Float64Array
  readonly best: Int32Array
  /** Nodes of a circle in which one round gives back more than it took; null in sound data. */
  readonly circle: readonly number[] | null
}

/**
 * Equal within rounding: a circle of coefficients that multiply to exactly one (a half, then two) would otherwise be re-opened for the
 * last bit of a sum. Far below the 1e-9 at which routes count as tied.
 */
export const slack = 1 - 1e-12

/** More re-openings of one compound than this happen only in a circle that gains (12 in 5,000 compounds were seen in sound networks). */
const mostReopenings = 50

/** What arc `a` is worth with the labels as they stand; Infinity while a reactant can be neither bought nor made. */
export function arcValue(space: Space, labels: Float64Array, a: number): number {
  const { network, factor, leaf, made, own } = space
  const { bodyStart, body } = network
  const sum = space.form === 'sum'
  let value = 0
  for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++) {
    const part = lesser(factor[u]! * labels[body[u]!]! + made[u]!, leaf[u]!)
    if (sum) value += part
    else if (part > value) value = part
  }
  return own[a]! + value
}

/**
 * Best value for every compound at once: Knuth's generalisation of Dijkstra to arcs with several reactants. The cheapest open compound is
 * final as long as no part counts less than itself; where a coefficient is below one a label may fall again, and the compound is re-opened.
 *
 * Source: Knuth, Inf. Process. Lett. 6 (1977) 1.
 */
export function labelsOf(space: Space): Labels {
  const { network, masked, leaf, mayBeLeaf, factor, made, own } = space
  const { head, bodyStart, body, useStart, uses, users, userHeads } = network
  const isSum = space.form === 'sum'
  const n = useStart.length - 1
  const m = head.length
  const value = new Float64Array(n).fill(Number.POSITIVE_INFINITY)
  const best = new Int32Array(n).fill(-1)
  const settled = new Uint8Array(n)
  // As long as no part counts less than itself, nothing that comes out of the heap later can lower what is settled.
  let superior = true
  let adds = false
  let largest = 0
  for (let a = 0; a < m; a++) largest = Math.max(largest, bodyStart[a + 1]! - bodyStart[a]!)
  // One byte an arc as long as that will do: a million arcs then fit into the second cache.
  const never = largest < 255 ? 255 : 65535
  const waiting = largest < 255 ? new Uint8Array(m) : new Uint16Array(m)
  const heap = new Heap(1024)

  for (let a = 0; a < m; a++) {
    if (masked[a]) {
      waiting[a] = never
      continue
    }
    let missing = 0
    for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++) {
      if (leaf[u] === Number.POSITIVE_INFINITY) missing++
      if (factor[u]! < 1) superior = false
      if (made[u] !== 0) adds = true
    }
    waiting[a] = missing
    if (missing > 0) continue
    const offered = arcValue(space, value, a)
    const h = head[a]!
    if (offered < value[h]!) {
      value[h] = offered
      best[h] = a
      heap.push(offered, h)
    }
  }
  while (heap.size > 0) {
    const key = heap.minKey
    const c = heap.pop()
    if (key > value[c]!) continue
    const before = settled[c]!
    if (before > mostReopenings) return { value, best, circle: circleFrom(space, best, c) }
    settled[c] = before + 1
    const first = before === 0
    const needed = mayBeLeaf[c] === 0
    for (let k = useStart[c]!, end = useStart[c + 1]!; k < end; k++) {
      const h = userHeads[k]!
      if (superior && value[h]! <= key) continue
      const a = users[k]!
      const missing = waiting[a]!
      if (missing === never) continue
      if (first && missing > 0 && (needed || leaf[uses[k]!] === Number.POSITIVE_INFINITY)) waiting[a] = missing - 1
      if (waiting[a] !== 0) continue
      // The same as arcValue, written out and spared what need not be looked up: this is the innermost loop of everything.
      let parts = 0
      for (let u = bodyStart[a]!, last = bodyStart[a + 1]!; u < last; u++) {
        const x = body[u]!
        let part = factor[u]! * value[x]!
        if (adds) part += made[u]!
        if (mayBeLeaf[x] === 1) part = lesser(part, leaf[u]!)
        if (isSum) parts += part
        else if (part > parts) parts = part
      }
      const offered = own[a]! + parts
      if (offered < value[h]! * slack) {
        value[h] = offered
        best[h] = a
        heap.push(offered, h)
      }
    }
  }
  return { value, best, circle: null }
}

/** Walks the best makers from a node that fell too often, each time through the reactant whose label counts most, until a node returns. */
function circleFrom(space: Space, best: Int32Array, from: number): number[] {
  const { bodyStart, body } = space.network
  const inside = new Set<number>()
  const stack: number[] = []
  const found: number[] = []
  const walk = (c: number): boolean => {
    const at = stack.indexOf(c)
    if (at >= 0) {
      found.push(...stack.slice(at))
      return true
    }
    if (inside.has(c) || best[c]! < 0) return false
    inside.add(c)
    stack.push(c)
    for (let u = bodyStart[best[c]!]!; u < bodyStart[best[c]! + 1]!; u++) if (walk(body[u]!)) return true
    stack.pop()
    return false
  }
  walk(from)
  return found.length > 0 ? found : [from]
}
