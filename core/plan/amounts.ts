import { type Library, transformationOf } from '../library/library.ts'
import { batchCount, batchesOf, type ReactionVolume, reactionVolume } from '../route/batches.ts'
import { chargesOf } from '../route/charge.ts'
import type { ChargedLine } from '../route/charged.ts'
import { type Flow, flowOf } from '../route/flow.ts'
import type { Flowing, SpreadStep } from '../route/spread.ts'
import { type Belief, predicted } from '../yields/belief.ts'
import { beliefsAbout } from './beliefs.ts'
import { type Division, divided } from './division.ts'
import { keptBack, partlyBought, startCompoundG, toppedUp, withSetAside } from './in-hand.ts'
import { inHandOf, type LoggedStep, loggedSteps, takenOf } from './logged.ts'
import type { MergedSteps } from './merged-steps.ts'
import type { Plan } from './plan.ts'
import type { Settings } from './settings.ts'

/** One step of a plan in amounts. */
export interface StepAmounts {
  readonly transformation: string
  readonly makes: string
  readonly limitingG: number
  readonly scale: number
  /** At planning yields; logged product included. */
  readonly expectedG: number
  readonly charges: readonly ChargedLine[]
  readonly batches: number
  readonly perBatchMl: number | null
  readonly combine: number | null
  readonly volumeAssumed: boolean
  readonly notes: readonly string[]
  readonly logged: LoggedStep | null
}

/** Every amount of a plan, planned at typical yields, and how it is to be drawn. */
export interface Amounts {
  readonly merged: MergedSteps
  readonly settings: Settings
  readonly beliefs: ReadonlyMap<string, Belief>
  /** Planning yields. */
  readonly yields: ReadonlyMap<string, number>
  readonly division: Division
  readonly steps: readonly StepAmounts[]
  readonly flowing: Flowing
  /** Start in hand as compound, g; null = reckoned backwards. */
  readonly haveG: number | null
  /** Of that, grams that logged steps took. */
  readonly startTakenG: number
  /** The same plan before anything was logged; itself where nothing is. */
  readonly planned: Amounts | null
}

export interface AmountsInput {
  readonly library: Library
  readonly plan: Plan
  readonly merged: MergedSteps
  readonly settings: Settings
  /** Multiplies the planned charges of mass goals. */
  readonly factor: number
  /** Reckon as if nothing were logged. */
  readonly withoutLog?: boolean
  /**
   * No charges, no notes: only how much of each step in how many batches. Volumes are worked out once for each step, here, and scaled from then
   * on; those of a step with a fixed loss do not scale.
   */
  readonly volumes?: Volumes
}

/** By transformation: reaction volume per gram of limiting compound, mL. */
export type Volumes = Map<string, ReactionVolume>

/** Charges decide batches, and where a step loses a fixed mass in each, batches decide charges: a few rounds settle it. */
const mostRounds = 6

/** All amounts of a plan at its planning yields. */
export function amountsOf(input: AmountsInput): Amounts {
  const { library, plan, merged, settings } = input
  // Runs of steps that the plan no longer has change nothing in it.
  const own = new Set(merged.steps.map(s => s.transformation))
  const log = input.withoutLog ? [] : plan.log.filter(entry => own.has(entry.step))
  const planned = log.length === 0 ? null : amountsOf({ ...input, withoutLog: true })
  const logged = planned
    ? loggedSteps(
        library,
        log,
        new Map(planned.steps.map(s => [s.transformation, { limitingG: s.limitingG, batches: s.batches }])),
        plan.repeats,
      )
    : new Map<string, LoggedStep>()
  const runs = new Map([...logged].map(([step, what]) => [step, what.yields]))
  const beliefs = beliefsAbout(library, merged.steps, settings, runs)
  const yields = new Map([...beliefs].map(([step, belief]) => [step, predicted(belief).typical]))
  const haveAll = startCompoundG(library, plan, merged.start)
  const startTakenG = takenOf(library, logged, merged.start)
  const haveG = haveAll === null ? null : Math.max(0, haveAll - startTakenG)
  const keptG = withSetAside(keptBack(settings), library, merged, logged)
  const product = (step: string, limitingG: number): number => limitingG * flowOf(library, step).theoryPerG * (yields.get(step) ?? 0)
  const inHandG = new Map(
    inHandOf(library, logged, (step, g) => Math.max(0, product(step, g) - flowOf(library, step).lossG * logged.get(step)!.leftToRun)),
  )
  for (const [compound, massG] of toppedUp(plan)) if (inHandG.has(compound)) inHandG.set(compound, inHandG.get(compound)! + massG)

  const boughtPart = new Map(
    [...toppedUp(plan)].flatMap(([compound, massG]) =>
      inHandG.has(compound) ? [[compound, massG / inHandG.get(compound)!] as const] : [],
    ),
  )
  let batches = new Map<string, number>()
  let division: Division
  let steps: readonly StepAmounts[]
  let round = 0
  do {
    const lossG = (step: string): number => flowOf(library, step).lossG * (batches.get(step) ?? 1)
    division = divided({
      library,
      merged,
      goals: plan.goals,
      yields,
      haveG,
      keptG,
      factor: input.factor,
      lossG,
      inHandG,
      ...(planned ? { sharesOf: sharesOf(planned) } : {}),
    })
    steps = merged.steps.map(({ transformation, makes }) => {
      const done = logged.get(transformation) ?? null
      const limitingG = done ? done.remainingG : (division.demand.limitingG.get(transformation) ?? 0)
      const runningG = limitingG > 0 ? Math.max(0, product(transformation, limitingG) - lossG(transformation)) : 0
      return stepAmounts(input, { transformation, makes, limitingG, runningG, done, boughtPart })
    })
    const before = batches
    batches = new Map(steps.map(s => [s.transformation, Math.max(1, s.batches)]))
    const settled = steps.every(s => flowOf(library, s.transformation).lossG === 0 || before.get(s.transformation) === s.batches)
    if (settled) break
    round++
  } while (round < mostRounds)
  const flowing = flowingOf(input, { division, steps, keptG, logged, yields })
  return { merged, settings, beliefs, yields, division, steps, flowing, haveG: haveAll, startTakenG, planned }
}

/** The part of each compound that a goal was to have before anything was logged. */
function sharesOf(planned: Amounts): readonly ReadonlyMap<string, number>[] {
  return planned.division.goals.map((_, goal) => {
    const parts = new Map<string, number>()
    for (const [compound, uses] of planned.division.uses) {
      const all = uses.reduce((sum, u) => sum + u.massG, 0)
      const own = uses.reduce((sum, u) => (u.goal === goal ? sum + u.massG : sum), 0)
      if (all > 0) parts.set(compound, own / all)
    }
    return parts
  })
}

function stepAmounts(
  input: AmountsInput,
  step: {
    readonly transformation: string
    readonly makes: string
    readonly limitingG: number
    readonly runningG: number
    readonly done: LoggedStep | null
    readonly boughtPart: ReadonlyMap<string, number>
  },
): StepAmounts {
  const { library, plan, merged, settings } = input
  const { transformation, makes, limitingG, runningG, done } = step
  const flow = flowOf(library, transformation)
  const scale = limitingG / flow.referenceG
  const common = { transformation, makes, limitingG, scale, expectedG: runningG + (done?.isolatedG ?? 0), logged: done }
  if (limitingG <= 0) return { ...common, charges: [], batches: done ? 0 : 1, ...noVolume }
  const chargesNow = (): readonly ChargedLine[] =>
    partlyBought(
      chargesOf(library, {
        transformation,
        limitingG,
        productG: runningG,
        start: { compound: merged.start, material: plan.start.material },
        made: new Set(merged.steps.map(s => s.makes)),
      }),
      step.boughtPart,
    )
  const volumeOf = (charges: readonly ChargedLine[]): ReactionVolume =>
    reactionVolume(library, transformationOf(library, transformation), charges, scale)
  const asked = done ? done.leftToRun : (settings.batches[transformation] ?? runsByGroups(plan, makes))
  const batchInput = { transformation, scale, limitingG, productG: runningG, vessels: settings.vessels, asked, flags: settings.scale }
  if (input.volumes) {
    const volume = scaledVolume(input.volumes, flow, limitingG, () => volumeOf(chargesNow()))
    return { ...common, charges: [], batches: batchCount(library, { ...batchInput, volume }), ...noVolume }
  }
  const charges = chargesNow()
  const volume = volumeOf(charges)
  const batches = batchesOf(library, { ...batchInput, volume })
  return {
    ...common,
    charges,
    batches: batches.batches,
    perBatchMl: batches.perBatchMl,
    combine: batches.combine,
    volumeAssumed: volume.assumed,
    notes: batches.notes,
  }
}

const noVolume = { perBatchMl: null, combine: null, volumeAssumed: false, notes: [] }

function scaledVolume(volumes: Volumes, flow: Flow, limitingG: number, worked: () => ReactionVolume): ReactionVolume {
  const times = (volume: ReactionVolume, factor: number): ReactionVolume => ({
    vesselMl: volume.vesselMl === null ? null : volume.vesselMl * factor,
    withQuenchMl: volume.withQuenchMl === null ? null : volume.withQuenchMl * factor,
    assumed: volume.assumed,
  })
  if (flow.lossG > 0) return worked()
  let perGram = volumes.get(flow.transformation)
  if (perGram === undefined) {
    perGram = times(worked(), 1 / limitingG)
    volumes.set(flow.transformation, perGram)
  }
  return times(perGram, limitingG)
}

/** Every group runs the last step of a goal for itself; null where nobody divides it so. */
const runsByGroups = (plan: Plan, makes: string): number | null =>
  plan.goals.find(goal => goal.target === makes && goal.groups?.as === 'runs')?.groups?.count ?? null

function flowingOf(
  input: AmountsInput,
  by: {
    readonly division: Division
    readonly steps: readonly StepAmounts[]
    readonly keptG: ReadonlyMap<string, number>
    readonly logged: ReadonlyMap<string, LoggedStep>
    readonly yields: ReadonlyMap<string, number>
  },
): Flowing {
  const { library, plan, merged } = input
  const made = new Set(merged.steps.map(s => s.makes))
  const topUps = toppedUp(plan)
  const steps = by.steps.map((step): SpreadStep => {
    const flow = flowOf(library, step.transformation)
    const { logged } = step
    return {
      flow,
      limitingG: step.limitingG,
      // Remaining batches of a logged step are charged as planned: their reactants are set aside already.
      madeNeeds: logged ? [] : flow.needs.filter(n => made.has(n.compound)),
      batches: step.batches,
      lossG: flow.lossG * step.batches,
      inHandG: logged ? Math.max(0, logged.isolatedG - takenOf(library, by.logged, step.makes)) + (topUps.get(step.makes) ?? 0) : 0,
      runs: step.limitingG > 0,
    }
  })
  const kept = new Map([...by.keptG].filter(([compound]) => compound !== merged.start))
  return { steps, uses: by.division.uses, keptG: kept, kinds: plan.goals.map(g => g.amount.kind) }
}
