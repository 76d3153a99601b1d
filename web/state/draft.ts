import type { SheetState } from './sheet-state.ts'

/** What a person typed is in this browser before it is anywhere else. */
export interface Draft {
  readonly state: SheetState
  /** Where it is saved on the server, and at which version; null = not yet. */
  readonly saved: { readonly id: string; readonly version: number; readonly savedAt: string } | null
  /** Everything in `state` is on the server. */
  readonly clean: boolean
}

const prefix = 'waybench-draft '
const unsaved = 'new'

const keyOf = (id: string | null): string => prefix + (id ?? unsaved)

/** Keeps a draft; false where the browser will not (private window, no room). */
export function keepDraft(draft: Draft): boolean {
  try {
    localStorage.setItem(keyOf(draft.saved?.id ?? null), JSON.stringify(draft))
    if (draft.saved !== null) localStorage.removeItem(keyOf(null))
    return true
  } catch {
    return false
  }
}

/** The draft of a plan, or of one that was never saved (`null`); null where there is none or it cannot be read. */
export function draftOf(id: string | null): Draft | null {
  try {
    const text = localStorage.getItem(keyOf(id))
    if (text === null) return null
    const draft = JSON.parse(text) as Draft
    return draft.state?.plan?.settings === undefined ? null : draft
  } catch {
    return null
  }
}

export function dropDraft(id: string | null): void {
  try {
    localStorage.removeItem(keyOf(id))
  } catch {
    // Where nothing can be kept nothing has to be dropped.
  }
}
