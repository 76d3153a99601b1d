import { atOnce, type InPieces } from './pieces.ts'
import { RadixHeap } from './radix-heap.ts'
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
export const labelsOf = (space: Space): Labels => atOnce(labelsInPieces(space))

/** Compounds settled between two pauses. */
const settledAtOnce = 10_000

/** The same with pauses. */
export function* labelsInPieces(space: Space): InPieces<Labels> {
  const labelling = new Labelling(space)
  yield
  while (!labelling.advance(settledAtOnce)) yield
  const { value, best, circle } = labelling
  return { value, best, circle }
}

/** Labels that are being settled. */
class Labelling {
  readonly value: Float64Array
  readonly best: Int32Array
  circle: readonly number[] | null = null
  private readonly settled: Uint8Array
  private readonly open: OpenArcs
  private readonly heap = new RadixHeap(1024)

  constructor(private readonly space: Space) {
    const { network, form, own } = space
    const { useStart } = network
    const n = useStart.length - 1
    const value = new Float64Array(n).fill(Number.POSITIVE_INFINITY)
    const best = new Int32Array(n).fill(-1)
    this.value = value
    this.best = best
    this.settled = new Uint8Array(n)
    this.open = openArcs(space)
    for (const a of this.open.ready) {
      const alone = this.open.gathered[a]!
      const offered = Number.isNaN(alone) ? arcValue(space, value, a) : form === 'sum' ? alone : own[a]! + alone
      const h = network.head[a]!
      if (offered < value[h]!) {
        value[h] = offered
        best[h] = a
        // What nothing takes is final with its last offer, and need not wait for its turn.
        if (useStart[h] !== useStart[h + 1]) this.heap.push(offered, h)
      }
    }
  }

  /** @returns true where all are settled, or a circle was found */
  advance(compounds: number): boolean {
    const { space, value, best, settled, heap } = this
    const { network, mayBeLeaf, leaf, factor, made, own } = space
    const { useStart, uses, takers } = network
    const isSum = space.form === 'sum'
    const { waiting, never, gathered, superior, adds } = this.open
    for (let left = compounds; heap.size > 0 && left > 0; left--) {
      const key = heap.minKey
      const c = heap.pop()
      if (key > value[c]!) continue
      let first = true
      if (!superior) {
        const before = settled[c]!
        if (before > mostReopenings) {
          this.circle = circleFrom(space, best, c)
          return true
        }
        settled[c] = before + 1
        first = before === 0
      }
      const needed = mayBeLeaf[c] === 0
      for (let k = useStart[c]!, end = useStart[c + 1]!; k < end; k++) {
        const h = takers[2 * k]!
        if (superior && value[h]! <= key) continue
        const a = takers[2 * k + 1]!
        const missing = waiting[a]!
        if (missing === never) continue
        const sofar = gathered[a]!
        let offered: number
        // This is the innermost loop of everything: NaN is the one number that differs from itself.
        // biome-ignore lint/suspicious/noSelfCompare: spares a call
        if (sofar === sofar) {
          const u = uses[k]!
          const part = adds ? factor[u]! * key + made[u]! : factor[u]! * key
          const now = isSum ? sofar + part : larger(sofar, part)
          if (missing > 1) {
            waiting[a] = missing - 1
            gathered[a] = now
            continue
          }
          offered = isSum ? now : own[a]! + now
        } else {
          if (first && missing > 0 && (needed || leaf[uses[k]!] === Number.POSITIVE_INFINITY)) waiting[a] = missing - 1
          if (waiting[a] !== 0) continue
          offered = arcValue(space, value, a)
        }
        if (offered < value[h]! * slack) {
          value[h] = offered
          best[h] = a
          if (useStart[h] !== useStart[h + 1]) heap.push(offered, h)
        }
      }
    }
    return heap.size === 0
  }
}

// biome-ignore lint/complexity/useMathMinMax: Math.max looks at -0 and NaN, which do not occur, in the innermost loop
const larger = (a: number, b: number): number => (a > b ? a : b)

/** Arcs before anything is settled. */
interface OpenArcs {
  /** Reactants still to be made, one byte an arc as long as that will do (a million then fit into the second cache); `never` = masked. */
  readonly waiting: Uint8Array | Uint16Array
  readonly never: number
  /**
   * What the settled reactants and the bought ones come to (in a sum with the arc's own); NaN where that may still change, because a part may
   * count less than itself or a reactant may be bought or made: such an arc is read anew.
   */
  readonly gathered: Float64Array
  /** No part counts less than itself: nothing that comes out of the heap later can lower what is settled. */
  readonly superior: boolean
  /** Some made reactant adds more than its factor times its value. */
  readonly adds: boolean
  /** Arcs that wait for nothing. */
  readonly ready: readonly number[]
}

function openArcs({ network, form, masked, leaf, factor, made, own }: Space): OpenArcs {
  const { head, bodyStart, body, useStart } = network
  const m = head.length
  const isSum = form === 'sum'
  let superior = true
  let adds = false
  let largest = 0
  const makeable = new Uint8Array(useStart.length - 1)
  for (let a = 0; a < m; a++) {
    largest = Math.max(largest, bodyStart[a + 1]! - bodyStart[a]!)
    if (!masked[a]) makeable[head[a]!] = 1
  }
  const never = largest < 255 ? 255 : 65535
  const waiting = largest < 255 ? new Uint8Array(m) : new Uint16Array(m)
  const gathered = new Float64Array(m)
  const ready: number[] = []
  for (let a = 0; a < m; a++) {
    if (masked[a]) {
      waiting[a] = never
      continue
    }
    let missing = 0
    let parts = isSum ? own[a]! : 0
    for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++) {
      const asLeaf = leaf[u]!
      if (factor[u]! < 1) superior = false
      if (made[u] !== 0) adds = true
      if (asLeaf === Number.POSITIVE_INFINITY) missing++
      else if (makeable[body[u]!] === 1) parts = Number.NaN
      else if (isSum) parts += asLeaf
      else if (asLeaf > parts) parts = asLeaf
    }
    waiting[a] = missing
    gathered[a] = parts
    if (missing === 0) ready.push(a)
  }
  if (!superior) gathered.fill(Number.NaN)
  return { waiting, never, gathered, superior, adds, ready }
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
