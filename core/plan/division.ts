import type { Library } from '../library/library.ts'
import { type Demand, type DemandOptions, demandOf, reachOf } from '../route/demand.ts'
import { flowOf } from '../route/flow.ts'
import type { PlannedUse } from '../route/spread.ts'
import type { MergedSteps } from './merged-steps.ts'
import type { GoalAmount } from './plan.ts'

/** What the division of a plan is reckoned from. Everything in grams of compound. */
export interface DivisionInput {
  readonly library: Library
  readonly merged: MergedSteps
  readonly goals: readonly { readonly target: string; readonly amount: GoalAmount }[]
  /** Planning yields by transformation. */
  readonly yields: ReadonlyMap<string, number>
  /** Start in hand; null = reckon backwards. */
  readonly haveG: number | null
  /** By compound, the start among them: what no goal may use. */
  readonly keptG: ReadonlyMap<string, number>
  /** Multiplies the planned charges of all mass goals. */
  readonly factor: number
  readonly lossG: (transformation: string) => number
  /** Products in hand from logged steps; not made again. */
  readonly inHandG?: ReadonlyMap<string, number>
  /** By goal and compound in hand: the part of it (0 to 1) that a share was to have before anything was logged. */
  readonly sharesOf?: readonly ReadonlyMap<string, number>[]
}

/** What falls to one goal. */
export interface GoalPart {
  /** Grams of target at planning yields. */
  readonly massG: number
  /** Grams wanted at factor 1; null for share and rest. */
  readonly wantedG: number | null
  /** Grams of the start it takes. */
  readonly startG: number
  /** By transformation: grams of limiting compound that this goal needs of it. */
  readonly limitingG: ReadonlyMap<string, number>
  /** The compound that cut it short; null where it gets what it asks for. */
  readonly cutBy: string | null
}

export interface Division {
  readonly goals: readonly GoalPart[]
  readonly demand: Demand
  readonly uses: ReadonlyMap<string, readonly PlannedUse[]>
  /** Grams of the start that goals and kept intermediates take. */
  readonly startG: number
  /** Grams of the start that may be used: in hand less kept back; null where it is reckoned backwards. */
  readonly availableG: number | null
}

/** A gap of rounding, not of substance. */
const slack = 1e-9

/**
 * The division of what is in hand: what is kept back first, mass goals in order as far as it reaches, shares of the start, and `rest` what
 * they leave. Without a start in hand the start grows with the goals.
 *
 * Source: definition 5 of the design; common practice, no source.
 */
export function divided(input: DivisionInput): Division {
  const { library, merged, goals } = input
  const { start, steps } = merged
  const inHandG = input.inHandG ?? new Map<string, number>()
  const opts: DemandOptions = { yields: input.yields, lossG: input.lossG, inHand: new Set(inHandG.keys()) }
  const keptStart = input.keptG.get(start) ?? 0
  const availableG = input.haveG === null ? null : Math.max(0, input.haveG - keptStart)

  const stock = new Map<string, number>(inHandG)
  if (availableG !== null) stock.set(start, availableG)
  const wants = new Map<string, number>()
  for (const [compound, massG] of input.keptG) if (compound !== start && massG > 0) wants.set(compound, massG)
  const keptDemand = demandOf(library, steps, wants, opts)
  const shareBaseG = shareBase(input, opts, keptDemand, availableG)

  const masses = goals.map(() => 0)
  const cut: (string | null)[] = goals.map(() => null)
  const grant = (index: number, massG: number): void => {
    masses[index] = massG
    if (massG > 0) wants.set(goals[index]!.target, (wants.get(goals[index]!.target) ?? 0) + massG)
  }
  goals.forEach(({ target, amount }, index) => {
    if (amount.kind !== 'mass') return
    const massG = amount.massG * input.factor
    const reach = reachOf(library, steps, new Map([[target, massG]]), stock, { ...opts, wants })
    if (reach.scale < 1 - slack) cut[index] = reach.setBy
    grant(index, massG * Math.min(1, reach.scale))
  })
  goals.forEach(({ target, amount }, index) => {
    if (amount.kind !== 'share') return
    const unit = new Map([[target, 1]])
    const asked = shareAsked(input, { opts, wants, index, shareBaseG })
    const reach = reachOf(library, steps, unit, stock, { ...opts, wants })
    if (reach.scale < asked * (1 - slack)) cut[index] = reach.setBy
    grant(index, Math.min(asked, reach.scale))
  })
  goals.forEach(({ target, amount }, index) => {
    if (amount.kind !== 'rest') return
    const reach = reachOf(library, steps, new Map([[target, 1]]), stock, { ...opts, wants })
    grant(index, Number.isFinite(reach.scale) ? reach.scale : (amount.leastG ?? 0))
  })
  return { ...attributed(input, opts, masses, cut), availableG }
}

/** Grams of the start that shares are shares of: what may be used, less what kept intermediates take of it. */
function shareBase(input: DivisionInput, opts: DemandOptions, kept: Demand, availableG: number | null): number {
  const { library, merged, goals } = input
  const keptTakes = kept.compoundG.get(merged.start) ?? 0
  if (availableG !== null) return Math.max(0, availableG - keptTakes)
  // Nothing in hand: the start is what mass goals need, over what the shares leave them.
  const wants = new Map<string, number>()
  for (const { target, amount } of goals) if (amount.kind === 'mass') wants.set(target, amount.massG * input.factor)
  const massG = demandOf(library, merged.steps, wants, opts).compoundG.get(merged.start) ?? 0
  const fraction = goals.reduce((sum, g) => sum + (g.amount.kind === 'share' ? g.amount.fraction : 0), 0)
  return fraction < 1 ? massG / (1 - fraction) : 0
}

/** Grams of target that take just the goal's share of the start, or of what is in hand of the compounds it comes from. */
function shareAsked(
  input: DivisionInput,
  at: { readonly opts: DemandOptions; readonly wants: ReadonlyMap<string, number>; readonly index: number; readonly shareBaseG: number },
): number {
  const { library, merged, goals, inHandG } = input
  const goal = goals[at.index]!
  if (goal.amount.kind !== 'share') return 0
  const before = demandOf(library, merged.steps, at.wants, at.opts).compoundG
  const allotted = new Map<string, number>()
  for (const [compound, massG] of inHandG ?? []) {
    allotted.set(compound, (before.get(compound) ?? 0) + massG * (input.sharesOf?.[at.index]?.get(compound) ?? 0))
  }
  if (allotted.size === 0 || !(inHandG && usesOnlyInHand(input, at.opts, goal.target))) {
    allotted.set(merged.start, (before.get(merged.start) ?? 0) + goal.amount.fraction * at.shareBaseG)
  }
  const reach = reachOf(library, merged.steps, new Map([[goal.target, 1]]), allotted, { ...at.opts, wants: at.wants })
  return Number.isFinite(reach.scale) ? reach.scale : 0
}

/** The target comes from logged products alone: no more of the start goes into it. */
const usesOnlyInHand = (input: DivisionInput, opts: DemandOptions, target: string): boolean =>
  (demandOf(input.library, input.merged.steps, new Map([[target, 1]]), opts).compoundG.get(input.merged.start) ?? 0) === 0

/** Who uses how much of what: goal by goal in the order of service, so that a fixed loss falls to the first that needs the step. */
function attributed(
  input: DivisionInput,
  opts: DemandOptions,
  masses: readonly number[],
  cut: readonly (string | null)[],
): Omit<Division, 'availableG'> {
  const { library, merged, goals } = input
  const wants = new Map<string, number>()
  for (const [compound, massG] of input.keptG) if (compound !== merged.start && massG > 0) wants.set(compound, massG)
  let demand = demandOf(library, merged.steps, wants, opts)
  const parts: GoalPart[] = []
  const uses = new Map<string, PlannedUse[]>()
  const use = (compound: string, planned: PlannedUse): void => {
    const list = uses.get(compound)
    if (list) list.push(planned)
    else uses.set(compound, [planned])
  }
  const order = { mass: 0, share: 1, rest: 2 }
  const served = goals
    .map((goal, index) => ({ goal, index }))
    .sort((a, b) => order[a.goal.amount.kind] - order[b.goal.amount.kind] || a.index - b.index)
  // What kept intermediates need upstream belongs to no goal; it travels with the first served, which the draws treat as planned.
  let carried: ReadonlyMap<string, number> = demand.limitingG
  for (const { goal, index } of served) {
    const massG = masses[index]!
    if (massG > 0) wants.set(goal.target, (wants.get(goal.target) ?? 0) + massG)
    const after = demandOf(library, merged.steps, wants, opts)
    const limitingG = new Map<string, number>()
    for (const step of merged.steps) {
      const own = (after.limitingG.get(step.transformation) ?? 0) - (demand.limitingG.get(step.transformation) ?? 0)
      const withKept = own + (carried.get(step.transformation) ?? 0)
      if (withKept <= 0) continue
      limitingG.set(step.transformation, own)
      for (const need of flowOf(library, step.transformation).needs) {
        use(need.compound, { step: step.transformation, goal: index, massG: withKept * need.perG })
      }
    }
    if (massG > 0) use(goal.target, { step: null, goal: index, massG })
    const startG = (after.compoundG.get(merged.start) ?? 0) - (demand.compoundG.get(merged.start) ?? 0)
    const wantedG = goal.amount.kind === 'mass' ? goal.amount.massG : null
    parts[index] = { massG, wantedG, startG, limitingG, cutBy: cut[index] ?? null }
    demand = after
    carried = new Map()
  }
  return { goals: parts, demand, uses, startG: demand.compoundG.get(merged.start) ?? 0 }
}
