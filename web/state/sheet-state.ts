import { type Choosing, firstChoosing } from '../../core/plan/choosing.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { defaultSettings } from '../../core/plan/settings.ts'

/** Everything a person has said: what Undo steps back through and what is saved. */
export interface SheetState {
  readonly plan: Plan
  /** How routes are looked for: beside the plan while one works, inside it in its file. */
  readonly choosing: Choosing
}

/** Start material of a plan in which nothing is in hand yet: such a plan is neither reckoned nor sent to the server. */
export const nothing = ''

/**
 * A plan in which nothing has been said.
 *
 * @param seed  of the draws; the same seed gives the same figures
 */
export function emptyState(seed: number): SheetState {
  return {
    plan: {
      title: 'Untitled plan',
      start: { material: nothing, massG: null },
      goals: [],
      shelf: [],
      packs: null,
      settings: defaultSettings,
      log: [],
      seed,
    },
    choosing: firstChoosing,
  }
}

/** Something stands in hand, so that the network can be asked. */
export const hasStart = (state: SheetState): boolean => state.plan.start.material !== nothing
