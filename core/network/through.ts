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
  const heap = new RadixHeap(256)
  const offer = (u: number, part: number) => {
    const a = useArc[u]!
    if (masked[a]) return
    const value = besides(space, labels, a, u, part)
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

/** Value of arc `a` where the reactant at use `u` contributes `part` and every other one its best. */
function besides(space: Space, labels: Float64Array, a: number, u: number, part: number): number {
  const { network, factor, leaf, made, own } = space
  const { bodyStart, body } = network
  let value = part
  for (let other = bodyStart[a]!, end = bodyStart[a + 1]!; other < end; other++) {
    if (other === u) continue
    const least = lesser(factor[other]! * labels[body[other]!]! + made[other]!, leaf[other]!)
    if (space.form === 'sum') value += least
    else if (least > value) value = least
  }
  return own[a]! + value
}
