import type { Role, Stage } from '../library/transformation.ts'

/**
 * Where the amount of a line comes from. `source` = printed there and scaled; `derived` = reckoned by the library; `at-least` = the source
 * gives none and the equation needs this much at full conversion; `about` = what a made compound's solution is made up with; `planned` = a
 * rule of thumb, not from the source; `open` = as needed, no figure at all.
 */
export type AmountBasis = 'source' | 'derived' | 'at-least' | 'about' | 'planned' | 'open'

/** One line of what goes in at the plan's scale, all batches together. Null = not known or not meaningful, never 0. */
export interface ChargedLine {
  readonly material: string
  readonly role: Role
  readonly at: Stage
  readonly massG: number | null
  readonly volumeMl: number | null
  /** Moles of the compound the material is or contains. */
  readonly amountMol: number | null
  /** Moles of contained compound over moles of the limiting reactant as charged. */
  readonly equivalents: number | null
  readonly basis: AmountBasis
  /** `start` = the plan's start; `made` = supplied by an earlier step; `bought` = from the shelf or the shop; `free` = water or air. */
  readonly supply: 'start' | 'made' | 'bought' | 'free'
  /** Index of the line in the transformation's charge; null for a reactant that has no line there. */
  readonly line: number | null
}

/** A quantity of one step's product with its spread, g. Median and percentiles are of the joint draws; expected is at typical yields. */
export interface Spread {
  readonly expectedG: number
  readonly p10G: number
  readonly medianG: number
  readonly p90G: number
}

/** One step of the plan at its scale; its spread is that of all batches, with that of the steps before in it. */
export interface ChargedStep extends Spread {
  readonly transformation: string
  readonly makes: string
  /** As drawn and printed everywhere: 1, 2a, 2b, 3 ... */
  readonly number: string
  /** Needed limiting moles (isolation: feedstock grams) over those of the reference charge. */
  readonly scale: number
  readonly limiting: { readonly compound: string; readonly amountMol: number | null; readonly massG: number }
  readonly charges: readonly ChargedLine[]
  /** Null for an isolation: it has no theoretical mass. */
  readonly theoreticalG: number | null
  /**
   * What the charge still to be run gives, by itself: `chargeG` of the limiting compound exactly as printed, so that nothing exceeds its theory. The
   * spread of the step itself takes in that more or less of a made compound may come to it.
   */
  readonly ofCharge: {
    readonly chargeG: number
    readonly theoryG: number | null
    readonly p10G: number
    readonly medianG: number
    readonly p90G: number
  }
  /** Fraction of theory, or for an isolation grams of product per gram of feedstock. */
  readonly yieldFraction: { readonly low: number; readonly typical: number; readonly high: number }
  readonly batches: number
  /** Batches to run and combine so that none lies far above the largest published scale; null or absent where none does. */
  readonly combine?: number | null
  /** Where the product goes: to a later step, a goal, or kept back. */
  readonly goesTo: readonly { readonly step: string | null; readonly goal: number | null; readonly massG: number }[]
  /** Second products worth isolating, g at typical yield. */
  readonly coProducts: readonly { readonly compound: string; readonly expectedG: number }[]
  /** Liquids and solids of the vessel at this scale, mL per batch; null where nothing in it has a volume. */
  readonly volumeMl: { readonly perBatch: number | null; readonly assumed: boolean }
  /**
   * Grams isolated and logged; null or absent while no run of the step is. `leftToRun` = batches still to run; `charges` cover only these.
   * `ownRuns` = runs that taught something about its yield.
   */
  readonly done?: { readonly isolatedG: number; readonly leftToRun: number; readonly ownRuns: number } | null
  /** What the bench should know about this step's amounts: scale flags, "source gives none" and the like, as sentences. */
  readonly notes: readonly string[]
}
