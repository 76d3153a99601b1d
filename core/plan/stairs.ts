import { type Library, transformationOf } from '../library/library.ts'
import type { ChargedStep } from '../route/charged.ts'
import { overallYieldOnStart } from '../route/overall-yield.ts'
import type { Route, Step } from '../route/route.ts'
import type { Amounts } from './amounts.ts'
import type { GoalResult } from './evaluation.ts'

/**
 * The treads of a goal's yield staircase: what survives of the start after each of its steps, as a fraction of what theory allows from the
 * same start. Steps into which none of the start goes (a co-reactant made from what is bought) have no tread.
 *
 * @param yields what the steps give: of the plan, or really got where logged
 */
export function stairsOf(
  library: Library,
  amounts: Amounts,
  steps: readonly ChargedStep[],
  goal: number,
  yields: ReadonlyMap<string, number>,
): GoalResult['stairs'] {
  const { merged } = amounts
  const own = merged.stepsOfGoal[goal] ?? []
  const stairs: GoalResult['stairs'][number][] = []
  const fromStart = new Set([merged.start])
  for (const id of own) {
    const transformation = transformationOf(library, id)
    if (!transformation.reactants.some(r => fromStart.has(r.compound))) continue
    fromStart.add(transformation.mainProduct)
    const step = steps.find(s => s.transformation === id)
    if (!step) continue
    const expected = overallYieldOnStart(library, partOf(library, merged.start, transformation.mainProduct, merged.steps), yields)
    // The spread of the step's mass is that of the fraction: the start is what it is.
    const part = (massG: number): number => (step.expectedG > 0 ? (expected * massG) / step.expectedG : 0)
    stairs.push({
      step: step.number,
      compound: step.makes,
      p10: part(step.p10G),
      median: part(step.medianG),
      p90: part(step.p90G),
      expected,
    })
  }
  return stairs
}

/** The part of merged steps that leads to a compound, as a route. */
export function partOf(library: Library, start: string, target: string, steps: readonly Step[]): Route {
  const needed = new Set([target])
  const found: Step[] = []
  for (let i = steps.length - 1; i >= 0; i--) {
    const step = steps[i]!
    if (!needed.has(step.makes)) continue
    found.unshift(step)
    for (const { compound } of transformationOf(library, step.transformation).reactants) needed.add(compound)
  }
  return { start, target, steps: found }
}
