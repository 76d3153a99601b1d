import type { Library } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import { type Aim, basketModel, usableMakings } from './basket-model.ts'
import { type Cover, coversOf } from './covers.ts'
import { type Decision, type Item, rounding } from './decision.ts'
import { cheapestWithMinimums } from './minimum-orders.ts'
import { ordersOf } from './orders.ts'
import type { Solver } from './shopping.ts'

/** What was decided, and how sure it is. */
export interface Decided {
  readonly decision: Decision
  readonly costMinor: number
  /** No basket costs less; null where nothing is known. The cost itself where that is proven. */
  readonly boundMinor: number | null
}

/** Covers of every item that is bought for itself alone, nothing being made up from or into it. */
export function coversOfItems(items: readonly Item[]): ReadonlyMap<Item, readonly Cover[]> {
  const makings = usableMakings(items)
  const entangled = new Set(makings.flatMap(m => [m.target, m.source, m.rest]))
  const found = new Map<Item, readonly Cover[]>()
  for (const item of items) {
    const toBuy = item.need - item.stock
    if (entangled.has(item.material.id) || toBuy <= item.need * rounding || item.offers.length === 0) continue
    const covers = coversOf(item.offers, toBuy, item.need * rounding)
    if (covers !== null) found.set(item, covers)
  }
  return found
}

/**
 * The basket of least cost: first as few solutions out of reach as possible, then the cost.
 *
 * Minimum orders are first left out; they seldom matter, and where the basket reaches them as it stands, it is the cheapest with them too.
 * Where it does not, the groups of suppliers are searched one by one; only where those are too many are the minimums put into the program.
 *
 * @returns a problem where no basket was found
 */
export function leastCost(library: Library, items: readonly Item[], solver: Solver): Decided | { readonly problem: Problem } {
  // Nothing to decide: everything needed stands on the shelf.
  if (!items.some(item => item.offers.length > 0 || item.makings.length > 0))
    return { decision: { counts: new Map(), made: new Map(), missing: new Set() }, costMinor: 0, boundMinor: 0 }
  const covers = coversOfItems(items)
  const all = cheapest(library, items, covers, 0, solver)
  if (all !== 'infeasible') return all
  const mostMissing = leastMissing(items, covers, solver)
  if (mostMissing === null) return { problem: solverProblem('infeasible') }
  const found = cheapest(library, items, covers, mostMissing, solver)
  return found === 'infeasible' ? { problem: solverProblem('infeasible') } : found
}

/** How many solutions stay out of reach at the least; null where no basket is possible at all. */
function leastMissing(items: readonly Item[], covers: ReadonlyMap<Item, readonly Cover[]>, solver: Solver): number | null {
  const model = basketModel(items, { least: 'missing', minimums: true }, covers)
  if (!model.mayMiss) return null
  const answer = solver(model.text)
  const decision = answer.status === 'optimal' || answer.status === 'feasible' ? model.read(answer.columns) : null
  return decision === null ? null : decision.missing.size
}

function cheapest(
  library: Library,
  items: readonly Item[],
  covers: ReadonlyMap<Item, readonly Cover[]>,
  mostMissing: number,
  solver: Solver,
): Decided | 'infeasible' | { readonly problem: Problem } {
  const plain = asked(library, items, covers, { least: 'cost', mostMissing, minimums: false }, solver)
  if (plain.status === 'infeasible') return 'infeasible'
  if (plain.decided !== null && (!plain.hasMinimums || plain.reaches)) return plain.decided
  const bound = plain.decided?.boundMinor ?? plain.bound
  if (!plain.hasMinimums) return { problem: solverProblem(plain.status) }
  const own = mostMissing === 0 ? cheapestWithMinimums(items) : null
  if (own === 'infeasible') return own
  if (own !== null) return own
  const whole = asked(library, items, covers, { least: 'cost', mostMissing, minimums: true }, solver)
  if (whole.status === 'infeasible') return 'infeasible'
  if (whole.decided === null) return { problem: solverProblem(whole.status) }
  return { ...whole.decided, boundMinor: larger(whole.decided.boundMinor, bound) }
}

const larger = (a: number | null, b: number | null): number | null => (a === null ? b : b === null ? a : Math.max(a, b))

/** One program, solved and read. */
export function asked(
  library: Library,
  items: readonly Item[],
  covers: ReadonlyMap<Item, readonly Cover[]>,
  aim: Aim,
  solver: Solver,
): {
  readonly status: ReturnType<Solver>['status']
  readonly decided: Decided | null
  readonly bound: number | null
  readonly hasMinimums: boolean
  readonly reaches: boolean
} {
  const model = basketModel(items, aim, covers)
  const answer = solver(model.text)
  const decision = answer.status === 'optimal' || answer.status === 'feasible' ? model.read(answer.columns) : null
  // Every cost is in whole minor units, so a bound may be rounded up.
  const bound = answer.bound === undefined || aim.least !== 'cost' ? null : Math.ceil(answer.bound - 1e-6)
  const shared = { status: answer.status, bound, hasMinimums: model.hasMinimums }
  if (decision === null) return { ...shared, decided: null, reaches: false }
  const orders = ordersOf(library, decision.counts)
  const costMinor = orders.reduce((sum, order) => sum + order.totalMinor, 0)
  return {
    ...shared,
    decided: { decision, costMinor, boundMinor: answer.status === 'optimal' ? costMinor : bound },
    reaches: orders.every(order => order.goodsMinor >= order.minimumMinor),
  }
}

export function solverProblem(status: ReturnType<Solver>['status']): Problem {
  const shared = { where: ['shopping', 'basket'], why: 'A basket that is not known to cover every need is not shown at all.' }
  if (status === 'infeasible')
    return {
      ...shared,
      code: 'basket-infeasible',
      what: 'No choice of packs meets all minimum orders and covers every need.',
      cure: 'Check the minimum orders and prices of the packs file, or add a supplier.',
    }
  return {
    ...shared,
    code: 'basket-not-found',
    what: status === 'failed' ? 'The solver gave no answer.' : 'The answer of the solver does not cover every need.',
    cure: 'Try again; if it stays so, the amounts needed and the packs listed still hold and can be bought by hand.',
  }
}
