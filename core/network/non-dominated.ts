import type { Labels } from './best.ts'
import { Heap } from './heap.ts'
import { leastOwn, makersInOrder } from './makers.ts'
import { BUY, type Layer, PartialRoutes } from './partial.ts'
import type { Space } from './space.ts'
import { labelsThrough, type Must } from './through.ts'

/** A route that no other beats on every axis at once. */
export interface FrontRoute {
  readonly arcs: readonly number[]
  /** One value an axis, in the order of the axes asked for. */
  readonly values: readonly number[]
}

export interface Front {
  readonly routes: readonly FrontRoute[]
  /** False = the budget or the caller ended the search: what is listed is real, but some of it may be beaten and some may be missing. */
  readonly complete: boolean
}

export interface FrontOptions {
  readonly maxSteps?: number
  readonly budget?: number
  readonly shouldStop?: () => boolean
}

/** Values closer than this count as equal, as they do in every order of routes. */
const tie = 1e-9

/** Is `a` nowhere worse than `b`? */
export const covers = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((value, axis) => value <= b[axis]! + tie * (1 + Math.abs(b[axis]!)))

/** Of rows of values, smaller being better, the indices of those that no other row beats: nowhere worse, and somewhere better. */
export function nonDominated(rows: readonly (readonly number[])[]): number[] {
  return rows.flatMap((row, i) => (rows.some((other, j) => j !== i && covers(other, row) && !covers(row, other)) ? [] : [i]))
}

/**
 * The non-dominated routes over several axes, exact: the search of `ranked` with one bound an axis, where a partial route is dropped once a
 * route that was found is nowhere worse than its bounds. Of routes with the same values one is listed. Meant for networks of up to some
 * thousand arcs; beyond, the budget ends it.
 *
 * @param spaces  one for each axis, over the same network, masks and start
 */
export function frontOf(
  spaces: readonly Space[],
  labels: readonly Labels[],
  musts: readonly Must[],
  target: number,
  options: FrontOptions = {},
): Front {
  const search = new FrontSearch(spaces, labels, musts, target, options)
  search.advance()
  return search.front()
}

/** The search of {@link frontOf}, for one who looks at other things meanwhile. */
export class FrontSearch {
  /** Work done so far, in partial routes taken up. */
  pops = 0
  private ended: 'not yet' | 'whole' | 'cut short' = 'not yet'
  private readonly partials: readonly PartialRoutes[]
  private readonly heap = new Heap(256)
  private readonly parent: number[] = []
  private readonly node: number[] = []
  private readonly choice: number[] = []
  private readonly open: number[] = []
  private readonly bounds: number[][] = []
  private readonly entryState: number[] = []
  private readonly entryRank: number[] = []
  private readonly entryBounds: number[][] = []
  private found: FrontRoute[] = []
  private readonly orders = new Map<number, { readonly arcs: Int32Array; readonly keys: Float64Array }>()

  constructor(
    private readonly spaces: readonly Space[],
    private readonly labels: readonly Labels[],
    musts: readonly Must[],
    private readonly target: number,
    private readonly options: FrontOptions,
  ) {
    this.partials = spaces.map((space, axis) => {
      const values = labels[axis]!.value
      const layers = musts.map((must): Layer => {
        const meets = new Uint8Array(values.length)
        for (const node of must.nodes) meets[node] = 1
        return { must, value: labelsThrough(space, values, must), meets }
      })
      return new PartialRoutes(space, values, layers, leastOwn(space))
    })
    this.load(-1)
    this.addState(-1, -1, 0)
  }

  /** Routes found so far that no other found beats. */
  get size(): number {
    return this.found.length
  }

  /** @returns true once the search has come to its end */
  advance(work = Number.POSITIVE_INFINITY): boolean {
    const { budget = 200_000, shouldStop } = this.options
    const until = this.pops + work
    while (this.ended === 'not yet' && this.pops < until) {
      if (this.heap.size === 0) {
        this.ended = 'whole'
        break
      }
      if (this.pops >= budget || (this.pops % 256 === 255 && shouldStop?.())) {
        this.ended = 'cut short'
        break
      }
      this.pops++
      const entry = this.heap.pop()
      if (this.isCovered(this.entryBounds[entry]!)) continue
      const state = this.entryState[entry]!
      const rank = this.entryRank[entry]!
      if (rank >= 0) this.split(state, rank)
      else if (this.open[state] === -1) this.keep(state)
      else this.expand(state)
    }
    return this.ended !== 'not yet'
  }

  front(): Front {
    const best = new Set(nonDominated(this.found.map(route => route.values)))
    return { routes: this.found.filter((_, i) => best.has(i)), complete: this.ended === 'whole' }
  }

  private expand(state: number): void {
    const space = this.spaces[0]!
    const node = this.open[state]!
    if (space.twin === null && space.mayBeLeaf[node] && node !== this.target) {
      this.load(state)
      this.decide(node, BUY)
      this.addState(state, node, BUY)
    }
    this.pushGroup(state, 0)
  }

  private split(state: number, rank: number): void {
    const node = this.open[state]!
    const arc = this.orderOf(node).arcs[rank]!
    this.load(state)
    this.decide(node, arc)
    this.addState(state, node, arc)
    this.pushGroup(state, rank + 1)
  }

  private pushGroup(state: number, rank: number): void {
    const node = this.open[state]!
    const { arcs, keys } = this.orderOf(node)
    if (rank >= arcs.length) return
    this.load(state)
    // On the other axes the later makers are not the dearer ones, and only the label holds for all of them.
    const bounds = this.partials.map((partial, axis) =>
      partial.evaluate(this.target, null, node, axis === 0 ? keys[rank]! : this.labels[axis]!.value[node]!),
    )
    this.push(state, rank, bounds)
  }

  private addState(parent: number, node: number, choice: number): void {
    const bounds = this.partials.map(partial => partial.evaluate(this.target, null, -1, 0))
    const { open, steps, mustMake } = this.partials[0]!.found
    if (bounds.includes(Number.POSITIVE_INFINITY) || steps + mustMake > (this.options.maxSteps ?? Number.POSITIVE_INFINITY)) return
    this.parent.push(parent)
    this.node.push(node)
    this.choice.push(choice)
    this.open.push(open)
    this.bounds.push(bounds)
    this.push(this.parent.length - 1, -1, bounds)
  }

  private push(state: number, rank: number, bounds: number[]): void {
    if (bounds.includes(Number.POSITIVE_INFINITY) || this.isCovered(bounds)) return
    this.entryState.push(state)
    this.entryRank.push(rank)
    this.entryBounds.push(bounds)
    this.heap.push(bounds[0]!, this.entryState.length - 1)
  }

  private keep(state: number): void {
    this.load(state)
    const values = this.bounds[state]!
    this.partials[0]!.evaluate(this.target, null, -1, 0)
    const arcs = this.partials[0]!.arcs.map(a => this.spaces[0]!.arcOf[a]!).sort((a, b) => a - b)
    this.found = this.found.filter(route => !covers(values, route.values))
    this.found.push({ arcs, values })
  }

  private isCovered = (bounds: readonly number[]): boolean => this.found.some(route => covers(route.values, bounds))

  private load(state: number): void {
    for (const partial of this.partials) partial.begin()
    for (let s = state; s > 0; s = this.parent[s]!) this.decide(this.node[s]!, this.choice[s]!)
  }

  private decide(node: number, choice: number): void {
    for (const partial of this.partials) partial.decide(node, choice)
  }

  private orderOf(node: number) {
    let order = this.orders.get(node)
    if (!order) {
      order = makersInOrder(this.spaces[0]!, this.labels[0]!.value, null, node)
      this.orders.set(node, order)
    }
    return order
  }
}
