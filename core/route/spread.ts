import { percentiles } from '../yields/percentiles.ts'
import type { Spread } from './charged.ts'
import { DrawArrays } from './draw-arrays.ts'
import type { Flow } from './flow.ts'

/** Who takes a planned amount of a compound: a step (by transformation) or, where null, the goal itself. */
export interface PlannedUse {
  readonly step: string | null
  readonly goal: number
  /** Grams, planned at typical yields. */
  readonly massG: number
}

/** How goals are served at a branching: mass goals first, in order, then shares, then rest. */
export type GoalKind = 'mass' | 'share' | 'rest'

/** One step as the draws see it. */
export interface SpreadStep {
  readonly flow: Flow
  /** Grams of limiting compound planned; what a step without made reactants runs on. */
  readonly limitingG: number
  /** Reactants that earlier steps make. The start is none of them: it is weighed out as planned. */
  readonly madeNeeds: readonly { readonly compound: string; readonly perG: number }[]
  readonly batches: number
  /** Fixed loss of all batches together, g. */
  readonly lossG: number
  /** Already isolated, g, beside what is still to run; its logged consumers taken off. */
  readonly inHandG: number
  /** Still to be run at all: false once every batch is logged. */
  readonly runs: boolean
}

export interface Flowing {
  /** In working order. */
  readonly steps: readonly SpreadStep[]
  /** By compound: every planned use of it. */
  readonly uses: ReadonlyMap<string, readonly PlannedUse[]>
  /** By compound: grams that no goal may use. */
  readonly keptG: ReadonlyMap<string, number>
  readonly kinds: readonly GoalKind[]
}

export interface Drawn {
  /** By transformation: the yield of each draw. */
  readonly yields: ReadonlyMap<string, Float64Array>
  /** By transformation: product of each draw, g. */
  readonly productG: ReadonlyMap<string, Float64Array>
  /** By goal: grams of its target in each draw. */
  readonly goalG: readonly Float64Array[]
}

/** Narrows what is drawn, for an answer that is only looked at. */
export interface DrawnFor {
  /** Goals in question; what only others take is not drawn. */
  readonly goals: ReadonlySet<number>
  /** Where the draws are put; they hold until these start over. */
  readonly arrays: DrawArrays
}

/**
 * Amounts flowing through a plan whose charges were planned before any yield was known, for many draws side by side.
 *
 * A step runs on the smallest supply over demand of its made reactants. At a branching the intermediate as drawn serves what is kept back,
 * then mass goals in order, never beyond the charge planned for them, then shares, each its planned part of what was drawn, then `rest`.
 * Where a compound goes one way only, all of it goes there.
 *
 * @param yields by transformation: the yield of each draw (mean over batches); all of one length
 * @param only   the steps of `plan` must be all that these goals need
 * @returns arrays that may be one and the same where all of a product goes to one goal; not to be written to
 */
export function flowThrough(plan: Flowing, yields: ReadonlyMap<string, Float64Array>, only?: DrawnFor): Drawn {
  const length = [...yields.values()][0]?.length ?? 0
  const arrays = only?.arrays ?? new DrawArrays()
  const running = only && new Set(plan.steps.map(step => step.flow.transformation))
  const flowed: Flowed = {
    plan,
    arrays,
    takes: use => only === undefined || (use.step === null ? only.goals.has(use.goal) : running!.has(use.step)),
    given: new Map(),
    goalG: plan.kinds.map(() => null),
  }
  const productG = new Map<string, Float64Array>()
  for (const step of plan.steps) {
    const { flow } = step
    const product = arrays.next(length)
    const yieldDraws = yields.get(flow.transformation)
    if (step.runs && step.limitingG > 0 && yieldDraws) {
      const supplies = step.madeNeeds.flatMap(need => {
        const draws = flowed.given.get(key(need.compound, flow.transformation))
        return draws ? [{ perG: need.perG, draws }] : []
      })
      run(product, step, yieldDraws, supplies)
    } else product.fill(step.inHandG)
    productG.set(flow.transformation, product)
    divide(flowed, flow.makes, product)
  }
  return { yields, productG, goalG: flowed.goalG.map(draws => draws ?? arrays.next(length).fill(0)) }
}

/** What has been divided so far. */
interface Flowed {
  readonly plan: Flowing
  readonly arrays: DrawArrays
  /** Is this use in question? */
  readonly takes: (use: PlannedUse) => boolean
  /** By compound and consumer: what it is given. */
  readonly given: Map<string, Float64Array>
  readonly goalG: (Float64Array | null)[]
}

const key = (compound: string, step: string): string => `${compound} ${step}`

function run(
  product: Float64Array,
  step: SpreadStep,
  yields: Float64Array,
  supplies: readonly { readonly perG: number; readonly draws: Float64Array }[],
): void {
  const { lossG, inHandG } = step
  const { theoryPerG } = step.flow
  const [first, ...others] = supplies
  if (first === undefined) product.fill(step.limitingG)
  else {
    const { draws, perG } = first
    for (let k = 0; k < product.length; k++) product[k] = draws[k]! / perG
  }
  for (const { draws, perG } of others) for (let k = 0; k < product.length; k++) product[k] = Math.min(product[k]!, draws[k]! / perG)
  for (let k = 0; k < product.length; k++) product[k] = inHandG + Math.max(0, product[k]! * theoryPerG * yields[k]! - lossG)
}

/** Takers of one compound, those of a goal together. */
interface Group {
  readonly goal: number
  readonly massG: number
  readonly members: readonly { readonly draws: Float64Array; readonly part: number }[]
}

function divide(flowed: Flowed, compound: string, drawn: Float64Array): void {
  const { plan, arrays, takes } = flowed
  const uses = (plan.uses.get(compound) ?? []).filter(u => u.massG > 0)
  const keptG = plan.keptG.get(compound) ?? 0
  if (!uses.some(takes)) return
  if (new Set(uses.map(u => u.step ?? `goal ${u.goal}`)).size === 1) {
    const { step, goal } = uses[0]!
    const draws = keptG === 0 ? drawn : less(arrays.next(drawn.length), drawn, keptG)
    if (step === null) flowed.goalG[goal] = draws
    else flowed.given.set(key(compound, step), draws)
    return
  }
  const groups = (kind: GoalKind): Group[] => {
    const found: Group[] = []
    for (const goal of new Set(uses.map(u => u.goal))) {
      if (plan.kinds[goal] !== kind) continue
      const own = uses.filter(u => u.goal === goal)
      const massG = own.reduce((sum, u) => sum + u.massG, 0)
      const members = own.filter(takes).map(u => ({ draws: drawsOf(flowed, compound, u, drawn.length), part: u.massG / massG }))
      found.push({ goal, massG, members })
    }
    return found.sort((a, b) => a.goal - b.goal)
  }
  const mass = groups('mass')
  const shares = groups('share')
  const rest = groups('rest')
  const there = less(arrays.next(drawn.length), drawn, keptG)
  const left = arrays.next(drawn.length)
  left.set(there)
  const taken = arrays.next(drawn.length)
  for (const group of mass) {
    const { massG } = group
    for (let k = 0; k < left.length; k++) {
      const own = Math.min(left[k]!, massG)
      taken[k] = own
      left[k] = left[k]! - own
    }
    give(group, taken, 1)
  }
  const shareG = shares.reduce((sum, g) => sum + g.massG, 0)
  if (shareG > 0 && [...shares, ...rest].some(g => g.members.length > 0)) {
    const plannedG = uses.reduce((sum, u) => sum + u.massG, 0)
    for (let k = 0; k < left.length; k++) {
      const part = Math.min((there[k]! * shareG) / plannedG, left[k]!) / shareG
      taken[k] = part
      left[k] = left[k]! - shareG * part
    }
    for (const group of shares) give(group, taken, group.massG)
  }
  // At most one goal is `rest`.
  for (const group of rest) give(group, left, 1)
}

/** What is drawn of a compound, less what is kept back of it. */
function less(result: Float64Array, drawn: Float64Array, keptG: number): Float64Array {
  for (let k = 0; k < result.length; k++) result[k] = Math.max(0, drawn[k]! - keptG)
  return result
}

/** Where a use gathers what it is given. */
function drawsOf(flowed: Flowed, compound: string, use: PlannedUse, length: number): Float64Array {
  if (use.step === null) {
    flowed.goalG[use.goal] ??= flowed.arrays.next(length).fill(0)
    return flowed.goalG[use.goal]!
  }
  const name = key(compound, use.step)
  let draws = flowed.given.get(name)
  if (!draws) {
    draws = flowed.arrays.next(length).fill(0)
    flowed.given.set(name, draws)
  }
  return draws
}

function give(group: Group, massG: Float64Array, times: number): void {
  for (const { draws, part } of group.members) for (let k = 0; k < draws.length; k++) draws[k] = draws[k]! + massG[k]! * times * part
}

/** P10, median and P90 of draws, beside the figure at typical yields. */
export function spreadOf(draws: Float64Array, expectedG: number): Spread {
  const { p10, median, p90 } = percentiles(draws)
  return { expectedG, p10G: p10, medianG: median, p90G: p90 }
}
