import { daysOf } from '../days/calendar.ts'
import { hazardsOf } from '../hazards/list.ts'
import { withPlannedQuench } from '../hazards/quench.ts'
import { stopsAmong } from '../hazards/regulated.ts'
import type { HazardTables } from '../hazards/tables.ts'
import type { Traits } from '../hazards/traits.ts'
import type { Library } from '../library/library.ts'
import type { ChargedStep } from '../route/charged.ts'
import { materialsOfSteps } from '../route/materials.ts'
import { shoppingOf } from '../shopping/basket.ts'
import { withGained } from '../shopping/gained.ts'
import { gainedUses, inOrderOf } from '../shopping/gained-uses.ts'
import { otherBaskets } from '../shopping/other-baskets.ts'
import type { Solver } from '../shopping/shopping.ts'
import type { SupplyInput } from '../shopping/supply.ts'
import { materialsToOrder } from '../shopping/to-order.ts'
import { barredNotes } from './barred.ts'
import type { Evaluation, Stopped } from './evaluation.ts'
import { checkedPlan, PlanRefused } from './goals.ts'
import type { Plan } from './plan.ts'
import { reckoned } from './reckoned.ts'
import { timingOf } from './timing.ts'
import { tooEarlyNotes } from './too-early.ts'

export interface EvaluateInput {
  readonly library: Library
  readonly tables: HazardTables
  readonly traits: ReadonlyMap<string, Traits>
  readonly plan: Plan
  /** Null = no basket. */
  readonly solver: Solver | null
  /** Also the baskets from the fewest suppliers and with the least left over; they cost two more programs. */
  readonly alternatives?: boolean
  /** The basket is found at once, without the solver, and may not be the cheapest; it says how much could be saved. */
  readonly basketAtOnce?: boolean
}

/**
 * The pipeline: a plan in, everything the seven questions ask out.
 *
 * goals -> merged steps -> (a stop row ends here) -> division and charges -> joint draws -> shopping, days | hazards -> evaluation
 *
 * Pure: the same plan, library and seed give the same answer, with a solver that does.
 *
 * @throws PlanRefused for a plan that cannot be reckoned; `checkedPlan` tells beforehand, but for batches beyond number
 */
export function evaluate({
  library,
  tables,
  traits,
  plan,
  solver,
  alternatives,
  basketAtOnce = false,
}: EvaluateInput): Evaluation | Stopped {
  const checked = checkedPlan(library, plan)
  if (!checked.ok) throw new PlanRefused(checked.problems)
  const { start, steps } = checked.value
  const materials = materialsOfSteps(
    library,
    start,
    plan.goals.map(g => g.target),
    steps.map(s => s.transformation),
  )
  const stops = stopsAmong(traits, [...materials, plan.start.material])
  if (stops.length > 0) return { stopped: stops }

  const amounts = reckoned(library, plan)
  const { settings } = plan
  const toRun = withPlannedQuench(library, tables, amounts.toRun)
  const toSupply = supplyInputOf(library, plan, toRun, amounts.coProducts)
  const shopping = shoppingOf({ ...toSupply, solver, atOnce: basketAtOnce })
  const gained = gainedUses(plan.shelf, toRun)
  const days = daysOf({
    library,
    steps: inOrderOf(toRun, gained).map(step => sideBySide(plan, step)),
    after: gained.after,
    windows: settings.windows,
    daysOff: settings.daysOff,
    deliveryDays: settings.deliveryDays,
    startDate: settings.startDate,
    vessels: settings.vessels,
    heatSources: settings.heatSources,
    toBuy: materialsToOrder(shopping.lines),
  })
  const hazards = hazardsOf({
    library,
    tables,
    traits,
    steps: toRun,
    start: plan.start,
    settings,
    shelf: plan.shelf,
    today: settings.startDate,
    timing: timingOf(toRun, days),
  })
  return {
    overallYieldOnStart: amounts.overallYieldOnStart,
    longestLinearYield: amounts.longestLinearYield,
    steps: withPlannedQuench(library, tables, amounts.steps),
    goals: amounts.goals,
    chanceAll: amounts.chanceAll,
    start: amounts.start,
    startNeeded: amounts.startNeeded,
    coProducts: amounts.coProducts,
    shopping: shopping.lines,
    basket: shopping.basket,
    ...(alternatives === true && solver !== null && shopping.basket !== null
      ? { otherBaskets: otherBaskets(toSupply, shopping.basket, solver) }
      : {}),
    hazards,
    days,
    metrics: amounts.metrics,
    notes: [...barredNotes(library, hazards.regulated), ...amounts.notes, ...tooEarlyNotes(library, gained), ...shopping.problems],
  }
}

/** What a plan's steps are to be supplied with, and from where. */
export function supplyInputOf(
  library: Library,
  plan: Plan,
  steps: readonly ChargedStep[],
  coProducts: Evaluation['coProducts'] = [],
): SupplyInput {
  const { settings } = plan
  return {
    library,
    steps,
    products: plan.goals.map(g => g.target),
    shelf: withGained(plan.shelf, steps, coProducts, settings.reserve),
    packs: plan.packs,
    reserve: settings.reserve,
    repeat: settings.repeatRiskiest,
    retainedSampleG: settings.retainedSampleG,
    spokenForG: spokenFor(plan),
    ...(settings.startDate === null ? {} : { today: settings.startDate }),
  }
}

/** What stands on the shelf but is the start, or is kept back: not to be counted for anything else. */
function spokenFor(plan: Plan): ReadonlyMap<string, number> {
  const spoken = new Map<string, number>()
  const add = (material: string, massG: number): void => void spoken.set(material, (spoken.get(material) ?? 0) + massG)
  if (plan.start.massG !== null) add(plan.start.material, plan.start.massG)
  for (const { compound, massG } of plan.settings.keptBack) if (compound !== plan.goals[0]?.route.start) add(compound, massG)
  return spoken
}

/** What every group runs for itself goes on side by side, each with its own hands and vessels: one batch on the calendar. */
const sideBySide = (plan: Plan, step: ChargedStep): ChargedStep =>
  plan.goals.some(goal => goal.target === step.makes && goal.groups?.as === 'runs') ? { ...step, batches: 1 } : step
