import type { Days } from '../days/days.ts'
import type { HazardList, RegulatedHit } from '../hazards/hazard-list.ts'
import type { Problem } from '../problem/problem.ts'
import type { ChargedStep, Spread } from '../route/charged.ts'
import type { EcoScale } from '../route/eco-penalties.ts'
import type { MassMetrics } from '../route/mass-metrics.ts'
import type { Basket, OtherBasket, ShoppingLine } from '../shopping/shopping.ts'
import type { GoalAmount, Groups } from './plan.ts'
import type { StartNeeded } from './start-needed.ts'

export interface GoalResult extends Spread {
  readonly target: string
  readonly amount: GoalAmount
  readonly overallYieldOnStart: number
  readonly longestLinearYield: number
  /** Grams of the start this goal takes. */
  readonly startG: number
  /** For so many groups: one group's part of the median, and whether each runs the last step itself or one lot is divided. */
  readonly groups?: Groups & { readonly eachG: number }
  /** Chance that the wanted mass is reached; null for shares and rest. */
  readonly chance: number | null
  /** Step numbers of its route, working order. */
  readonly steps: readonly string[]
  /** What survives of the start after each step, as a fraction of what theory allows: the treads of the staircase. */
  readonly stairs: readonly {
    readonly step: string
    readonly compound: string
    readonly p10: number
    readonly median: number
    readonly p90: number
    readonly expected: number
  }[]
  /** Expected mass under the other hand, for the sheet tells both. */
  readonly otherHandG: number
}

/**
 * The whole plan, reckoned. This is the JSON of `waybench plan --json`: stable, documented, tested. With several goals
 * `overallYieldOnStart` and `longestLinearYield` are those of the first; each goal row has its own.
 */
export interface Evaluation {
  readonly overallYieldOnStart: number
  readonly longestLinearYield: number
  readonly steps: readonly ChargedStep[]
  readonly goals: readonly GoalResult[]
  /** Chance that all mass goals are reached together; null where there is none. */
  readonly chanceAll: number | null
  readonly start: {
    readonly compound: string
    readonly material: string
    /** Grams of the start that the steps take. */
    readonly massG: number
    /** Grams in hand; null = reckoned backwards. */
    readonly haveG: number | null
    readonly keptBackG: number
    readonly leftG: number
    /** g per 100 g of feedstock where the first step is an isolation; shown beside the yield, never multiplied in. */
    readonly recoveryPercent: number | null
  }
  /** What it takes to reach the mass goals nine times in ten, or with the confidence asked for; null without a mass goal. */
  readonly startNeeded: StartNeeded | null
  readonly coProducts: readonly { readonly compound: string; readonly step: string; readonly expectedG: number }[]
  readonly shopping: readonly ShoppingLine[]
  /** Null only where no solver was handed in. */
  readonly basket: Basket | null
  /** Other choices of packs for the same needs; only where they were asked for. */
  readonly otherBaskets?: readonly OtherBasket[]
  readonly hazards: HazardList
  readonly days: Days
  readonly metrics: {
    readonly route: MassMetrics
    /** EcoScale of a reaction step; null for an isolation, for which it has no form. */
    readonly steps: readonly { readonly step: string; readonly metrics: MassMetrics; readonly ecoScale: EcoScale | null }[]
  }
  /** What the reader must know: the start does not suffice and by how much, scale flags, assumptions. */
  readonly notes: readonly Problem[]
}

/** A plan that a stop row ends: the list's full name and the reason, and nothing else. */
export interface Stopped {
  readonly stopped: readonly RegulatedHit[]
}
