import type { RegulatedHit } from '../../core/hazards/hazard-list.ts'
import type { LibraryFile } from '../../core/library/library.ts'
import type { Way } from '../../core/logbook/replan.ts'
import type { Evaluation } from '../../core/plan/evaluation.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { Route } from '../../core/route/route.ts'

/** What the page tells the worker. Tables and facts stay with it until newer ones come; with the tables it also fetches its solver. */
export type Order =
  | { readonly kind: 'tables'; readonly tables: unknown }
  | { readonly kind: 'facts'; readonly file: LibraryFile; readonly traits: Readonly<Record<string, unknown>> }
  | { readonly kind: 'ways'; readonly id: number; readonly plan: Plan; readonly routes: readonly Route[] }
  | {
      readonly kind: 'plan'
      readonly id: number
      readonly plan: Plan
      readonly others: readonly OtherWay[]
      /** A basket at once instead of the cheapest: whoever ordered it waits no longer. */
      readonly atOnce: boolean
    }

/** The plan with one goal going another way, reckoned for comparison; `key` comes back with the answer. */
export interface OtherWay {
  readonly key: string
  readonly plan: Plan
}

export type Reckoned =
  | { readonly ok: 'reckoned'; readonly evaluation: Evaluation }
  | { readonly ok: 'stopped'; readonly stopped: readonly RegulatedHit[] }
  | { readonly ok: 'wrong'; readonly problems: readonly Problem[] }

/** What the worker tells the page: that it listens; then the plan's amounts first, then the same with its basket, then the other ways one by one. */
export type Answer =
  | { readonly kind: 'ready' }
  | { readonly kind: 'amounts' | 'whole'; readonly id: number; readonly reckoned: Reckoned }
  | { readonly kind: 'other'; readonly id: number; readonly key: string; readonly reckoned: Reckoned }
  | { readonly kind: 'done'; readonly id: number }
  | { readonly kind: 'ways'; readonly id: number; readonly ways: readonly Way[] }
