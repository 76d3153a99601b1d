import { BUY, type Layer } from './partial.ts'
import type { Space } from './space.ts'

const UNDECIDED = -1

/** Where an open node stood that is decided now, and how many stood open beside it. */
export interface Place {
  readonly node: number
  readonly at: number
  readonly beside: number
}

/**
 * A partial route that is gone down and up again, decision by decision: what each node is made by, and which nodes stand open. As long as a
 * chain is open its end is decided next; only then is it known what it supplies to the side, and what there has to be made.
 */
export class Decisions {
  /** By node, the arc that makes it, `BUY`, or -1. */
  readonly choice: Int32Array
  readonly open: number[] = []
  steps = 0
  /** The first node of the chain; Infinity where there is no chain. */
  readonly chain: number
  private readonly isOpen: Uint8Array
  /** By demand, decisions that meet it. */
  private readonly met: number[]
  private readonly mark: Int32Array
  private readonly above: Int32Array
  private stamp = 0

  constructor(
    private readonly space: Space,
    private readonly labels: Float64Array,
    private readonly layers: readonly Layer[],
    target: number,
  ) {
    const n = labels.length
    this.choice = new Int32Array(n).fill(UNDECIDED)
    this.isOpen = new Uint8Array(n)
    this.mark = new Int32Array(n)
    this.above = new Int32Array(n)
    this.met = layers.map(() => 0)
    this.chain = space.twin === null ? Number.POSITIVE_INFINITY : n / 2
    this.reopen(target)
  }

  /** Takes the open node that is decided next: the end of the chain, or that with the fewest makers. Null = all is decided. */
  take(): Place | null {
    const { open } = this
    const { makerStart } = this.space.network
    let at = -1
    if (this.isChainOpen) at = open.length - 1
    else {
      let fewest = Number.POSITIVE_INFINITY
      for (let i = open.length - 1; i >= 0; i--) {
        const x = open[i]!
        const makers = makerStart[x + 1]! - makerStart[x]!
        if (makers >= fewest || this.actual(x) !== x) continue
        fewest = makers
        at = i
      }
    }
    if (at < 0) return null
    const node = open[at]!
    open[at] = open[open.length - 1]!
    open.pop()
    this.isOpen[node] = 0
    return { node, at, beside: open.length }
  }

  /** Puts a node back where it stood: which decision opened what is known by place. */
  putBack({ node, at }: Place): void {
    const { open } = this
    if (at < open.length) open.push(open[at]!)
    open[at] = node
    this.isOpen[node] = 1
  }

  decide({ node }: Place, arc: number): void {
    this.choice[node] = arc
    if (arc === BUY) return
    const { bodyStart, body } = this.space.network
    this.steps++
    this.meet(node, arc, 1)
    let chainEnd = -1
    for (let u = bodyStart[arc]!; u < bodyStart[arc + 1]!; u++) {
      const x = body[u]!
      if (!this.isUndecided(u, x)) continue
      if (x >= this.chain) chainEnd = x
      else this.reopen(x)
    }
    if (chainEnd >= 0) this.reopen(chainEnd)
  }

  undo({ node, beside }: Place): void {
    const { choice, open, isOpen } = this
    const arc = choice[node]!
    choice[node] = UNDECIDED
    if (arc < 0) return
    this.steps--
    this.meet(node, arc, -1)
    for (let i = open.length - 1; i >= beside; i--) isOpen[open[i]!] = 0
    open.length = beside
  }

  /** What the chain makes supplies the side. */
  actual(x: number): number {
    const chained = this.space.twin?.[x] ?? -1
    return chained >= 0 && this.choice[chained] !== UNDECIDED ? chained : x
  }

  /** Begins a look at the choices for the node taken last; returns what the open ones beside it add at least. */
  besides(node: number, least: Float64Array): number {
    this.stamp++
    let sum = 0
    for (const x of this.open) if (this.actual(x) === x && this.space.twin?.[x] !== node) sum += least[x]!
    return sum
  }

  /**
   * What the open nodes add at least once an arc is taken.
   *
   * @param node    the node taken last
   * @param besides as `besides` says
   * @returns Infinity where the arc closes a circle or needs what nothing makes
   */
  openedBy(node: number, arc: number, besides: number, least: Float64Array): number {
    const { space, choice, labels, chain } = this
    const { bodyStart, body } = space.network
    let opened = 0
    let chainEnd = -1
    for (let u = bodyStart[arc]!, end = bodyStart[arc + 1]!; u < end; u++) {
      const x = body[u]!
      const from = this.actual(x)
      if (from === node || (space.twin !== null && space.twin[x] === node)) return Number.POSITIVE_INFINITY
      if (choice[from]! >= 0) {
        // Whatever the chain has decided lies above its end.
        if (node >= chain || this.isAbove(from, node)) return Number.POSITIVE_INFINITY
        continue
      }
      if (!this.isUndecided(u, x)) continue
      if (labels[x] === Number.POSITIVE_INFINITY) return Number.POSITIVE_INFINITY
      if (x >= chain) chainEnd = x
      else opened += least[x]!
    }
    // Until the chain stands, what lies beside it may still be made by it, and is no step of its own.
    return chainEnd >= 0 ? least[chainEnd]! : besides + opened
  }

  /** Can it lead to no route that is asked for? */
  isDead(maxSteps: number): boolean {
    const { open, layers, met, space, isChainOpen } = this
    let steps = this.steps
    for (const x of open) if (x >= this.chain || (!isChainOpen && !space.mayBeLeaf[x] && this.actual(x) === x)) steps++
    if (steps > maxSteps) return true
    for (let j = 0; j < layers.length; j++)
      if (met[j] === 0 && !open.some(x => layers[j]!.value[x]! < Number.POSITIVE_INFINITY)) return true
    return false
  }

  get meetsAll(): boolean {
    return this.met.every(count => count > 0)
  }

  private get isChainOpen(): boolean {
    const last = this.open[this.open.length - 1]
    return last !== undefined && last >= this.chain
  }

  private meet(node: number, arc: number, by: number): void {
    const { space, layers, met } = this
    for (let j = 0; j < layers.length; j++) {
      const { must, meets } = layers[j]!
      if (meets[node]) met[j]! += by
      if (must.start && usesStart(space, arc)) met[j]! += by
    }
  }

  private reopen(node: number): void {
    this.isOpen[node] = 1
    this.open.push(node)
  }

  /** Does a reactant need a decision that is neither made nor waiting? */
  private isUndecided(u: number, x: number): boolean {
    const { space, choice, isOpen } = this
    if (this.actual(x) !== x || choice[x] !== UNDECIDED || isOpen[x] || x === space.start) return false
    if (space.leaf[u] === Number.POSITIVE_INFINITY) return true
    return space.twin === null && this.labels[x]! < Number.POSITIVE_INFINITY
  }

  /** Is a decided node made, at however many removes, out of the node taken last? */
  private isAbove(from: number, node: number): boolean {
    if (from === node) return true
    if (this.mark[from] === this.stamp) return this.above[from] === this.stamp
    this.mark[from] = this.stamp
    const arc = this.choice[from]!
    if (arc < 0) return false
    const { bodyStart, body } = this.space.network
    for (let u = bodyStart[arc]!, end = bodyStart[arc + 1]!; u < end; u++) {
      if (!this.isAbove(this.actual(body[u]!), node)) continue
      this.above[from] = this.stamp
      return true
    }
    return false
  }
}

function usesStart({ network, start }: Space, arc: number): boolean {
  for (let u = network.bodyStart[arc]!; u < network.bodyStart[arc + 1]!; u++) if (network.body[u] === start) return true
  return false
}
