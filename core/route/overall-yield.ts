import { type Library, transformationOf } from '../library/library.ts'
import { coefficientOf } from '../library/reference-charge.ts'
import { flowOf } from './flow.ts'
import type { Route } from './route.ts'

/** Fraction of theory by transformation (isolation: grams per gram of feedstock); what is missing is taken at its typical yield. */
export type Yields = ReadonlyMap<string, number>

/** The typical yield as the library states it, as a fraction. */
export const typicalYield = (library: Library, transformation: string): number =>
  transformationOf(library, transformation).yieldPercent.typical / 100

const yieldOf = (library: Library, yields: Yields | undefined, transformation: string): number =>
  yields?.get(transformation) ?? typicalYield(library, transformation)

/**
 * Overall yield on start: target obtained over target obtainable from the same start by the same route with every yield 1, exact
 * stoichiometry and no loss. Branches that share the start add their demands up; fixed losses, which need a scale, are left out.
 *
 * A recovery from a feedstock is never multiplied in: what an isolation takes counts alike above and below the line.
 *
 * @returns fraction, 0 to 1
 * @throws RangeError where a yield is not above 0, or the route does not use its start: `isRoute` finds that first
 * Source: definition 6 of the design; common practice, no source.
 */
export function overallYieldOnStart(library: Library, route: Route, yields?: Yields): number {
  // Grams of each compound per gram of target: as charged at these yields, and at full yield and exact stoichiometry. Both in one walk, for a
  // search asks this of every route that it draws.
  const charged = new Map<string, number>([[route.target, 1]])
  const exact = new Map<string, number>([[route.target, 1]])
  for (let i = route.steps.length - 1; i >= 0; i--) {
    const flow = flowOf(library, route.steps[i]!.transformation)
    const fraction = flow.isolation ? 1 : yieldOf(library, yields, flow.transformation)
    if (!(fraction > 0)) throw new RangeError(`${flow.transformation}: a yield of ${fraction}`)
    const chargedG = (charged.get(flow.makes) ?? 0) / (fraction * flow.theoryPerG)
    const exactG = (exact.get(flow.makes) ?? 0) / flow.theoryPerG
    for (const { compound, perG, exactPerG } of flow.needs) {
      charged.set(compound, (charged.get(compound) ?? 0) + chargedG * perG)
      exact.set(compound, (exact.get(compound) ?? 0) + exactG * exactPerG)
    }
  }
  const [least, found] = [exact.get(route.start) ?? 0, charged.get(route.start) ?? 0]
  if (!(least > 0 && found > 0)) throw new RangeError(`the route does not use ${route.start}`)
  return least / found
}

/**
 * Yield of the longest linear sequence: the product of the plain step yields, each on its own limiting reactant, along the chain with the
 * most steps from any start or bought reactant to the target; of chains equally long the smallest product. An isolation is a step of the
 * chain with factor 1.
 *
 * @returns fraction, 0 to 1
 * Source: definition 6 of the design; common practice, no source.
 */
export function longestLinearYield(library: Library, route: Route, yields?: Yields): number {
  return longestLinear(library, route, yields).yieldFraction
}

/** The longest linear sequence itself: its transformations, first to last, and their product. */
export function longestLinear(
  library: Library,
  route: Route,
  yields?: Yields,
): { readonly yieldFraction: number; readonly chain: readonly string[] } {
  const best = new Map<string, { yieldFraction: number; chain: readonly string[] }>()
  for (const step of route.steps) {
    const transformation = transformationOf(library, step.transformation)
    let longest: { yieldFraction: number; chain: readonly string[] } = { yieldFraction: 1, chain: [] }
    for (const { compound } of transformation.reactants) {
      const before = best.get(compound)
      if (!before || coefficientOf(transformation, compound) === 0) continue
      const longer = before.chain.length - longest.chain.length
      if (longer > 0 || (longer === 0 && before.yieldFraction < longest.yieldFraction)) longest = before
    }
    const own = transformation.kind === 'isolation' ? 1 : yieldOf(library, yields, transformation.id)
    best.set(step.makes, { yieldFraction: own * longest.yieldFraction, chain: [...longest.chain, transformation.id] })
  }
  const found = best.get(route.target)
  if (!found) throw new RangeError(`no step makes ${route.target}`)
  return found
}
