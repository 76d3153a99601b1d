import { type Change, carriesOn } from './change.ts'
import { changed } from './changed.ts'
import type { SheetState } from './sheet-state.ts'

/** So far back Undo reaches; a plan is some tens of kilobytes, and parts that did not change are shared. */
const longest = 200

export interface History {
  readonly now: SheetState
  readonly past: readonly SheetState[]
  /** The kind of change that made `now`, where a further one of its kind is the same step of Undo. */
  readonly carrying: string | null
}

export const historyOf = (now: SheetState): History => ({ now, past: [], carrying: null })

export function stepped(history: History, change: Change): History {
  const now = changed(history.now, change)
  const key = carriesOn(change)
  if (key !== null && key === history.carrying) return { now, past: history.past, carrying: key }
  return { now, past: [...history.past, history.now].slice(-longest), carrying: key }
}

/** One step back; the same history where there is none. */
export function undone(history: History): History {
  const before = history.past[history.past.length - 1]
  return before === undefined ? history : { now: before, past: history.past.slice(0, -1), carrying: null }
}
