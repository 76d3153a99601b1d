import { slack } from './best.ts'
import { RadixHeap } from './radix-heap.ts'
import { lesser, type Space } from './space.ts'

/** What a route must use or make: the start as a reactant, or one of these nodes as something made. */
export interface Must {
  readonly start: boolean
  readonly nodes: readonly number[]
}

/**
 * Labels for "made in a way that meets this demand": a lower bound, since the branch that meets it and the branches beside it may make one
 * compound in different ways.
 */
export function labelsThrough(space: Space, labels: Float64Array, must: Must): Float64Array {
  const { network, masked } = space
  const { head, useStart, uses, useArc } = network
  const through = new Float64Array(labels.length).fill(Number.POSITIVE_INFINITY)
  const settled = new Uint8Array(labels.length)
  const others = new Others(space, labels)
  const heap = new RadixHeap(256)
  const offer = (u: number, part: number) => {
    const a = useArc[u]!
    if (masked[a]) return
    const value = others.besides(a, u, part)
    const h = head[a]!
    if (value < through[h]! * slack) {
      through[h] = value
      heap.push(value, h)
    }
  }
  if (must.start) {
    const twins = space.twin === null ? [space.start] : [space.start, space.start + labels.length / 2]
    for (const c of twins) for (let k = useStart[c]!; k < useStart[c + 1]!; k++) offer(uses[k]!, space.leaf[uses[k]!]!)
  }
  for (const c of must.nodes) {
    if (!(labels[c]! < Number.POSITIVE_INFINITY)) continue
    through[c] = labels[c]!
    heap.push(through[c]!, c)
  }
  while (heap.size > 0) {
    const key = heap.minKey
    const c = heap.pop()
    if (key > through[c]! || settled[c]! > 250) continue
    settled[c]!++
    for (let k = useStart[c]!; k < useStart[c + 1]!; k++) {
      const u = uses[k]!
      offer(u, space.factor[u]! * through[c]! + space.made[u]!)
    }
  }
  return through
}

/** Values of arcs where one reactant contributes something and every other one its best. Each body is read once. */
class Others {
  /** By arc: what all reactants come to (for a sum), or the largest (NaN = not read yet), and the largest of the others. */
  private readonly whole: Float64Array
  private readonly second: Float64Array
  private readonly isSum: boolean

  constructor(
    private readonly space: Space,
    private readonly labels: Float64Array,
  ) {
    this.isSum = space.form === 'sum'
    this.whole = new Float64Array(space.own.length).fill(Number.NaN)
    this.second = this.isSum ? this.whole : new Float64Array(space.own.length)
  }

  /** Value of arc `a` where the reactant at use `u` contributes `part`. */
  besides(a: number, u: number, part: number): number {
    const { space, whole } = this
    // biome-ignore lint/suspicious/noSelfCompare: NaN is the one number that differs from itself, and this is an innermost loop
    if (whole[a] !== whole[a]) this.read(a)
    const all = whole[a]!
    if (this.isSum) return space.own[a]! + part + (all < Number.POSITIVE_INFINITY ? all - this.least(u) : this.sumBeside(a, u))
    const rest = this.least(u) === all ? this.second[a]! : all
    return space.own[a]! + Math.max(part, rest)
  }

  private read(a: number): void {
    const { bodyStart } = this.space.network
    let all = 0
    let second = 0
    for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++) {
      const least = this.least(u)
      if (this.isSum) all += least
      else if (least > all) {
        second = all
        all = least
      } else if (least > second) second = least
    }
    this.whole[a] = all
    if (!this.isSum) this.second[a] = second
  }

  private sumBeside(a: number, u: number): number {
    const { bodyStart } = this.space.network
    let sum = 0
    for (let other = bodyStart[a]!, end = bodyStart[a + 1]!; other < end; other++) if (other !== u) sum += this.least(other)
    return sum
  }

  private least(u: number): number {
    const { network, factor, leaf, made } = this.space
    return lesser(factor[u]! * this.labels[network.body[u]!]! + made[u]!, leaf[u]!)
  }
}
