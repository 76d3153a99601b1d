import type { Workshop } from './library/workshop.ts'
import type { Store } from './store/store.ts'

/** What the resources work with. */
export interface Backing {
  readonly workshop: Workshop
  readonly store: Store
  /** Now, ISO 8601 in UTC; handed in so that tests decide it. */
  readonly now: () => string
  /** A new id for a saved plan. */
  readonly newId: () => string
}
