import type { Choosing } from '../../core/plan/choosing.ts'
import type { GoalAmount, Groups, LogEntry, Plan } from '../../core/plan/plan.ts'
import type { Settings } from '../../core/plan/settings.ts'
import type { Route } from '../../core/route/route.ts'
import type { Pack, PacksFile, Supplier } from '../../core/shopping/packs.ts'
import type { ShelfItem } from '../../core/shopping/shelf.ts'

/** Everything a person can do to a plan. `by` names the change that it carries on, so that dragging a slider is one step of Undo. */
export type Change =
  | { readonly do: 'open'; readonly plan: Plan; readonly choosing?: Choosing }
  | { readonly do: 'rename'; readonly title: string }
  | { readonly do: 'start'; readonly material: string; readonly massG: number | null }
  | { readonly do: 'have'; readonly massG: number | null }
  | { readonly do: 'add-goal'; readonly route: Route; readonly amount?: GoalAmount }
  | { readonly do: 'drop-goal'; readonly target: string }
  | { readonly do: 'goal-amount'; readonly target: string; readonly amount: GoalAmount }
  | { readonly do: 'goal-groups'; readonly target: string; readonly groups: Groups | null }
  | { readonly do: 'goal-first'; readonly target: string }
  | { readonly do: 'routes'; readonly routes: readonly Route[] }
  | { readonly do: 'choosing'; readonly patch: Partial<Choosing> }
  | { readonly do: 'put-on-shelf'; readonly item: ShelfItem; readonly at: number | null }
  | { readonly do: 'take-off-shelf'; readonly at: number }
  | { readonly do: 'stock'; readonly shelf: readonly ShelfItem[] }
  | { readonly do: 'packs'; readonly packs: PacksFile }
  | { readonly do: 'settings'; readonly patch: Partial<Settings> }
  | { readonly do: 'price'; readonly supplier: Supplier; readonly pack: Pack; readonly currency: string }
  /** A price that was written over another goes back to it. */
  | { readonly do: 'price-back'; readonly pack: Pack }
  | { readonly do: 'log'; readonly entry: LogEntry }
  /** Goes by the records that the plan was saved with, or by the library. */
  | { readonly do: 'keep-records'; readonly keep: boolean }

/** Changes of this kind that follow each other are one step of Undo: what is dragged or typed letter by letter. */
export const carriesOn = (change: Change): string | null =>
  change.do === 'have' || change.do === 'rename' ? change.do : change.do === 'goal-amount' ? `goal-amount ${change.target}` : null
