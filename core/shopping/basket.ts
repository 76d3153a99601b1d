import { type Library, materialOf } from '../library/library.ts'
import type { Problem } from '../problem/problem.ts'
import { basketAtOnce } from './basket-at-once.ts'
import { type Decided, leastCost, solverProblem } from './least-cost.ts'
import { ordersOf } from './orders.ts'
import type { PacksFile } from './packs.ts'
import type { Basket, ShoppingLine, Solver } from './shopping.ts'
import { shoppingLine } from './shopping-line.ts'
import { type SupplyInput, supplyOf } from './supply.ts'

export interface ShoppingInput extends SupplyInput {
  /** Null = lines without packs, and no basket. */
  readonly solver: Solver | null
  /** A basket without the solver, at once, told with how much a cheaper one could save: for whoever stopped waiting. */
  readonly atOnce?: boolean
}

export interface Shopping {
  /** Price unknown first, then amount unknown, then what is bought or made up, then what the shelf covers; each by name. */
  readonly lines: readonly ShoppingLine[]
  /** Null without a solver, and where the solver found no basket: then a problem says so. */
  readonly basket: Basket | null
  readonly problems: readonly Problem[]
}

/**
 * The one shopping list of a plan, net of the shelf, in whole packs at least total cost.
 *
 * A solution that nobody sells is made up from its compound or from a stronger solution inside the same integer program, so that the
 * concentrate bought for it and the concentrate needed elsewhere share their packs. What has no price is never counted as free: it is listed
 * in `priceUnknown`, and the total says that it is not complete.
 *
 * @throws RangeError for a material that the library does not hold: our mistake
 * Source: definition 9 of the design (numbers); the format of packs and shelf files.
 */
export function shoppingOf(input: ShoppingInput): Shopping {
  const { library, packs, solver, atOnce = false } = input
  const { rows, items, hasSupply, problems: leftOut } = supplyOf(input, atOnce || solver !== null)
  const problems = [...leftOut]
  const decided = atOnce
    ? (basketAtOnce(library, items) ?? { problem: solverProblem('failed') })
    : solver === null
      ? null
      : leastCost(library, items, solver)
  if (decided !== null && 'problem' in decided) problems.push(decided.problem)
  const decision = decided === null || 'problem' in decided ? null : decided.decision

  const lines = [...rows.values()].flatMap(row => shoppingLine(library, row, decision) ?? [])
  // What has neither an amount, nor stock, nor a pack lacks a price as well as an amount.
  const unpriced = new Set(
    lines.filter(line => !hasPrice(line) && (line.buy.amount !== null || !hasSupply(line.material))).map(line => line.material),
  )
  lines.sort(
    (a, b) =>
      rankOf(a, unpriced) - rankOf(b, unpriced) || compare(nameOf(library, a), nameOf(library, b)) || compare(a.material, b.material),
  )
  const basket = decided === null || 'problem' in decided ? null : basketOf(library, lines, unpriced, decided, packs)
  return { lines, basket, problems }
}

const hasPrice = (line: ShoppingLine): boolean => line.costMinor !== null

function rankOf(line: ShoppingLine, unpriced: ReadonlySet<string>): number {
  if (unpriced.has(line.material)) return 0
  if (line.material !== 'water' && (line.need.amount === null || line.open)) return 1
  return line.buy.amount !== null && line.buy.amount <= 0 && line.madeUp === null ? 3 : 2
}

const nameOf = (library: Library, line: ShoppingLine): string => materialOf(library, line.material).name.toLowerCase()
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)

/** ISO 4217 for "no currency": nothing has a price. */
const noCurrency = 'XXX'

function basketOf(
  library: Library,
  lines: readonly ShoppingLine[],
  unpriced: ReadonlySet<string>,
  { decision, costMinor, boundMinor }: Decided,
  file: PacksFile | null,
): Basket {
  const orders = ordersOf(library, decision.counts)
  const priceUnknown = lines.filter(line => unpriced.has(line.material)).map(line => line.material)
  // What comes out of the tap costs nothing, however much of it there is.
  const amountUnknown = lines
    .filter(line => line.material !== 'water' && (line.need.amount === null || line.open))
    .map(line => line.material)
  const somethingPriced = lines.some(line => hasPrice(line))
  return {
    totalMinor: somethingPriced || lines.length === 0 ? costMinor : null,
    complete: priceUnknown.length === 0 && amountUnknown.length === 0,
    priceUnknown,
    amountUnknown,
    currency: file?.currency ?? noCurrency,
    orders,
    proven: boundMinor === costMinor,
    boundMinor,
  }
}
