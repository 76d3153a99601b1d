import { Heap } from './heap.ts'
import { BUY, type Overlay } from './partial.ts'
import { lesser, type Space } from './space.ts'

/**
 * Labels made exact for one partial route. The network's labels ignore what stands above an open compound, so in a network full of circles
 * a search can drown in partial routes whose every completion eats its own product. Only compounds that were decided against their own best
 * maker disturb labels, and only their descendants in the forest of best makers feel it: those are settled again, with every decided compound
 * held to its decision. A partial route whose repaired bound is finite has a completion of that value.
 */
export class LabelRepair {
  private readonly fixed: Int32Array
  private readonly fixedMark: Int32Array
  private readonly noLeafMark: Int32Array
  private readonly affectedMark: Int32Array
  private readonly value: Float64Array
  private readonly heap = new Heap(256)
  private mark = 0
  /** Nodes that the last repair looked at. */
  work = 0

  constructor(
    private readonly space: Space,
    private readonly labels: Float64Array,
    private readonly best: Int32Array,
  ) {
    const n = labels.length
    this.fixed = new Int32Array(n)
    this.fixedMark = new Int32Array(n)
    this.noLeafMark = new Int32Array(n)
    this.affectedMark = new Int32Array(n)
    this.value = new Float64Array(n)
  }

  /**
   * @param decisions node, choice, node, choice ... of the partial route
   * @param most      nodes it may settle again
   * @returns null where there are more: labels as they stand are bounds too, only less sharp ones
   */
  overlay(decisions: readonly number[], most = Number.POSITIVE_INFINITY): Overlay | null {
    const { space, labels } = this
    const { head, useStart, uses, useArc } = space.network
    this.mark++
    const affected = this.descendants(this.hold(decisions), most)
    this.work = affected.length
    if (affected.length > most) return null
    for (const node of affected) this.value[node] = Number.POSITIVE_INFINITY
    this.heap.clear()
    for (const node of affected) this.offerAll(node)
    while (this.heap.size > 0) {
      const key = this.heap.minKey
      const node = this.heap.pop()
      if (key > this.value[node]!) continue
      for (let k = useStart[node]!; k < useStart[node + 1]!; k++) {
        const a = useArc[uses[k]!]!
        const h = head[a]!
        if (this.affectedMark[h] === this.mark) this.offer(h, a)
      }
    }
    const changed = new Map<number, number>()
    for (const node of affected) if (this.value[node] !== labels[node]) changed.set(node, this.value[node]!)
    return { value: changed, orders: new Map() }
  }

  /** Holds decided nodes to their decisions; returns the nodes whose label, or whose being a leaf, is no longer what the labels assumed. */
  private hold(decisions: readonly number[]): number[] {
    const { space, best, mark } = this
    const changed: number[] = []
    for (let i = 0; i < decisions.length; i += 2) {
      const node = decisions[i]!
      const choice = decisions[i + 1]!
      this.fixed[node] = choice
      this.fixedMark[node] = mark
      if (choice === BUY || choice !== best[node] || space.mayBeLeaf[node]) changed.push(node)
      if (choice !== BUY) this.noLeafMark[node] = mark
      // What the chain makes supplies the side as well: there it is neither bought nor made in another way.
      const side = space.twin === null ? -1 : node - space.twin.length / 2
      if (side >= 0 && side !== space.start) {
        const handedOn = this.handingOn(side)
        this.fixed[side] = handedOn
        this.fixedMark[side] = mark
        this.noLeafMark[side] = mark
        if (handedOn !== best[side] || space.mayBeLeaf[side]) changed.push(side)
      }
    }
    return changed
  }

  private handingOn(side: number): number {
    const { makerStart, makers } = this.space.network
    for (let k = makerStart[side]!; k < makerStart[side + 1]!; k++) if (this.space.arcOf[makers[k]!] === -1) return makers[k]!
    throw new RangeError('a compound of the chain is not handed on to the side')
  }

  private descendants(roots: readonly number[], most: number): number[] {
    const { best, mark } = this
    const { head, useStart, uses, useArc } = this.space.network
    const affected: number[] = []
    const add = (node: number) => {
      if (this.affectedMark[node] === mark) return
      this.affectedMark[node] = mark
      affected.push(node)
    }
    for (const root of roots) add(root)
    for (let i = 0; i < affected.length && affected.length <= most; i++) {
      const node = affected[i]!
      for (let k = useStart[node]!; k < useStart[node + 1]!; k++) {
        const a = useArc[uses[k]!]!
        if (best[head[a]!] === a) add(head[a]!)
      }
    }
    return affected
  }

  private offerAll(node: number): void {
    const { makerStart, makers } = this.space.network
    for (let k = makerStart[node]!; k < makerStart[node + 1]!; k++) this.offer(node, makers[k]!)
  }

  private offer(node: number, a: number): void {
    if (this.space.masked[a] || (this.fixedMark[node] === this.mark && this.fixed[node] !== a)) return
    const offered = this.arcValue(a)
    if (offered < this.value[node]!) {
      this.value[node] = offered
      this.heap.push(offered, node)
    }
  }

  private arcValue(a: number): number {
    const { network, factor, leaf, made, own, form } = this.space
    const { bodyStart, body } = network
    let value = 0
    for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++) {
      const x = body[u]!
      const bought = this.fixedMark[x] === this.mark && this.fixed[x] === BUY
      const label = bought ? Number.POSITIVE_INFINITY : this.affectedMark[x] === this.mark ? this.value[x]! : this.labels[x]!
      const asLeaf = this.noLeafMark[x] === this.mark ? Number.POSITIVE_INFINITY : leaf[u]!
      const part = lesser(factor[u]! * label + made[u]!, asLeaf)
      if (form === 'sum') value += part
      else if (part > value) value = part
    }
    return own[a]! + value
  }
}
