import { lesser, type Space } from './space.ts'
import type { Must } from './through.ts'

/** Decisions beside an arc: buy it. */
export const BUY = -2
const UNDECIDED = -1

/** Labels that hold for one family of partial routes; those that differ from the network's are listed. */
export interface Overlay {
  readonly value: ReadonlyMap<number, number>
  /** Makers in order of value, built when first asked for. */
  readonly orders: Map<number, MakerOrder>
}
export interface MakerOrder {
  readonly arcs: Int32Array
  readonly keys: Float64Array
}

/** One demand on the routes with the labels that belong to it. */
export interface Layer {
  readonly must: Must
  readonly value: Float64Array
  /** By node: 1 = making it meets the demand. */
  readonly meets: Uint8Array
}

/** What the evaluation of a partial route found. */
export interface Findings {
  /** Lower bound of every completion; the exact value where nothing is open. Infinity = no completion. */
  bound: number
  /** The next node to decide; -1 = complete. */
  open: number
  /** Steps decided, and nodes that must still be made. */
  steps: number
  mustMake: number
  /** Steps that the open nodes take in their best ways, one by one; 0 as long as nobody estimates. No bound: branches may share. */
  left: number
}

/**
 * Evaluates partial routes: a set of decisions (a maker, or "bought") over the nodes that the target needs, with labels standing for all
 * that is open. Scratch arrays are marked with the number of the evaluation, so that nothing is cleared between two of them.
 */
export class PartialRoutes {
  readonly found: Findings = { bound: 0, open: UNDECIDED, steps: 0, mustMake: 0, left: 0 }
  /** By node, steps of the best way to make it; set once a search is to be guided to the shortest completion. */
  stepsOfBest: Float64Array | null = null
  /** Arcs of the last evaluation, in the order in which they were met. */
  readonly arcs: number[] = []
  private readonly choice: Int32Array
  private readonly decided: Int32Array
  private readonly visited: Int32Array
  private readonly seenOpen: Int32Array
  private readonly value: Float64Array
  private readonly layered: Float64Array[]
  /** Demands that making the target does not meet already. */
  private layers: readonly Layer[]
  private target = -1
  private mark = 0
  private chainOpen = false
  private distinctSum = 0
  private overlay: Overlay | null = null
  private forced = -1
  private forcedKey = 0

  constructor(
    private readonly space: Space,
    private readonly labels: Float64Array,
    private readonly allLayers: readonly Layer[],
    private readonly leastOwn: Float64Array,
  ) {
    const n = labels.length
    this.choice = new Int32Array(n)
    this.decided = new Int32Array(n)
    this.visited = new Int32Array(n)
    this.seenOpen = new Int32Array(n)
    this.value = new Float64Array(n)
    this.layered = allLayers.map(() => new Float64Array(n))
    this.layers = allLayers
  }

  /** Begins an evaluation; then `decide` each decision, then `evaluate`. */
  begin(): void {
    this.mark += 2
  }

  decide(node: number, choice: number): void {
    this.choice[node] = choice
    this.decided[node] = this.mark
  }

  isDecided(node: number): boolean {
    return this.decided[node] === this.mark
  }

  /**
   * @param forced     a node that is made, not bought, by one of its makers worth `forcedKey` or more; -1 = none
   * @returns the bound, with the rest in `found`
   */
  evaluate(target: number, overlay: Overlay | null, forced: number, forcedKey: number): number {
    const { found, space } = this
    if (target !== this.target) {
      this.target = target
      this.layers = this.allLayers.filter(layer => !layer.meets[target])
    }
    this.overlay = overlay
    this.forced = forced
    this.forcedKey = forcedKey
    this.chainOpen = false
    this.distinctSum = 0
    this.arcs.length = 0
    found.open = UNDECIDED
    found.steps = 0
    found.mustMake = 0
    found.left = 0
    found.bound = Number.POSITIVE_INFINITY
    if (!this.isDecided(target)) {
      this.openNode(target, true)
      found.bound = target === forced ? forcedKey : this.labelOf(target)
      for (let j = 0; j < this.layers.length; j++) found.bound = Math.max(found.bound, this.layers[j]!.value[target]!)
      return found.bound
    }
    if (!this.visit(target)) return found.bound
    let bound = this.value[target]!
    if (space.form === 'distinct') bound = found.open === UNDECIDED ? this.distinctSum : Math.max(bound, this.distinctSum)
    for (let j = 0; j < this.layers.length; j++) {
      const met = this.layered[j]![target]!
      // A complete route either meets a demand or it does not; its value is the plain one.
      if (met === Number.POSITIVE_INFINITY) bound = met
      else if (found.open !== UNDECIDED && met > bound) bound = met
    }
    found.bound = bound
    return bound
  }

  private labelOf(node: number): number {
    return this.overlay?.value.get(node) ?? this.labels[node]!
  }

  private openNode(node: number, mustBeMade: boolean): void {
    const { found } = this
    if (found.open === UNDECIDED) found.open = node
    if (this.seenOpen[node] === this.mark) return
    this.seenOpen[node] = this.mark
    if (!mustBeMade) return
    // No more than fits between two values that count as different.
    if (this.stepsOfBest !== null) found.left += Math.min(this.stepsOfBest[node]!, 100)
    found.mustMake++
    this.distinctSum += this.leastOwn[node]!
  }

  /** Value of a decided node; false where the decisions go round in a circle or lead nowhere. */
  private visit(node: number): boolean {
    const { space, layers, mark } = this
    const { bodyStart, body } = space.network
    const { factor, leaf, made, twin } = space
    const sum = space.form === 'sum'
    const arc = this.choice[node]!
    this.visited[node] = mark
    this.arcs.push(arc)
    this.found.steps++
    this.distinctSum += space.own[arc]!
    let total = 0
    const first = bodyStart[arc]!
    const end = bodyStart[arc + 1]!
    for (let j = 0; j < layers.length; j++) this.layered[j]![node] = Number.POSITIVE_INFINITY
    for (let u = first; u < end; u++) {
      let x = body[u]!
      if (twin !== null && twin[x]! >= 0 && this.decided[twin[x]!] === mark) x = twin[x]!
      let part: number
      if (this.decided[x] === mark) {
        if (this.choice[x] === BUY) part = leaf[u]!
        else {
          if (this.visited[x] === mark) return false
          if (this.visited[x] !== mark + 1 && !this.visit(x)) return false
          part = factor[u]! * this.value[x]! + made[u]!
        }
      } else part = this.openPart(u, x)
      if (!(part < Number.POSITIVE_INFINITY)) return false
      if (sum) total += part
      else if (part > total) total = part
    }
    this.value[node] = space.own[arc]! + total
    if (layers.length > 0) this.meet(node, arc)
    this.visited[node] = mark + 1
    return true
  }

  /** What an undecided reactant adds at least. */
  private openPart(u: number, x: number): number {
    const { factor, leaf, made, mayBeLeaf, twin, start } = this.space
    const asLeaf = leaf[u]!
    const label = x === this.forced ? this.forcedKey : this.labelOf(x)
    if (twin !== null) {
      if (!mayBeLeaf[x]) {
        if (label === Number.POSITIVE_INFINITY) return label
        const onChain = x >= twin.length / 2
        if (onChain) this.chainOpen = true
        // Until the chain stands, what lies beside it may still turn out to be made by it, and is no step of its own.
        this.openNode(x, onChain || !this.chainOpen)
        return factor[u]! * label + made[u]!
      }
      if (!this.chainOpen || x === start || label === Number.POSITIVE_INFINITY) return asLeaf
      return lesser(factor[u]! * label + made[u]!, asLeaf)
    }
    if (label === Number.POSITIVE_INFINITY) return asLeaf
    const asMade = factor[u]! * label + made[u]!
    const mustBeMade = x === this.forced || !mayBeLeaf[x]
    this.openNode(x, mustBeMade)
    return mustBeMade || asMade < asLeaf ? asMade : asLeaf
  }

  /** For each demand: the least value of this node with the demand met at one of its reactants, all others as they are. */
  private meet(node: number, arc: number): void {
    const { space, layers, mark } = this
    const { bodyStart, body } = space.network
    const { factor, leaf, made, twin, start } = space
    const sum = space.form === 'sum'
    const total = this.value[node]!
    for (let j = 0; j < layers.length; j++) {
      const layer = layers[j]!
      const layered = this.layered[j]!
      if (layer.meets[node]) {
        layered[node] = total
        continue
      }
      let best = Number.POSITIVE_INFINITY
      for (let u = bodyStart[arc]!, end = bodyStart[arc + 1]!; u < end; u++) {
        let x = body[u]!
        if (twin !== null && twin[x]! >= 0 && this.decided[twin[x]!] === mark) x = twin[x]!
        let plain: number
        let met: number
        if (this.decided[x] === mark) {
          if (this.choice[x] === BUY) continue
          plain = factor[u]! * this.value[x]! + made[u]!
          met = factor[u]! * layered[x]! + made[u]!
        } else if (x === start || (twin !== null && x === start + twin.length / 2)) {
          if (!layer.must.start) continue
          plain = leaf[u]!
          met = plain
        } else {
          if (twin !== null && space.mayBeLeaf[x] && !this.chainOpen) continue
          const label = x === this.forced ? this.forcedKey : this.labelOf(x)
          const asMade = factor[u]! * label + made[u]!
          plain = x !== this.forced && leaf[u]! < asMade ? leaf[u]! : asMade
          const through = layer.value[x]!
          met = factor[u]! * (x === this.forced && through < this.forcedKey ? this.forcedKey : through) + made[u]!
          if (!(met < Number.POSITIVE_INFINITY)) continue
        }
        if (!(plain < Number.POSITIVE_INFINITY)) continue
        const value = sum ? total - plain + met : Math.max(total, space.own[arc]! + met)
        if (value < best) best = value
      }
      layered[node] = best
    }
  }
}
