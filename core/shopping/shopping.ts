import type { PriceFrom } from './price-from.ts'

/** An amount in the unit of its lines where they agree, else g; null where the source leaves it open. */
export interface Quantity {
  readonly amount: number | null
  readonly unit: 'g' | 'mL'
}

/** So many of one pack. */
export interface PackCount {
  readonly supplier: string
  readonly amount: number
  readonly unit: 'g' | 'kg' | 'mL' | 'L'
  readonly count: number
  /** Price of one pack, in minor units of the plan's currency. */
  readonly priceMinor: number
  /** Where that price was got, as far as the packs file says; empty = source not stated. */
  readonly priceFrom: PriceFrom
}

/** What the plan needs of one material, what the shelf has of it, and what to buy. */
export interface ShoppingLine {
  readonly material: string
  readonly need: Quantity
  readonly shelf: Quantity
  readonly buy: Quantity
  /** Some of its lines have no amount: the figures are a lower bound. */
  readonly open: boolean
  /** Some of its amounts are rules of thumb, not from the source. */
  readonly planned: boolean
  /** Some of its amounts are the least the equation allows. */
  readonly atLeast: boolean
  readonly packs: readonly PackCount[]
  /** Null = price unknown: listed first, never free. 0 = nothing to buy. */
  readonly costMinor: number | null
  /** Left over once the packs are bought, in the unit of `buy`. */
  readonly left: Quantity
  /** Steps that use it, with what each needs, reserve not included; `step` is empty for what goes into a solution made up from it. */
  readonly uses: readonly { readonly step: string; readonly role: string; readonly amount: Quantity }[]
  /** Made on the bench from something stronger and what it is made up with. */
  readonly madeUp: MadeUp | null
  /** The bottles that the shelf's part comes from, oldest first. */
  readonly lots: readonly {
    readonly amount: Quantity
    /** Below 1, more must be taken out: amount / assay. */
    readonly assay: number
    readonly opened: string | null
    readonly place: string | null
  }[]
  /** Stock that is there but not counted: expired, or a peroxide former past its test. */
  readonly notes: readonly string[]
}

/** How a solution is made up from stock or from its pure compound. */
export interface MadeUp {
  readonly from: string
  readonly fromAmount: Quantity
  readonly with: string
  readonly withAmount: Quantity
  /** One sentence that can be followed at the bench. */
  readonly how: string
}

export interface Order {
  readonly supplier: string
  readonly name: string
  readonly goodsMinor: number
  readonly carriageMinor: number
  readonly hazardousFeeMinor: number
  /** Carriage and fees were never stated: they count nothing here, and the order costs at least its total. */
  readonly carriageUnknown?: true
  /** The supplier's minimum order, reached by the goods; 0 = none. */
  readonly minimumMinor: number
  readonly totalMinor: number
  /** Where carriage and fees were got; empty = source not stated. */
  readonly priceFrom: PriceFrom
}

/** One order a supplier, least cost over packs, carriage, fees and minimum orders. */
export interface Basket {
  /** Least cost of all that has both an amount and a price; null only where nothing has a price. */
  readonly totalMinor: number | null
  /** Nothing is missing from the total. */
  readonly complete: boolean
  readonly priceUnknown: readonly string[]
  readonly amountUnknown: readonly string[]
  readonly currency: string
  readonly orders: readonly Order[]
  /** The solver proved that no cheaper basket exists. */
  readonly proven: boolean
  /** No basket costs less; equal to the total where that is proven, null where nothing is known. */
  readonly boundMinor: number | null
}

/** Another basket for the same needs, chosen by something else than its cost. */
export interface OtherBasket {
  readonly kind: 'fewest-suppliers' | 'least-left'
  readonly totalMinor: number
  /** What it costs more than the basket itself. */
  readonly moreMinor: number
  readonly orders: readonly Order[]
  readonly packs: readonly (PackCount & { readonly material: string })[]
  /** What is left over, each material at its cheapest price per unit, in minor units. */
  readonly leftWorthMinor: number
  /** No basket is better in what it was chosen by, nor as good and cheaper. */
  readonly proven: boolean
}

/**
 * An integer-program solver, handed in: takes a model in the CPLEX LP format. `status` is `optimal` only where optimality was proven;
 * `feasible` for the best found within a limit, with a proven `bound`: no solution has a smaller objective.
 */
export type Solver = (model: string) => {
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'failed'
  readonly columns: ReadonlyMap<string, number>
  readonly bound?: number
}
