import { labelsOf } from './best.ts'
import { Heap } from './heap.ts'
import type { Space } from './space.ts'
import { labelsThrough, type Must } from './through.ts'

/** Sets of arcs of which every route holds at least one, each with a price that is paid out of the figures of its arcs. */
export interface LandmarkCuts {
  /** What any route adds at least: the prices together. Infinity = there is no route. */
  readonly total: number
  readonly prices: readonly number[]
  readonly members: readonly Int32Array[]
  /** By arc, what is left of its own figure after the prices of all sets it is in. */
  readonly residual: Float64Array
  /** Looks at an arc and its reactants. */
  readonly work: number
}

/** A zone is grown on until that took so many times what it took to find: then labels are made exact again, and a new one is begun. */
const grownOn = 0.2
/** Rounding below this part of the largest figure is nought: otherwise a set would be raised again and again for the last bit. */
const rounding = 1e-12

/**
 * A lower bound of a sum over distinct steps. Take any zone of nodes that have to be made, the target among them: the first of them that a route
 * makes is made out of nothing that lies in the zone, by one of the arcs into it. So every route holds one of these arcs, and what the
 * cheapest of them costs may be charged to all of them at once. The zone holds whatever the target cannot be made without as long as nothing
 * else is charged: through arcs that are paid up, the reactant that still costs most. Again and again, until the target can be made for
 * nothing.
 *
 * Source: Helmert and Domshlak, ICAPS 2009 (landmark cuts; from memory), without their condition that a cut is passed at one reactant.
 *
 * @param space  its own figures are what may be charged
 * @param musts  what every route meets
 * @param most   looks allowed; with fewer the bound is lower
 */
export function landmarkCuts(space: Space, target: number, musts: readonly Must[], most = Number.POSITIVE_INFINITY): LandmarkCuts {
  return new Ascent(space, target, musts).run(most)
}

class Ascent {
  private readonly residual: Float64Array
  /** What it costs at least to make each node; then the same for making it with the start as an ingredient, where that is asked for. */
  private readonly least: Float64Array
  private readonly n: number
  private readonly fromStart: boolean
  private readonly roots: readonly (readonly number[])[]
  private readonly inZone: Uint8Array
  private readonly zone: number[] = []
  private readonly heap = new Heap(256)
  private readonly taken: Int32Array
  private readonly tiny: number
  private readonly prices: number[] = []
  private readonly members: Int32Array[] = []
  private work = 0
  private total = 0
  /** Looks that making labels exact took the last time. */
  private settled = 0

  constructor(
    private readonly space: Space,
    target: number,
    musts: readonly Must[],
  ) {
    const { own } = space
    this.residual = own.slice()
    const start = space.twin === null ? musts.find(must => must.start) : undefined
    this.fromStart = start !== undefined
    const plain = labelsOf(space).value
    this.n = plain.length
    if (start === undefined) this.least = plain
    else {
      this.least = new Float64Array(2 * this.n)
      this.least.set(plain)
      this.least.set(labelsThrough(space, plain, start), this.n)
    }
    this.roots = [
      [this.fromStart ? this.n + target : target],
      ...musts.filter(must => !must.start && !must.nodes.includes(target)).map(must => must.nodes),
    ]
    this.inZone = new Uint8Array(this.least.length)
    this.taken = new Int32Array(own.length)
    let largest = 0
    for (let a = 0; a < own.length; a++) if (!space.masked[a] && own[a]! > largest) largest = own[a]!
    this.tiny = largest * rounding
  }

  run(most: number): LandmarkCuts {
    const { prices, members, residual } = this
    for (;;) {
      let root = this.roots[0]!
      let dearest = 0
      for (const nodes of this.roots) {
        const least = nodes.reduce((value, x) => Math.min(value, this.least[x]!), Number.POSITIVE_INFINITY)
        if (least > dearest) {
          dearest = least
          root = nodes
        }
      }
      if (dearest === Number.POSITIVE_INFINITY) this.total = dearest
      if (dearest === 0 || dearest === Number.POSITIVE_INFINITY || this.work > most) break
      this.charge(root)
    }
    return { total: this.total, prices, members, residual, work: this.work }
  }

  /** Charges the arcs into a zone, lets it grow through those that are paid up then, and so on. */
  private charge(root: readonly number[]): void {
    const { residual, zone } = this
    for (const x of zone) this.inZone[x] = 0
    zone.length = 0
    for (const x of root) this.add(x)
    const lowered: number[] = []
    let border: number[] = []
    let grown = 0
    const begun = this.work
    let enough = -1
    for (let isClosed = true; isClosed; ) {
      for (; grown < zone.length && isClosed; grown++) isClosed = this.closeAt(zone[grown]!, border)
      border = border.filter(entry => !this.isCovered(entry))
      if (!isClosed || border.length === 0) break
      let price = Number.POSITIVE_INFINITY
      for (const entry of border) price = Math.min(price, residual[entry >> 1]!)
      const arcs = this.distinct(border)
      this.prices.push(price)
      this.members.push(arcs)
      this.total += price
      for (const a of arcs) {
        residual[a] = residual[a]! - price <= this.tiny ? 0 : residual[a]! - price
        lowered.push(a)
      }
      if (enough < 0) enough = this.work + grownOn * (this.work - begun + this.settled)
      if (this.work >= enough) break
      const paid = border.filter(entry => residual[entry >> 1] === 0)
      border = border.filter(entry => residual[entry >> 1] !== 0)
      for (const entry of paid) isClosed &&= this.isCovered(entry) || this.cover(entry)
    }
    const before = this.work
    for (const a of lowered) this.offer(a)
    this.settle()
    this.settled = this.work - before
  }

  private add(x: number): void {
    if (this.inZone[x]) return
    this.inZone[x] = 1
    this.zone.push(x)
  }

  /** The arcs that make a node of the zone: what is paid up takes a reactant in, what is not stands at the border. False = no zone is left. */
  private closeAt(x: number, border: number[]): boolean {
    const { makerStart, makers } = this.space.network
    const through = x >= this.n ? 1 : 0
    const node = x - through * this.n
    for (let k = makerStart[node]!, end = makerStart[node + 1]!; k < end; k++) {
      const entry = 2 * makers[k]! + through
      if (this.space.masked[makers[k]!] || this.isCovered(entry)) continue
      if (this.residual[makers[k]!] !== 0) border.push(entry)
      else if (!this.cover(entry)) return false
    }
    return true
  }

  /** Does an arc need something that lies in the zone, or something that nothing makes? An entry is twice the arc, and one more for "with the start". */
  private isCovered(entry: number): boolean {
    const { space, least, inZone, n } = this
    const { bodyStart, body } = space.network
    const a = entry >> 1
    let onlyThrough = (entry & 1) === 1
    this.work++
    for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++) {
      const x = body[u]!
      if (space.leaf[u] === Number.POSITIVE_INFINITY && (inZone[x] || least[x] === Number.POSITIVE_INFINITY)) return true
      if (onlyThrough && (x === space.start || (!inZone[n + x] && least[n + x]! < Number.POSITIVE_INFINITY))) onlyThrough = false
    }
    return onlyThrough
  }

  /** Takes in what an arc needs and what still costs most; false where it costs nothing. */
  private cover(entry: number): boolean {
    const { space, least, n } = this
    const { bodyStart, body } = space.network
    const a = entry >> 1
    let dearest = -1
    let most = 0
    let through = (entry & 1) === 1 ? Number.POSITIVE_INFINITY : 0
    for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++) {
      const x = body[u]!
      if (space.leaf[u] === Number.POSITIVE_INFINITY && least[x]! > most) {
        most = least[x]!
        dearest = x
      }
      if (through > 0) through = Math.min(through, x === space.start ? 0 : least[n + x]!)
    }
    if (through > most) {
      // The start comes in at one reactant or another: each of them has to be shut.
      for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++)
        if (least[n + body[u]!]! < Number.POSITIVE_INFINITY) this.add(n + body[u]!)
      return true
    }
    if (dearest < 0) return false
    this.add(dearest)
    return true
  }

  /** Arcs of the entries, each once, for a route pays for a step once. */
  private distinct(entries: readonly number[]): Int32Array {
    const mark = this.prices.length + 1
    const arcs: number[] = []
    for (const entry of entries) {
      if (this.taken[entry >> 1] === mark) continue
      this.taken[entry >> 1] = mark
      arcs.push(entry >> 1)
    }
    return Int32Array.from(arcs)
  }

  /** What an arc, now cheaper, makes may have become cheaper. */
  private offer(a: number): void {
    const { space, least, n } = this
    const { bodyStart, body, head } = space.network
    const h = head[a]!
    if (space.masked[a]) return
    let most = 0
    let through = Number.POSITIVE_INFINITY
    this.work++
    for (let u = bodyStart[a]!, end = bodyStart[a + 1]!; u < end; u++) {
      const x = body[u]!
      if (space.leaf[u] === Number.POSITIVE_INFINITY && least[x]! > most) most = least[x]!
      if (this.fromStart) through = Math.min(through, x === space.start ? 0 : least[n + x]!)
    }
    this.lower(h, this.residual[a]! + most)
    if (this.fromStart) this.lower(n + h, this.residual[a]! + Math.max(most, through))
  }

  private lower(x: number, value: number): void {
    if (!(value < this.least[x]!)) return
    this.least[x] = value
    this.heap.push(value, x)
  }

  private settle(): void {
    const { space, least, residual, n, fromStart, heap } = this
    const { useStart, uses, takers } = space.network
    while (heap.size > 0) {
      const value = heap.minKey
      const x = heap.pop()
      if (value > least[x]!) continue
      const isPlain = x < n
      const node = isPlain ? x : x - n
      for (let k = useStart[node]!, end = useStart[node + 1]!; k < end; k++) {
        const h = takers[2 * k]!
        const a = takers[2 * k + 1]!
        // With this reactant the arc is worth no less than that.
        const offered = residual[a]! + value
        const lowersPlain = isPlain && offered < least[h]!
        if (!lowersPlain && !(fromStart && offered < least[n + h]!)) continue
        if (isPlain && space.leaf[uses[k]!] !== Number.POSITIVE_INFINITY) continue
        this.offer(a)
      }
    }
  }
}
