import type { Network } from './network.ts'

/**
 * How a value is put together, smaller being better.
 * `sum`: own + the sum over reactants, exact for whatever is linear in amounts. `max`: own + the largest over reactants, for what runs side
 * by side. `distinct`: own of every step, counted once however often its product is used; labels are then those of `max`, a
 * lower bound, wherefore its factors are one and its reactants add nothing.
 */
export type Form = 'sum' | 'max' | 'distinct'

/** Figures per mole of main product, as data. NaN = unknown: a search over known values leaves it out. */
export interface Weights {
  readonly form: Form
  /** By arc: what the step adds by itself. */
  readonly own: Float64Array
  /** By use: moles of the reactant, as charged and at the step's yield, per mole of main product. */
  readonly factor: Float64Array
  /** By use: what the reactant adds if it is bought, if it is made (beside factor x its value), if it is the start. */
  readonly bought: Float64Array
  readonly made: Float64Array
  readonly start: Float64Array
}

/** Network and weights as one search walks them: masks laid on, the start set, every unknown turned into "not this way". */
export interface Space {
  readonly network: Network
  readonly form: Form
  /** By arc: 1 = never taken. */
  readonly masked: Uint8Array
  readonly own: Float64Array
  /** By use. `leaf` is what the reactant adds when it is bought or in hand, Infinity where it can be neither. */
  readonly factor: Float64Array
  readonly leaf: Float64Array
  readonly made: Float64Array
  /** By node: 1 = may be a leaf. */
  readonly mayBeLeaf: Uint8Array
  /** Arc of the library's network behind each arc here; -1 for an arc that only hands a compound on. */
  readonly arcOf: Int32Array
  /** Node for "made on the way from the start" behind each node for "taken beside it"; null where the two are not told apart. */
  readonly twin: Int32Array | null
  /** Node of the start. */
  readonly start: number
}

export interface SpaceOptions {
  readonly start: number
  /** By arc: 1 = forbidden. */
  readonly masked: Uint8Array
  /** By compound: 1 = never bought, because it is to be made. */
  readonly opened: Uint8Array
  /** May what can be bought be made as well? Without it, what can be bought is a leaf. */
  readonly makeAll: boolean
}

/** The network as it stands: every compound may be made, and bought where it can be (`makeAll`) or only bought where it can be. */
export function openSpace(network: Network, weights: Weights, options: SpaceOptions): Space {
  const { start, opened, makeAll } = options
  const masked = options.masked.slice()
  const n = network.compounds.length
  const mayBeLeaf = new Uint8Array(n)
  for (let c = 0; c < n; c++) mayBeLeaf[c] = network.buyable[c] && !opened[c] ? 1 : 0
  if (start >= 0) mayBeLeaf[start] = 1
  for (let a = 0; a < masked.length; a++) {
    const head = network.head[a]!
    if (head === start || (!makeAll && mayBeLeaf[head]) || Number.isNaN(weights.own[a]!)) masked[a] = 1
  }
  const uses = network.body.length
  const leaf = new Float64Array(uses)
  const made = new Float64Array(uses)
  for (let u = 0; u < uses; u++) {
    const c = network.body[u]!
    leaf[u] = mayBeLeaf[c] ? known(c === start ? weights.start[u]! : weights.bought[u]!) : Number.POSITIVE_INFINITY
    made[u] = known(weights.made[u]!)
  }
  const arcOf = new Int32Array(masked.length)
  for (let a = 0; a < arcOf.length; a++) arcOf[a] = a
  return { network, form: weights.form, masked, own: weights.own, factor: weights.factor, leaf, made, mayBeLeaf, arcOf, twin: null, start }
}

/** The smaller of what a reactant adds when made and when bought. A factor of nought times no label is no number: then the latter. */
// biome-ignore lint/complexity/useMathMinMax: Math.min would pass NaN on
export const lesser = (made: number, leaf: number): number => (made < leaf ? made : leaf)

export const known = (value: number): number => (Number.isNaN(value) ? Number.POSITIVE_INFINITY : value)

/** The node that stands for "this compound as the target". */
export const targetNode = (space: Space, compound: number): number => (space.twin === null ? compound : compound + space.twin.length / 2)

/** Far above every figure of a real route, and still small enough for sums of it to be exact in their order. */
const worst = 1e15

/** Weights in which what is unknown counts as the worst there is, instead of leaving the route out. */
export function withUnknownLast(weights: Weights): Weights {
  const filled = (list: Float64Array): Float64Array => list.map(value => (Number.isNaN(value) ? worst : value))
  const { form, factor, own, bought, made, start } = weights
  return { form, factor, own: filled(own), bought: filled(bought), made: filled(made), start: filled(start) }
}
