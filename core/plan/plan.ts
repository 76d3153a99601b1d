import type { Route } from '../route/route.ts'
import type { PacksFile } from '../shopping/packs.ts'
import type { ShelfItem } from '../shopping/shelf.ts'
import type { Choosing } from './choosing.ts'
import type { Settings } from './settings.ts'

/** How much of a target: so many grams, a share (0 to 1) of the start, or what the others leave. */
export type GoalAmount =
  | { readonly kind: 'mass'; readonly massG: number }
  | { readonly kind: 'share'; readonly fraction: number }
  | { readonly kind: 'rest'; readonly leastG?: number }

/**
 * The amount of a goal as a multiple: "12 groups x 2 g". `runs` = every group runs the last step for itself, from one lot of what comes before;
 * `lot` = one lot, divided at the end.
 */
export interface Groups {
  readonly count: number
  readonly as: 'runs' | 'lot'
}

export interface Goal {
  readonly target: string
  /** Of all groups together. */
  readonly amount: GoalAmount
  readonly route: Route
  readonly groups?: Groups
}

/** What was really done at one step. A correction is a new entry that names the one it replaces; nothing is edited away. */
export interface LogEntry {
  readonly id: string
  readonly step: string
  readonly date: string | null
  readonly batch: number
  readonly chargedG: number | null
  /** The charge is what the plan had when the run was logged; nobody weighed it. */
  readonly chargedAs?: 'planned'
  readonly weighedG: number
  /** Loss on drying still to come, percent of the weighed mass; 0 = dry. */
  readonly dampPercent: number
  readonly purity: number | null
  /** From the first liquid to the last solid, C. */
  readonly meltingC?: readonly [number, number]
  readonly failed: boolean
  readonly note: string
  readonly replaces: string | null
}

/** Goals + routes + shelf + settings: evaluated as a whole. */
export interface Plan {
  readonly title: string
  /** What is in hand: a material, and how much of it; massG null = reckon backwards from the goals. */
  readonly start: { readonly material: string; readonly massG: number | null }
  /** In the order in which mass goals are served. */
  readonly goals: readonly Goal[]
  readonly shelf: readonly ShelfItem[]
  readonly packs: PacksFile | null
  readonly settings: Settings
  /** How routes were looked for; absent = by the defaults. No figure of the plan depends on it. */
  readonly choosing?: Choosing
  readonly log: readonly LogEntry[]
  /** Intermediates bought or taken from the shelf after a poor run, chosen by name: the one case in which a made compound is bought as well. */
  readonly topUps?: readonly { readonly compound: string; readonly massG: number }[]
  /** Further batches of steps that are done, each with its own charge of limiting compound, g. */
  readonly repeats?: readonly { readonly step: string; readonly limitingG: number }[]
  /**
   * Ways on that were taken, in order: after which entry of the log, and by how much the start grew for it, in its own grams. What was added serves
   * the plan's first aims and raises none of them.
   */
  readonly taken?: readonly { readonly way: 'top-up' | 'repeat' | 'another-route'; readonly after: string; readonly addedG: number }[]
  /** Which version of the plan this is, counted by whoever keeps the file, and what changed since the one before, as sentences. */
  readonly edition?: { readonly number: number; readonly changed: readonly string[] }
  /** Reckoned with the records that its file brings along, where the library says otherwise by now; absent = with the library. */
  readonly keepsRecords?: boolean
  readonly seed: number
}
