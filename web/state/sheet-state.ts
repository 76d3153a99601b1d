import type { Plan } from '../../core/plan/plan.ts'
import { defaultSettings } from '../../core/plan/settings.ts'

/** Axes a person may rank routes by, in the order in which they are offered. */
export const axes = ['start', 'yield', 'steps', 'cost', 'hands-on', 'elapsed', 'mass-intensity', 'hazard'] as const
export type Axis = (typeof axes)[number]

/** How routes are looked for: kept beside the plan, since it says what was asked and not what was chosen. */
export interface Choosing {
  readonly by: Axis
  /** Material ids, in any role. */
  readonly avoid: readonly string[]
  /** Transformation ids. */
  readonly avoidStep: readonly string[]
  readonly ownedOnly: boolean
  readonly maxSteps: number | null
  /** Compounds to be made where they could be bought. */
  readonly make: readonly string[]
}

/** Everything a person has said: what Undo steps back through and what is saved. */
export interface SheetState {
  readonly plan: Plan
  readonly choosing: Choosing
}

export const firstChoosing: Choosing = { by: 'start', avoid: [], avoidStep: [], ownedOnly: false, maxSteps: null, make: [] }

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
