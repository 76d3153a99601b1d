import { type Belief, yieldAt } from '../yields/belief.ts'
import { drawCount, scores } from '../yields/draw.ts'
import { percentiles } from '../yields/percentiles.ts'
import { mostBatches } from './batches.ts'
import type { Spread } from './charged.ts'
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
  /** By transformation: product of each draw, g. */
  readonly productG: ReadonlyMap<string, Float64Array>
  /** By goal: grams of its target in each draw. */
  readonly goalG: readonly Float64Array[]
}

/**
 * Amounts flowing through a plan whose charges were planned before any yield was known, for many draws side by side.
 *
 * A step runs on the smallest supply over demand of its made reactants. At a branching the intermediate as drawn serves what is kept back,
 * then mass goals in order, never beyond the charge planned for them, then shares, each its planned part of what was drawn, then `rest`.
 * Where a compound goes one way only, all of it goes there.
 *
 * @param yields by transformation: the yield of each draw (mean over batches); all of one length
 */
export function flowThrough(plan: Flowing, yields: ReadonlyMap<string, Float64Array>): Drawn {
  const length = [...yields.values()][0]?.length ?? 0
  const productG = new Map<string, Float64Array>()
  const goalG = plan.kinds.map(() => new Float64Array(length))
  /** By compound and consumer: what it is given. */
  const given = new Map<string, Float64Array>()
  for (const step of plan.steps) {
    const { flow } = step
    const product = new Float64Array(length).fill(step.inHandG)
    const yieldDraws = yields.get(flow.transformation)
    if (step.runs && step.limitingG > 0 && yieldDraws) {
      const supplies = step.madeNeeds.map(need => ({ perG: need.perG, draws: given.get(key(need.compound, flow.transformation)) }))
      run(product, step, yieldDraws, supplies)
    }
    productG.set(flow.transformation, product)
    divide(plan, flow.makes, product, given, goalG)
  }
  return { productG, goalG }
}

const key = (compound: string, step: string): string => `${compound} ${step}`

function run(
  product: Float64Array,
  step: SpreadStep,
  yields: Float64Array,
  supplies: readonly { readonly perG: number; readonly draws: Float64Array | undefined }[],
): void {
  const { flow, lossG } = step
  const limited = supplies.filter(s => s.draws !== undefined)
  const first = limited[0]
  for (let k = 0; k < product.length; k++) {
    let limitingG = first ? first.draws![k]! / first.perG : step.limitingG
    for (let i = 1; i < limited.length; i++) limitingG = Math.min(limitingG, limited[i]!.draws![k]! / limited[i]!.perG)
    product[k] = product[k]! + Math.max(0, limitingG * flow.theoryPerG * yields[k]! - lossG)
  }
}

/** Takers of one compound, those of a goal together. */
interface Group {
  readonly goal: number
  readonly massG: number
  readonly members: readonly { readonly draws: Float64Array; readonly part: number }[]
}

function divide(
  plan: Flowing,
  compound: string,
  drawn: Float64Array,
  given: Map<string, Float64Array>,
  goalG: readonly Float64Array[],
): void {
  const uses = (plan.uses.get(compound) ?? []).filter(u => u.massG > 0)
  const keptG = plan.keptG.get(compound) ?? 0
  const takers = new Set(uses.map(u => u.step ?? `goal ${u.goal}`))
  const drawsOf = (use: PlannedUse): Float64Array => {
    if (use.step === null) return goalG[use.goal]!
    const name = key(compound, use.step)
    let draws = given.get(name)
    if (!draws) {
      draws = new Float64Array(drawn.length)
      given.set(name, draws)
    }
    return draws
  }
  if (takers.size === 1) {
    const draws = drawsOf(uses[0]!)
    for (let k = 0; k < drawn.length; k++) draws[k] = Math.max(0, drawn[k]! - keptG)
    return
  }
  const groups = (kind: GoalKind): Group[] => {
    const found: Group[] = []
    for (const goal of new Set(uses.map(u => u.goal))) {
      if (plan.kinds[goal] !== kind) continue
      const own = uses.filter(u => u.goal === goal)
      const massG = own.reduce((sum, u) => sum + u.massG, 0)
      found.push({ goal, massG, members: own.map(u => ({ draws: drawsOf(u), part: u.massG / massG })) })
    }
    return found.sort((a, b) => a.goal - b.goal)
  }
  const mass = groups('mass')
  const shares = groups('share')
  const rest = groups('rest')
  const plannedG = uses.reduce((sum, u) => sum + u.massG, 0)
  const shareG = shares.reduce((sum, g) => sum + g.massG, 0)
  for (let k = 0; k < drawn.length; k++) {
    const there = Math.max(0, drawn[k]! - keptG)
    let left = there
    for (const group of mass) {
      const taken = Math.min(left, group.massG)
      left -= taken
      give(group, k, taken)
    }
    if (shareG > 0) {
      const part = Math.min((there * shareG) / plannedG, left) / shareG
      for (const group of shares) give(group, k, group.massG * part)
      left -= shareG * part
    }
    // At most one goal is `rest`.
    for (const group of rest) give(group, k, left)
  }
}

function give(group: Group, k: number, massG: number): void {
  for (const member of group.members) member.draws[k] = member.draws[k]! + massG * member.part
}

const kept = new Map<string, Float64Array>()
/** Draws kept: moving an amount leaves every yield as it was; 80 kB each. */
const mostKept = 128

/**
 * Yield of a step in each of the 10,000 joint draws: one bench part shared by its batches, one run part a batch, averaged.
 *
 * @param firstRun number of the first batch still to run, from 1: logged batches keep their streams to themselves
 * @returns the same array for the same arguments, not to be written to
 */
export function yieldDraws(transformation: string, belief: Belief, seed: number, batches = 1, firstRun = 1): Float64Array {
  const { isolation, m, sLow, sHigh, benchMean, benchVariance, runVariance } = belief
  const name = [transformation, seed, batches, firstRun, isolation, m, sLow, sHigh, benchMean, benchVariance, runVariance].join(' ')
  const before = kept.get(name)
  if (before) return before
  const yields = drawnYields(transformation, belief, seed, batches, firstRun)
  if (kept.size >= mostKept) kept.delete(kept.keys().next().value!)
  kept.set(name, yields)
  return yields
}

function drawnYields(transformation: string, belief: Belief, seed: number, batches: number, firstRun: number): Float64Array {
  const bench = scores(transformation, 'b', seed)
  const benchSd = Math.sqrt(belief.benchVariance)
  const runSd = Math.sqrt(belief.runVariance)
  const yields = new Float64Array(drawCount)
  // A plan with more batches is refused; until it is, so many stand for all.
  const drawn = Math.min(batches, mostBatches)
  for (let batch = 0; batch < drawn; batch++) {
    const runs = scores(transformation, `r${firstRun + batch}`, seed)
    for (let k = 0; k < drawCount; k++) {
      yields[k] = yields[k]! + yieldAt(belief, belief.benchMean + benchSd * bench[k]! + runSd * runs[k]!)
    }
  }
  if (drawn > 1) for (let k = 0; k < drawCount; k++) yields[k] = yields[k]! / drawn
  return yields
}

/** P10, median and P90 of draws, beside the figure at typical yields. */
export function spreadOf(draws: Float64Array, expectedG: number): Spread {
  const { p10, median, p90 } = percentiles(draws)
  return { expectedG, p10G: p10, medianG: median, p90G: p90 }
}
