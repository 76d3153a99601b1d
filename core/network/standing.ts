import type { LandmarkCuts } from './landmark-cuts.ts'
import { leastOwn } from './makers.ts'
import type { Space } from './space.ts'

/**
 * What a partial route is worth at least by a sum over distinct steps, kept up while it is gone down and up again: what its steps cost, and the
 * prices of the cuts that none of them is in.
 */
export class Standing {
  value = 0
  /** By node, what is left, after the prices, of the figure of its cheapest maker; 0 where it may be bought. */
  least: Float64Array
  private residual: Float64Array
  private readonly prices: number[] = []
  private readonly members: Int32Array[] = []
  /** By cut, steps of the partial route that are in it. */
  private readonly hits: number[] = []
  /** By cut: its price is paid back to its arcs, since the partial route for which others were made anew is in it. */
  private readonly paidBack: boolean[] = []
  /** By arc, the cuts it is in. */
  private readonly cutsOf: number[][]
  /** Values before the decision at each depth. */
  private readonly before: number[] = []
  private readonly dulled: { cuts: number; residual: Float64Array; least: Float64Array; paidBack: readonly number[] }[] = []

  constructor(
    private readonly space: Space,
    cuts: LandmarkCuts,
  ) {
    this.residual = space.own
    this.least = space.own
    this.cutsOf = Array.from(space.own, () => [])
    this.add(cuts)
  }

  /** One deeper: what is paid from now on is taken back by `back`. */
  down(): void {
    this.before.push(this.value)
  }

  up(): void {
    this.value = this.before.pop()!
  }

  /** What a step would add: its own figure less the prices of the cuts that it is the first in. */
  payable(arc: number): number {
    const { hits, prices } = this
    const cuts = this.cutsOf[arc]!
    let value = this.space.own[arc]!
    for (let i = 0; i < cuts.length; i++) if (hits[cuts[i]!] === 0) value -= prices[cuts[i]!]!
    return value
  }

  pay(arc: number): void {
    this.value += this.payable(arc)
    for (const cut of this.cutsOf[arc]!) this.hits[cut]!++
  }

  /** Takes the decision at this depth back. @param arc below 0 where it was no step */
  back(arc: number): void {
    if (arc >= 0) for (const cut of this.cutsOf[arc]!) this.hits[cut]!--
    this.value = this.before[this.before.length - 1]!
  }

  /**
   * Cuts made anew for the partial route that stands.
   *
   * @param cutsFor the cuts where so much may be charged for each arc
   */
  sharpen(cutsFor: (own: Float64Array) => LandmarkCuts): void {
    const own = this.residual.slice()
    const paidBack: number[] = []
    for (let cut = 0; cut < this.prices.length; cut++) {
      if (this.hits[cut] === 0 || this.paidBack[cut]) continue
      this.paidBack[cut] = true
      paidBack.push(cut)
      const price = this.prices[cut]!
      for (const a of this.members[cut]!) own[a]! += price
    }
    this.dulled.push({ cuts: this.prices.length, residual: this.residual, least: this.least, paidBack })
    this.add(cutsFor(own))
    this.before[this.before.length - 1] = this.value
  }

  /** Takes the cuts of the last `sharpen` away. */
  dull(): void {
    const { cuts, residual, least, paidBack } = this.dulled.pop()!
    for (const cut of paidBack) this.paidBack[cut] = false
    while (this.prices.length > cuts) {
      for (const a of this.members.pop()!) this.cutsOf[a]!.pop()
      this.prices.pop()
      this.hits.pop()
      this.paidBack.pop()
    }
    this.residual = residual
    this.least = least
  }

  private add(cuts: LandmarkCuts): void {
    for (const [i, members] of cuts.members.entries()) {
      for (const a of members) this.cutsOf[a]!.push(this.prices.length)
      this.prices.push(cuts.prices[i]!)
      this.members.push(members)
      this.hits.push(0)
      this.paidBack.push(false)
    }
    this.value += cuts.total
    this.residual = cuts.residual
    this.least = leastOwn({ ...this.space, own: cuts.residual })
    const { mayBeLeaf } = this.space
    for (let x = 0; x < this.least.length; x++) if (mayBeLeaf[x] || this.least[x] === Number.POSITIVE_INFINITY) this.least[x] = 0
  }
}
