import { withPlannedQuench } from '../hazards/quench.ts'
import type { HazardTables } from '../hazards/tables.ts'
import type { Library } from '../library/library.ts'
import { transformationOf } from '../library/library.ts'
import type { Transformation } from '../library/transformation.ts'
import { type Amounts, amountsOf } from '../plan/amounts.ts'
import { plannedSteps } from '../plan/charged-steps.ts'
import { supplyInputOf } from '../plan/evaluate.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { checkedPlan } from '../plan/goals.ts'
import type { Plan } from '../plan/plan.ts'
import { reckoned } from '../plan/reckoned.ts'
import type { ChargedStep } from '../route/charged.ts'
import { shoppingOf } from '../shopping/basket.ts'
import { costBound } from '../shopping/cost-bound.ts'
import type { Solver } from '../shopping/shopping.ts'
import { type Supply, type SupplyInput, supplyOf } from '../shopping/supply.ts'

/** Figures by which ways are compared: goals first, then what is known of the cost, then the cost. */
export interface WayKey {
  /** Mass and share goals, and a rest that is held, that the way does not reach. */
  readonly unreached: number
  /** The total leaves something out. */
  readonly incomplete: boolean
  readonly priceUnknown: number
  /** The total, or with a rest to compare by the total per gram of it, in minor units. */
  readonly cost: number
}

/** One way to serve all goals, before anything is bought: what it is known to be no better than. */
export interface Way {
  /** With the goals as asked. */
  readonly plan: Plan
  /** The same with `rest` held at the least that was stated; the plan itself where none was. */
  readonly held: Plan
  /** Transformations, in order of id. */
  readonly steps: readonly string[]
  /** No key of this way is less. */
  readonly bound: WayKey
  /** No total of the plan itself is less, minor units. */
  readonly leastMinor: number
  /** Null where the library does not know it of some step. */
  readonly handsOnH: number | null
}

/** Hours of hands in one batch, as the calendar counts them; null where the library does not know them. */
function handsOf({ tasks = [], handsOnHours }: Transformation): number | null {
  return tasks.length > 0 ? tasks.reduce((sum, task) => (task.kind === 'hands' ? sum + task.hours : sum), 0) : (handsOnHours ?? null)
}

/** Negative where `a` is better. Costs within a millionth of a minor unit are equal. */
export function compareKeys(a: WayKey, b: WayKey): number {
  if (a.unreached !== b.unreached) return a.unreached - b.unreached
  if (a.incomplete !== b.incomplete) return a.incomplete ? 1 : -1
  if (a.priceUnknown !== b.priceUnknown) return a.priceUnknown - b.priceUnknown
  return Math.abs(a.cost - b.cost) < 1e-6 * Math.max(1, Math.abs(a.cost)) ? 0 : a.cost - b.cost
}

/** A plan whose rest goal is held at the least stated for it. */
export const withHeldRest = (plan: Plan): Plan =>
  plan.goals.some(g => g.amount.kind === 'rest' && g.amount.leastG !== undefined)
    ? {
        ...plan,
        goals: plan.goals.map(g =>
          g.amount.kind === 'rest' && g.amount.leastG !== undefined ? { ...g, amount: { kind: 'mass', massG: g.amount.leastG } } : g,
        ),
      }
    : plan

/**
 * A way with its bound: needs and shelf as they will be, minimum orders and makings-up left out of the cost.
 *
 * @returns null for goals that one plan cannot hold together
 */
export function wayOf(library: Library, tables: HazardTables, plan: Plan): Way | null {
  const held = withHeldRest(plan)
  const own = lightly(library, tables, plan)
  const other = held === plan ? own : lightly(library, tables, held)
  if (own === null || other === null) return null
  const leastMinor = costBound(own.supply.items)
  return {
    plan,
    held,
    steps: own.steps.map(s => s.transformation).sort(),
    bound: {
      unreached: other.unreached,
      ...known(other),
      cost: perRest(held, other.restG, held === plan ? leastMinor : costBound(other.supply.items)),
    },
    leastMinor,
    handsOnH: own.steps.reduce<number | null>((sum, step) => {
      const hours = handsOf(transformationOf(library, step.transformation))
      return sum === null || hours === null ? null : sum + hours * Math.max(1, step.batches)
    }, 0),
  }
}

/** The key of a way that was reckoned in full, or with its rest held: then only what is bought for that is reckoned besides. */
export function keyOf(library: Library, tables: HazardTables, { plan, held }: Way, evaluation: Evaluation, solver: Solver): WayKey {
  const light = lightly(library, tables, held)!
  const basket = held === plan ? evaluation.basket : shoppingOf({ ...light.input, solver }).basket
  return {
    unreached: light.unreached,
    incomplete: basket === null || !basket.complete,
    // Where minimum orders leave no basket at all, nothing is known to be payable.
    priceUnknown: basket?.priceUnknown.length ?? Number.POSITIVE_INFINITY,
    cost: basket === null ? Number.POSITIVE_INFINITY : perRest(held, light.restG, basket.totalMinor ?? 0),
  }
}

/** A rest without a stated least is compared by its cost per gram, so that no way wins by making less of it. */
const perRest = (plan: Plan, restG: number | null, minor: number): number =>
  restG === null || !plan.goals.some(g => g.amount.kind === 'rest') ? minor : restG > 0 ? minor / restG : Number.POSITIVE_INFINITY

interface Light {
  readonly steps: readonly ChargedStep[]
  readonly input: SupplyInput
  readonly supply: Supply
  readonly unreached: number
  readonly restG: number | null
}

function lightly(library: Library, tables: HazardTables, plan: Plan): Light | null {
  const checked = checkedPlan(library, plan)
  if (!checked.ok) return null
  const { settings } = plan
  // Spread and confidence need the draws; without them typical yields tell all that is charged.
  const drawn = settings.confidence !== null || settings.repeatRiskiest ? reckoned(library, plan) : null
  const amounts: Amounts = drawn?.amounts ?? amountsOf({ library, plan, merged: checked.value, settings, factor: 1 })
  const charged = drawn?.toRun ?? plannedSteps(library, amounts).filter(s => s.charges.length > 0)
  // What is planned to destroy residues is bought as well, as in the plan itself.
  const steps = withPlannedQuench(library, tables, charged)
  const coProducts = steps.flatMap(s => s.coProducts.map(c => ({ compound: c.compound, step: s.number, expectedG: c.expectedG })))
  const rest = plan.goals.findIndex(g => g.amount.kind === 'rest')
  const input = supplyInputOf(library, plan, steps, coProducts)
  return {
    steps,
    input,
    supply: supplyOf(input),
    unreached: amounts.division.goals.filter(
      (part, at) => plan.goals[at]!.amount.kind !== 'rest' && (part.cutBy !== null || !(part.massG > 0)),
    ).length,
    restG: rest < 0 ? null : amounts.division.goals[rest]!.massG,
  }
}

/** What is already certain to have no price or no amount; a basket can only add to it. */
function known({ supply }: Light): Pick<WayKey, 'incomplete' | 'priceUnknown'> {
  const inProgram = new Set(supply.items.map(item => item.material.id))
  let priceUnknown = 0
  let open = false
  for (const { material, need, stock, offers } of supply.rows.values()) {
    if (need === null || need.free) continue
    const toBuy = need.amount === null ? null : need.amount - stock.usable
    if (toBuy !== null ? toBuy > 0 && !inProgram.has(material.id) : offers.length === 0 && !supply.hasSupply(material.id)) priceUnknown++
    if (material.id !== 'water' && (need.amount === null || need.open)) open = true
  }
  return { incomplete: open || priceUnknown > 0, priceUnknown }
}
