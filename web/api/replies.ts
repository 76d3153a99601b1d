import type { HazardCounts, RegulatedHit } from '../../core/hazards/hazard-list.ts'
import type { LibraryFile } from '../../core/library/library.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { PacksFile } from '../../core/shopping/packs.ts'
import type { ShelfItem } from '../../core/shopping/shelf.ts'

/** One hit of a search by name, synonym, formula or CAS number; `matched` is the word that was found. */
export interface MaterialHit {
  readonly id: string
  readonly name: string
  readonly formula?: string | null
  readonly cas?: string | null
  readonly kind: string
  readonly matched: string
}

export interface ReachRow {
  readonly compound: string
  readonly name: string
  readonly steps: number
  readonly bestYieldOnStart: number
  readonly routes: number
  readonly flags: readonly string[]
}

/** One transformation of the network downstream. */
export interface ReachEdge {
  readonly id: string
  readonly name: string
  readonly from: readonly string[]
  readonly to: string
  readonly sure: 'seen' | 'remembered' | 'unknown'
}

export interface ReachReply {
  readonly reach: readonly ReachRow[]
  readonly edges: readonly ReachEdge[]
}

/** One route as the search tells it: the row of `waybench routes --json`. */
export interface RouteRow {
  readonly steps: readonly string[]
  readonly overallYieldOnStart: number
  readonly longestLinearYield: number
  readonly made: readonly string[]
  readonly bought: readonly string[]
  readonly value: number | null
  readonly hazard: HazardCounts
  readonly flags: readonly string[]
}

export interface RoutesReply {
  readonly routes: readonly RouteRow[]
  readonly complete: boolean
  /** No route that is not listed can have a better figure on the chosen axis. */
  readonly bound?: number
  /** The gentlest within ten points of the first one's yield, where that is another. */
  readonly gentlest?: RouteRow | null
  readonly stopped?: readonly RegulatedHit[]
}

/** A structure drawn on the server: paths and labels about its centre, px at one bond length for all. */
export interface SliceReply {
  readonly library: LibraryFile
  readonly traits: Readonly<Record<string, unknown>>
  readonly drawings: Readonly<Record<string, unknown>>
  /** Materials of the slice that some transformation of the whole library makes. */
  readonly makeable?: readonly string[]
}

/** A way in to try the product with: what is in hand, and what might be wanted. */
export interface WayIn {
  readonly title: string
  readonly start: { readonly material: string; readonly massG: number | null }
  readonly goals?: readonly { readonly target: string; readonly steps?: readonly string[]; readonly amount?: Plan['goals'][number]['amount'] }[]
}

export interface DemoReply {
  readonly title?: string
  readonly shelf: readonly ShelfItem[]
  readonly packs: PacksFile | null
  readonly settings: Partial<Plan['settings']>
  readonly waysIn: readonly WayIn[]
}

/** A plan as the server keeps it; `version` grows with every save and guards against two hands at once. */
export interface SavedPlan {
  readonly id: string
  readonly version: number
  readonly savedAt: string
  readonly plan: unknown
}

export interface PlanRow {
  readonly id: string
  readonly title: string
  readonly version: number
  readonly savedAt: string
}
