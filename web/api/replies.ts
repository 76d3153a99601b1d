import type { Depiction } from '../../core/chemistry/drawing.ts'
import type { JointWay } from '../../core/choose/joint.ts'
import type { ReachEdge, ReachNetwork } from '../../core/choose/reach-network.ts'
import type { RouteRows } from '../../core/choose/route-list.ts'
import type { RouteRow } from '../../core/choose/route-row.ts'
import type { LibraryFile } from '../../core/library/library.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { Route } from '../../core/route/route.ts'
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

/** What the start can become: list and drawing. */
export type ReachReply = ReachNetwork
export type { ReachEdge }
export type ReachRow = ReachReply['reach'][number]

/** What `waybench routes --json` prints. */
export type RoutesReply = RouteRows
export type { RouteRow }

/** A slice of the library, with what the server has reckoned about it. */
export interface SliceReply {
  readonly library: LibraryFile
  readonly traits: Readonly<Record<string, unknown>>
  /** By material: how it stands on the map. */
  readonly drawings: Readonly<Record<string, Depiction>>
  /** Materials of the slice that some transformation of the whole library makes. */
  readonly makeable?: readonly string[]
  /** What was asked for and is not known: where = kind and id. */
  readonly problems?: readonly Problem[]
  /** Transformations that are only in what the plan brings along. */
  readonly brought?: readonly string[]
  /** The same of materials. */
  readonly broughtMaterials?: readonly string[]
  /** Typical yields that own records stand in place of, by step: percent, or g per 100 g of an isolation. */
  readonly beneath?: Readonly<Record<string, number>>
  /** What own materials say otherwise than those beneath them, in words. */
  readonly beneathMaterials?: Readonly<Record<string, readonly string[]>>
}

/** A way in to try the product with: what is in hand, and what might be wanted. */
export interface WayIn {
  readonly title: string
  readonly windows?: Plan['settings']['windows'] | undefined
  readonly start: { readonly material: string; readonly massG: number | null }
  readonly goals?: readonly {
    readonly target: string
    readonly steps?: readonly string[]
    readonly amount?: Plan['goals'][number]['amount']
  }[]
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
}

/** A saved plan as it is opened; `changes` tell what became of the library since. */
export interface OpenedReply extends SavedPlan {
  readonly plan: unknown
  readonly changes: readonly Problem[]
}

export interface PlanRow {
  readonly id: string
  readonly title: string
  readonly version: number
  readonly savedAt: string
}

/** A table that was read: what was taken, and every line that was not, whole. */
export interface TableReply {
  readonly refused: readonly { readonly line: number; readonly text: string; readonly problems: readonly Problem[] }[]
  readonly notes: readonly Problem[]
  readonly problems: readonly Problem[]
}
export interface ShelfTableReply extends TableReply {
  readonly items: readonly ShelfItem[]
}
export interface PacksTableReply extends TableReply {
  readonly packs: PacksFile
  readonly taken: number
}

/** The cheapest way to all goals of a plan. */
export interface CheapestReply extends Omit<JointWay, 'plan' | 'evaluation'> {
  readonly routes: readonly Route[]
}
