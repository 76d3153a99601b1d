import { BestFew } from './best-few.ts'
import { Decisions, type Place } from './decisions.ts'
import { type LandmarkCuts, landmarkCuts } from './landmark-cuts.ts'
import { BUY, type Layer } from './partial.ts'
import type { InPieces } from './pieces.ts'
import type { RankedRoute } from './ranked-route.ts'
import type { Space } from './space.ts'
import { Standing } from './standing.ts'

export interface DistinctBestOptions {
  /** Routes wanted. */
  readonly count: number
  /** Routes known already: none worse than the last wanted of them need be found. */
  readonly known: readonly RankedRoute[]
  readonly maxSteps?: number
  /** Work allowed, in partial routes. */
  readonly budget: number
  /** Partial routes below one, at least, before its bound is made sharper. */
  readonly patience?: number
  readonly shouldStop?: () => boolean
}

export interface DistinctBest {
  /** The best found, in order; of equal value fewer steps first, then by ids. */
  readonly routes: readonly RankedRoute[]
  /** Every route that is not among them is worth at least so much; Infinity = there is none. */
  readonly bound: number
  /** It came to its end: these are the best, whatever else there is. */
  readonly isWhole: boolean
}

const defaultPatience = 60
/** Partial routes between two pauses: some milliseconds. */
const slice = 1000
/** Looks of the landmark cuts that take the time of one partial route. */
const looksOfOne = 30
/** Looks for one set of cuts: what took more was always too large to be settled. */
const mostLooks = 400_000
/** Measured: what was settled in the end had a hundredth behind it after so many partial routes, and what never was less than 1e-15. */
const fairTrial = 3000
const leastProgress = 1e-7

/** The node that a partial route decides, and the choices that are still to be tried for it. */
interface Frame {
  readonly place: Place
  choices: readonly Choice[]
  next: number
  /** Partial routes looked at when it was begun. */
  begun: number
}

interface Choice {
  readonly arc: number
  readonly bound: number
}

/**
 * The best routes by a sum over distinct steps: depth first, each open node by each of its makers, the most promising first; what cannot beat
 * the last of the best found is left. The bound of a partial route: what its steps cost, the price of every landmark cut that none of them is
 * in, and what is left, after the prices, of the cheapest maker of each open node. Where a partial route takes long, cuts are made anew for
 * it, with its own steps paid up: they are sharper than those of the whole, and hold for everything below.
 *
 * Pauses wherever a search does. Ends at its budget, and where so little lies behind after a fair trial that no budget would do.
 */
export function* distinctBest(
  space: Space,
  labels: Float64Array,
  layers: readonly Layer[],
  target: number,
  options: DistinctBestOptions,
): InPieces<DistinctBest> {
  const descent = new Descent(space, labels, layers, target, options)
  while (!descent.advance(slice)) yield
  return descent.found
}

class Descent {
  private readonly best: BestFew
  private readonly standing: Standing
  private readonly decisions: Decisions
  private readonly frames: Frame[] = []
  /** Frames, from the first, whose cuts are their own. */
  private sharp = 1
  private nodes = 0
  private looks = 0
  private readonly patience: number
  /** Making cuts anew is worth its while where as many partial routes as it takes the time of were not enough. */
  private threshold: number

  constructor(
    private readonly space: Space,
    private readonly labels: Float64Array,
    private readonly layers: readonly Layer[],
    private readonly target: number,
    private readonly options: DistinctBestOptions,
  ) {
    this.best = new BestFew(space, options.count)
    this.patience = options.patience ?? defaultPatience
    this.threshold = this.patience
    for (const route of options.known) this.best.keep(route.arcs)
    this.decisions = new Decisions(space, labels, layers, target)
    this.standing = new Standing(space, this.cut(space))
    if (this.standing.value < Number.POSITIVE_INFINITY) this.begin()
  }

  /** @returns true where it came to its end, or was ended */
  advance(nodes: number): boolean {
    const { frames, options, decisions, standing } = this
    for (let left = nodes; left > 0 && frames.length > 0; left--) {
      if (this.nodes + this.looks / looksOfOne >= options.budget) return true
      const dull = frames[this.sharp]
      if (dull !== undefined && this.nodes - dull.begun > this.threshold) {
        this.sharpen(dull)
        continue
      }
      const frame = frames[frames.length - 1]!
      this.undo(frame)
      const choice = frame.choices[frame.next]
      if (choice === undefined || choice.bound > this.best.limit) {
        this.leave()
        continue
      }
      frame.next++
      this.nodes++
      decisions.decide(frame.place, choice.arc)
      if (choice.arc !== BUY) standing.pay(choice.arc)
      if (!decisions.isDead(options.maxSteps ?? Number.POSITIVE_INFINITY)) this.begin()
    }
    return frames.length === 0 || this.isHopeless || (options.shouldStop?.() ?? false)
  }

  get found(): DistinctBest {
    let bound = this.best.last
    for (const { choices, next } of this.frames) bound = Math.min(bound, choices[next]?.bound ?? Number.POSITIVE_INFINITY)
    return { routes: this.best.routes, bound, isWhole: this.frames.length === 0 }
  }

  /** The part of all partial routes that lies behind, if all choices for one node had equally many below them. */
  private get isHopeless(): boolean {
    if (this.nodes < fairTrial) return false
    let part = 1
    let behind = 0
    for (const { choices, next } of this.frames) {
      let promising = 0
      while (promising < choices.length && choices[promising]!.bound <= this.best.limit) promising++
      if (promising === 0) break
      behind += (part * Math.max(0, next - 1)) / promising
      part /= promising
    }
    return behind < leastProgress
  }

  /** Begins with the next node that needs a decision, or keeps the route where there is none. */
  private begin(): void {
    const place = this.decisions.take()
    if (place === null) {
      if (this.decisions.meetsAll) this.keep()
      return
    }
    this.standing.down()
    this.frames.push({ place, choices: this.choicesOf(place.node), next: 0, begun: this.nodes })
  }

  private undo({ place }: Frame): void {
    const arc = this.decisions.choice[place.node]!
    if (arc === -1) return
    this.decisions.undo(place)
    this.standing.back(arc)
  }

  private leave(): void {
    const frame = this.frames.pop()!
    this.undo(frame)
    if (this.frames.length < this.sharp) {
      this.sharp = this.frames.length
      if (this.sharp > 0) this.standing.dull()
    }
    this.standing.up()
    this.decisions.putBack(frame.place)
  }

  private keep(): void {
    const arcs: number[] = []
    for (const { place } of this.frames) {
      const arc = this.decisions.choice[place.node]!
      if (arc >= 0) arcs.push(this.space.arcOf[arc]!)
    }
    this.best.keep(arcs.sort((a, b) => a - b))
  }

  /** Choices for a node that close no circle and can still beat the last of the best, the most promising first. */
  private choicesOf(node: number): Choice[] {
    const { space, standing, decisions, labels } = this
    const { makerStart, makers } = space.network
    const choices: Choice[] = []
    const besides = decisions.besides(node, standing.least)
    if (space.twin === null && space.mayBeLeaf[node] === 1 && node !== this.target)
      choices.push({ arc: BUY, bound: standing.value + besides })
    if (labels[node] === Number.POSITIVE_INFINITY) return choices
    for (let k = makerStart[node]!, end = makerStart[node + 1]!; k < end; k++) {
      const arc = makers[k]!
      if (space.masked[arc] || space.arcOf[arc] === -1) continue
      const opened = decisions.openedBy(node, arc, besides, standing.least)
      if (opened === Number.POSITIVE_INFINITY) continue
      const bound = standing.value + standing.payable(arc) + opened
      if (bound <= this.best.limit) choices.push({ arc, bound })
    }
    return choices.sort((a, b) => a.bound - b.bound || a.arc - b.arc)
  }

  /** Cuts made anew for a partial route: its own steps paid up, no other maker for what it makes. */
  private sharpen(frame: Frame): void {
    const { frames, space, standing, decisions } = this
    const { choice, chain } = decisions
    while (frames[frames.length - 1] !== frame) this.leave()
    this.undo(frame)
    const held = new Held(space)
    for (const { place } of frames) {
      const arc = choice[place.node]!
      if (arc === -1) continue
      held.to(place.node, arc)
      // What the chain makes is handed on to the side.
      if (place.node >= chain && place.node - chain !== space.start) held.to(place.node - chain, null)
    }
    const before = this.looks
    standing.sharpen(own => {
      for (const { place } of frames) if (choice[place.node]! >= 0) own[choice[place.node]!] = 0
      return this.cut({ ...space, own, masked: held.masked, leaf: held.leaf })
    })
    this.threshold = Math.max(this.patience, (this.looks - before) / looksOfOne)
    this.sharp++
    frame.begun = this.nodes
    frame.next = 0
    frame.choices = standing.value === Number.POSITIVE_INFINITY ? [] : this.choicesOf(frame.place.node)
  }

  private cut(space: Space): LandmarkCuts {
    const cuts = landmarkCuts(
      space,
      this.target,
      this.layers.map(layer => layer.must),
      mostLooks,
    )
    // Labels look at every arc.
    this.looks += cuts.work + space.own.length
    return cuts
  }
}

/** A space in which decided nodes are held to their decisions. */
class Held {
  readonly masked: Uint8Array
  readonly leaf: Float64Array

  constructor(private readonly space: Space) {
    this.masked = space.masked.slice()
    this.leaf = space.leaf.slice()
  }

  /** @param arc `BUY`, or null for what the chain hands on */
  to(node: number, arc: number | null): void {
    const { network, arcOf, mayBeLeaf } = this.space
    const { makerStart, makers, useStart, uses } = network
    for (let k = makerStart[node]!; k < makerStart[node + 1]!; k++) {
      const maker = makers[k]!
      if (arc === null ? arcOf[maker] !== -1 : maker !== arc) this.masked[maker] = 1
    }
    if (arc === BUY || !mayBeLeaf[node]) return
    for (let k = useStart[node]!; k < useStart[node + 1]!; k++) this.leaf[uses[k]!] = Number.POSITIVE_INFINITY
  }
}
