import { type Labels, slack } from './best.ts'
import { leastOwn, makersInOrder } from './makers.ts'
import { BUY, type Layer, type MakerOrder, type Overlay, PartialRoutes } from './partial.ts'
import { PartialTable } from './partial-table.ts'
import { stepsOfBest } from './plateau.ts'
import { RouteQueue, stepPart } from './queue.ts'
import { inOrder, type RankedRoute } from './ranked-route.ts'
import { LabelRepair } from './repair.ts'
import type { Space } from './space.ts'
import { straightDown } from './straight-down.ts'
import { labelsThrough, type Must } from './through.ts'

export interface SearchOptions {
  /** No route has more steps. */
  readonly maxSteps?: number
  /** Work allowed, in partial routes taken up; the answer is then the same on every machine. */
  readonly budget?: number
  /** The same for what is settled depth first, by distinct steps, where that budget ended the search; without it, the same again. */
  readonly settleBudget?: number
  /** Partial routes taken up without a route before labels are repaired. */
  readonly patience?: number
  /** Partial routes taken up without a route before the order by steps among equal values is given up. */
  readonly plateauPatience?: number
  /** Asked now and then; true ends the search. */
  readonly shouldStop?: () => boolean
}

/** Measured: with 200 the median falls, but the worst cases rise by up to a factor of three. */
const defaultPatience = 50
const defaultBudget = 200_000
const defaultPlateauPatience = 2000
/** A partial route of so many decisions takes about twice as long as the first ones. */
const depthOfDouble = 50
/** Nodes settled again by a repair that count as one partial route taken up: measured, both take some microseconds. */
const workOfOnePop = 10
/** A repair that would settle more nodes than this is not done: on networks so large it takes longer than what it spares. */
const mostRepaired = 20_000

/** One space with its labels and scratch arrays, for as many targets as are asked for; their streams may run side by side. */
export class RouteSearch {
  readonly partial: PartialRoutes
  readonly repair: LabelRepair
  readonly layers: readonly Layer[]
  /** Makers in order under the network's own labels, by node. */
  readonly orders = new Map<number, MakerOrder>()

  /** @param musts demands that every route meets */
  constructor(
    readonly space: Space,
    readonly labels: Labels,
    musts: readonly Must[] = [],
  ) {
    this.layers = musts.map((must): Layer => {
      const meets = new Uint8Array(labels.value.length)
      for (const node of must.nodes) meets[node] = 1
      return { must, value: labelsThrough(space, labels.value, must), meets }
    })
    this.partial = new PartialRoutes(space, labels.value, this.layers, leastOwn(space))
    this.repair = new LabelRepair(space, labels.value, labels.best)
  }

  /** @param target node of the space: see `targetNode` */
  routesTo(target: number, options: SearchOptions = {}): RouteStream {
    return new RouteStream(this, target, options)
  }
}

/**
 * The k best routes to a target, one after the other: best first over partial routes.
 *
 * A partial route is a set of decisions; the next compound to decide is the first open one. An entry of the queue is a partial route, or a
 * *group*: a partial route with "its open compound is made by its maker of rank r or a later one". A group is split into rank r and the rest,
 * so that every route lies in exactly one entry and each entry's bound holds for all it stands for.
 */
export class RouteStream {
  /** Work done so far: partial routes taken up, and repairs as so many of them. */
  pops = 0
  /** All routes have been handed out. */
  complete = false
  /** The last call ended because the work it was given was done: ask again and the search goes on where it stood. */
  paused = false
  private readonly space: Space
  private readonly labels: Labels
  private readonly partial: PartialRoutes
  private readonly queue = new RouteQueue()
  private readonly budget: number
  /** Shrinks while repairs find labels wrong, grows again while they do not. */
  private patience: number
  private readonly fullPatience: number
  private readonly plateauPatience: number
  private readonly maxSteps: number
  private readonly rows = new PartialTable()
  /** Repairs by partial route; null = it would have been too much work. */
  private readonly repaired = new Map<number, Overlay | null>()
  private readonly ready: RankedRoute[] = []
  /** Routes found that tie with those still in the queue: they are put in order once all of them are there. */
  private tied: RankedRoute[] = []
  private tieKey = Number.POSITIVE_INFINITY
  /** Routes handed out; by their arcs once some are found before their turn. */
  private readonly handedOut: RankedRoute[] = []
  private early: Set<string> | null = null
  /** A bound of what is still to come, known before the search began again. */
  private floor = Number.NEGATIVE_INFINITY
  /** Partial routes taken up since the last route, or since one was deeper than all before: going down a long route is no drowning. */
  private sinceRoute = 0
  private deepest = 0
  /** Work since the last route, a partial route the heavier the deeper it is, since it takes the longer. */
  private stuck = 0
  private turns = 0

  constructor(
    readonly search: RouteSearch,
    readonly target: number,
    private readonly options: SearchOptions,
  ) {
    this.space = search.space
    this.labels = search.labels
    this.partial = search.partial
    this.budget = options.budget ?? defaultBudget
    this.fullPatience = options.patience ?? defaultPatience
    this.patience = this.fullPatience
    // A sum over distinct steps has bounds that rise with every decision: there is no plateau to be left.
    this.plateauPatience = search.space.form === 'distinct' ? Number.POSITIVE_INFINITY : (options.plateauPatience ?? defaultPlateauPatience)
    this.maxSteps = options.maxSteps ?? Number.POSITIVE_INFINITY
    this.partial.begin()
    this.add(-1, -1, 0, null, true, false)
  }

  /** On a plateau: from the top once more, straight down; what was found comes by again and is passed over. */
  private beginAgain(): void {
    this.floor = this.queue.minKey
    this.early = new Set([...this.handedOut, ...this.tied].map(route => route.arcs.join()))
    this.partial.stepsOfBest ??= stepsOfBest(this.space, this.labels.value)
    this.queue.dive()
    this.rows.clear()
    this.repaired.clear()
    this.partial.begin()
    this.add(-1, -1, 0, null, true, false)
  }

  /** Lower bound of every route not yet handed out; Infinity where none is left. */
  get bound(): number {
    const next = this.ready[this.ready.length - 1]
    return next ? next.value : Math.max(this.floor, this.queue.minKey)
  }

  /** Routes of one value come by fewer steps and then by ids; false once that order was given up, on a plateau too large to be ordered. */
  get tiesInOrder(): boolean {
    return !this.queue.diving
  }

  /**
   * The next best route, or null: then `paused` tells whether only the work given was done, and `complete` whether there is none, or the
   * budget or the caller ended the search.
   *
   * @param work partial routes to take up before it pauses; how the work is divided changes nothing in what is found
   */
  next(work = Number.POSITIVE_INFINITY): RankedRoute | null {
    this.paused = false
    const waiting = this.ready.pop()
    if (waiting) return this.handed(waiting)
    const until = this.pops + work
    let stopped = false
    for (;;) {
      const key = this.queue.minKey
      if (key === Number.POSITIVE_INFINITY || key > this.tieKey) break
      if (this.pops >= this.budget || (++this.turns % 256 === 0 && this.options.shouldStop?.())) {
        stopped = true
        break
      }
      if (this.pops >= until) {
        this.paused = true
        return null
      }
      this.pops++
      this.sinceRoute++
      if (this.stuck > this.plateauPatience && !this.queue.diving) {
        this.beginAgain()
        if (this.tied.length > 0) break
        continue
      }
      this.queue.take()
      const { state, rank } = this.queue
      this.stuck += 1 + this.rows.depth[state]! / depthOfDouble
      if (rank >= 0) this.split(state, rank)
      else if (this.rows.open[state] === -1) {
        const route = this.finished(state)
        if (this.early?.has(route.arcs.join())) continue
        if (this.tied.length === 0) this.tieKey = key + stepPart * 0.5 * (1 + Math.abs(key))
        this.tied.push(route)
      } else {
        if (this.rows.depth[state]! > this.deepest) {
          this.deepest = this.rows.depth[state]!
          this.sinceRoute = 0
        }
        const route = this.early === null || this.rows.straightened[state] ? null : this.straight(state)
        this.expand(state, key)
        if (route !== null) {
          this.begun()
          return this.handed(route)
        }
      }
    }
    this.begun()
    if (this.tied.length === 0) {
      this.complete = !stopped
      return null
    }
    this.ready.push(...inOrder(this.tied).reverse())
    this.tied = []
    this.tieKey = Number.POSITIVE_INFINITY
    return this.handed(this.ready.pop()!)
  }

  /** A route is there, and the way to the next begins. */
  private begun(): void {
    this.sinceRoute = 0
    this.deepest = 0
    this.stuck = 0
  }

  private handed(route: RankedRoute): RankedRoute {
    if (this.early === null) this.handedOut.push(route)
    else this.early.add(route.arcs.join())
    return route
  }

  /**
   * On a plateau: a partial route made complete by the best maker of whatever is open. Where that is worth what the bound says, no route still
   * to come is better, and it need not wait until the search has gone down to it.
   *
   * @returns null where it goes round in a circle, is worth less, or was handed out before
   */
  private straight(state: number): RankedRoute | null {
    this.rows.straightened[state] = true
    const isThere = straightDown({
      space: this.space,
      partial: this.partial,
      target: this.target,
      overlay: this.rows.overlay[state]!,
      decisions: this.rows.decisionsOf(state),
      bestOf: node => (this.mayBeBought(node) ? BUY : this.orderOf(state, node).arcs[0]),
      goesOn: () => {
        this.pops += 0.5
        return this.isPossible() && this.pops < this.budget
      },
    })
    if (!isThere) return null
    const route = this.found()
    return this.early!.has(route.arcs.join()) ? null : route
  }

  /** Takes up a partial route: its open compound is bought, or made. */
  private expand(state: number, key: number): void {
    if (this.sinceRoute > this.patience && !this.rows.exact[state] && this.tightened(state, key)) return
    const node = this.rows.open[state]!
    if (this.mayBeBought(node)) {
      this.load(state)
      this.partial.decide(node, BUY)
      this.add(state, node, BUY, this.rows.overlay[state]!, false, true)
      this.pushGroup(state, 0)
    } else this.split(state, 0)
  }

  private mayBeBought(node: number): boolean {
    return this.space.twin === null && this.space.mayBeLeaf[node] === 1 && node !== this.target
  }

  /**
   * Repairs labels for a partial route and, before it, for those it came from, the shallowest first: what is wrong high up is wrong for all
   * that lies below, and is put right for all of it at once. One repair at a time, so that a budget or whoever waits can end it between two.
   *
   * @returns true where the bound rose or there is more to repair: the partial route then waits for its turn again, or has no completion and
   *   is gone
   */
  private tightened(state: number, key: number): boolean {
    const path: number[] = []
    for (let s = state; s > this.rows.overlayOf[state]! && s > 0; s = this.rows.parent[s]!) path.push(s)
    for (let i = path.length - 1; i >= 0; i--) {
      const ancestor = path[i]!
      let overlay = this.repaired.get(ancestor)
      const isNew = overlay === undefined
      if (overlay === undefined) {
        if (this.rows.exact[ancestor]) continue
        if (this.pops >= this.budget) break
        const most = Math.min(mostRepaired, workOfOnePop * (this.budget - this.pops))
        overlay = this.search.repair.overlay(this.rows.decisionsOf(ancestor), most)
        this.repaired.set(ancestor, overlay)
        const work = Math.ceil(this.search.repair.work / workOfOnePop)
        this.pops += work
        this.stuck += work
      }
      if (overlay === null) continue
      this.rows.overlay[state] = overlay
      this.rows.overlayOf[state] = ancestor
      this.rows.straightened[state] = false
      if (ancestor === state) this.rows.exact[state] = true
      this.load(state)
      const bound = this.partial.evaluate(this.target, overlay, -1, 0)
      const isPossible = bound < Number.POSITIVE_INFINITY
      const hasRisen = !isPossible || this.queue.keyOf(bound, this.partial.found) > key
      if (hasRisen) this.patience >>= 1
      if (isPossible) this.rows.open[state] = this.partial.found.open
      if (hasRisen || (isNew && i > 0)) {
        if (isPossible) this.queue.put(this.partial.found, state, -1)
        return true
      }
    }
    this.rows.exact[state] = true
    this.patience = Math.min(2 * this.patience + 1, this.fullPatience)
    return false
  }

  /** Splits a group into its first maker and the rest. */
  private split(state: number, rank: number): void {
    const node = this.rows.open[state]!
    const { arcs, keys } = this.orderOf(state, node)
    const arc = arcs[rank]
    if (arc === undefined) return
    this.pushGroup(state, rank + 1)
    this.load(state)
    this.partial.decide(node, arc)
    // A compound decided for its own best maker leaves exact labels exact.
    const label = this.rows.overlay[state]?.value.get(node) ?? this.labels.value[node]!
    const exact = this.rows.exact[state]! && rank === 0 && !this.space.mayBeLeaf[node] && keys[0]! >= label * slack
    this.add(state, node, arc, this.rows.overlay[state]!, exact, rank === 0 && !this.mayBeBought(node))
  }

  private pushGroup(state: number, rank: number): void {
    const node = this.rows.open[state]!
    const order = this.orderOf(state, node)
    if (rank >= order.arcs.length) return
    this.load(state)
    this.partial.evaluate(this.target, this.rows.overlay[state]!, node, order.keys[rank]!)
    if (this.isPossible()) this.queue.put(this.partial.found, state, rank)
  }

  /**
   * Evaluates the decisions that stand loaded, and queues them as a partial route where they have a completion.
   *
   * @param isFirstChoice best makers would have decided so
   */
  private add(parent: number, node: number, choice: number, overlay: Overlay | null, exact: boolean, isFirstChoice: boolean): void {
    this.partial.evaluate(this.target, overlay, -1, 0)
    if (!this.isPossible()) return
    const state = this.rows.add(parent, node, choice, this.partial.found.open, overlay, exact, isFirstChoice)
    this.queue.put(this.partial.found, state, -1)
  }

  private isPossible(): boolean {
    const { bound, steps, mustMake } = this.partial.found
    return bound < Number.POSITIVE_INFINITY && steps + mustMake <= this.maxSteps
  }

  /** Loads the decisions of a partial route into the evaluation. */
  private load(state: number): void {
    this.partial.begin()
    for (let s = state; s > 0; s = this.rows.parent[s]!) this.partial.decide(this.rows.node[s]!, this.rows.choice[s]!)
  }

  private orderOf(state: number, node: number): MakerOrder {
    const overlay = this.rows.overlay[state] ?? null
    const orders = overlay?.orders ?? this.search.orders
    let order = orders.get(node)
    if (!order) {
      order = makersInOrder(this.space, this.labels.value, overlay, node)
      orders.set(node, order)
    }
    return order
  }

  private finished(state: number): RankedRoute {
    this.load(state)
    this.partial.evaluate(this.target, null, -1, 0)
    return this.found()
  }

  /** The route that stands evaluated. */
  private found(): RankedRoute {
    const value = this.partial.found.bound
    const arcs = this.partial.arcs.map(a => this.space.arcOf[a]!).sort((a, b) => a - b)
    return { arcs, value }
  }
}
