import type { OwnLibrary } from './library/own-library.ts'
import type { Workshop } from './library/workshop.ts'
import type { Store } from './store/store.ts'

/** What the resources work with. */
export interface Backing {
  /** The library with the bench's own records over it. */
  readonly workshop: Workshop
  readonly own: OwnLibrary
  readonly store: Store
  /** Now, ISO 8601 in UTC; handed in so that tests decide it. */
  readonly now: () => string
  /** A new id for a saved plan. */
  readonly newId: () => string
}

/** What the server is built on; the bench's own records are laid over the workshop there. */
export type Foundation = Omit<Backing, 'own'>
