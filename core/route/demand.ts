import type { Library } from '../library/library.ts'
import { flowOf } from './flow.ts'
import { typicalYield, type Yields } from './overall-yield.ts'
import type { Step } from './route.ts'

/** What a list of steps must be given for what is wanted of it, in grams of compound. */
export interface Demand {
  /** By transformation: grams of its limiting compound. */
  readonly limitingG: ReadonlyMap<string, number>
  /** By compound: what all steps and wants together take of it, made, bought or started from. */
  readonly compoundG: ReadonlyMap<string, number>
}

export interface DemandOptions {
  /** Planning yields; what is missing is taken at its typical one. */
  readonly yields?: Yields
  /** Compounds that are there and not made again (a logged product): their makers run for nothing. */
  readonly inHand?: ReadonlySet<string>
  /** Fixed loss of a whole step, g; default the library's loss per isolation. */
  readonly lossG?: (transformation: string) => number
}

/**
 * Backwards: demands run up the steps in reverse working order, summing over consumers. A made co-reactant is demanded as charged, its
 * excess included. With a fixed loss the demand is affine: a step that makes anything makes its loss as well.
 *
 * @param steps in working order, one maker a compound
 * @param wants grams wanted by compound, goals and what is kept back
 * @throws RangeError for a yield not above 0
 */
export function demandOf(library: Library, steps: readonly Step[], wants: ReadonlyMap<string, number>, opts: DemandOptions = {}): Demand {
  const compoundG = new Map<string, number>()
  for (const [compound, massG] of wants) if (massG > 0) compoundG.set(compound, massG)
  const limitingG = new Map<string, number>()
  for (let i = steps.length - 1; i >= 0; i--) {
    const flow = flowOf(library, steps[i]!.transformation)
    const wanted = opts.inHand?.has(flow.makes) ? 0 : (compoundG.get(flow.makes) ?? 0)
    if (wanted <= 0) {
      limitingG.set(flow.transformation, 0)
      continue
    }
    const fraction = opts.yields?.get(flow.transformation) ?? typicalYield(library, flow.transformation)
    if (!(fraction > 0)) throw new RangeError(`${flow.transformation}: a yield of ${fraction}`)
    const lossG = opts.lossG?.(flow.transformation) ?? flow.lossG
    const limiting = (wanted + lossG) / (fraction * flow.theoryPerG)
    limitingG.set(flow.transformation, limiting)
    for (const need of flow.needs) compoundG.set(need.compound, (compoundG.get(need.compound) ?? 0) + limiting * need.perG)
  }
  return { limitingG, compoundG }
}

/** Rounding of a few additions of like amounts, as a part of them. */
const hair = 1e-12

/** How far a stock reaches, and what sets the limit. */
export interface Reach {
  /** Multiple of the wanted amounts that the stock allows. */
  readonly scale: number
  /** The compound with the smallest stock over demand; null where nothing in stock is demanded. */
  readonly setBy: string | null
}

/**
 * Forwards: the largest multiple of `more`, on top of `wants`, that a stock allows: the smallest ratio of stock to demand, its material
 * named. Exact with fixed losses too: demand is a straight line in the multiple once anything at all is made.
 *
 * @param stock grams by compound; what is not listed is not limited
 * @param opts.wants what is served before
 * @returns scale 0 where the stock does not even cover what is served before; Infinity where it limits nothing
 */
export function reachOf(
  library: Library,
  steps: readonly Step[],
  more: ReadonlyMap<string, number>,
  stock: ReadonlyMap<string, number>,
  opts: DemandOptions & { readonly wants?: ReadonlyMap<string, number> } = {},
): Reach {
  const at = (multiple: number): ReadonlyMap<string, number> => {
    const wants = new Map(opts.wants)
    for (const [compound, massG] of more) wants.set(compound, (wants.get(compound) ?? 0) + massG * multiple)
    return demandOf(library, steps, wants, opts).compoundG
  }
  const one = at(1)
  const two = at(2)
  let reach: Reach = { scale: Number.POSITIVE_INFINITY, setBy: null }
  for (const [compound, massG] of stock) {
    const perUnit = (two.get(compound) ?? 0) - (one.get(compound) ?? 0)
    if (perUnit <= 0) continue
    const fixed = (one.get(compound) ?? 0) - perUnit
    const left = massG - fixed
    // A hair of rounding must not count as something left: it would make a branching where there is none.
    const scale = left <= hair * Math.max(massG, one.get(compound) ?? 0) ? 0 : left / perUnit
    if (scale < reach.scale) reach = { scale, setBy: compound }
  }
  return reach
}
