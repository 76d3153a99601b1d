import type { LibraryFile } from '../../core/library/library.ts'
import { choosingSchema, firstChoosing } from '../../core/plan/choosing.ts'
import { settingsSchema } from '../../core/plan/settings.ts'
import type { SheetState } from './sheet-state.ts'

/** What a person typed is in this browser before it is anywhere else. */
export interface Draft {
  readonly state: SheetState
  /** Where it is saved on the server, and at which version; null = not yet. */
  readonly saved: { readonly id: string; readonly version: number; readonly savedAt: string } | null
  /** Everything in `state` is on the server. */
  readonly clean: boolean
  /** Records that the plan brought along, where it goes by some of them: those that the library changed or does not hold. */
  readonly records?: LibraryFile | null
}

const prefix = 'waybench-draft '
const unsaved = 'unsaved '

const keyOfPlan = (id: string): string => prefix + id
/** A plan that never reached the server goes by its seed, which no two plans share by more than chance. */
const keyOfUnsaved = (seed: number): string => prefix + unsaved + seed

/** Keeps a draft; false where the browser will not (private window, no room). */
export function keepDraft(draft: Draft): boolean {
  const { seed } = draft.state.plan
  try {
    const key = draft.saved === null ? keyOfUnsaved(seed) : keyOfPlan(draft.saved.id)
    try {
      localStorage.setItem(key, JSON.stringify(draft))
    } catch (fault) {
      if (!draft.records) throw fault
      // Better without its records than not at all: what was typed is nowhere else.
      localStorage.setItem(key, JSON.stringify({ ...draft, records: null }))
    }
    if (draft.saved !== null) localStorage.removeItem(keyOfUnsaved(seed))
    return true
  } catch {
    return false
  }
}

/** The draft of a saved plan; null where there is none or it cannot be read. */
export const draftOf = (id: string): Draft | null => read(keyOfPlan(id))

/** Plans that never reached the server, by title. */
export function unsavedDrafts(): readonly Draft[] {
  try {
    const keys = Array.from({ length: localStorage.length }, (_, at) => localStorage.key(at) ?? '')
    return keys
      .filter(key => key.startsWith(prefix + unsaved))
      .flatMap(key => read(key) ?? [])
      .sort((a, b) => (a.state.plan.title < b.state.plan.title ? -1 : 1))
  } catch {
    return []
  }
}

export function dropDraft(id: string): void {
  try {
    localStorage.removeItem(keyOfPlan(id))
  } catch {
    // Where nothing can be kept nothing has to be dropped.
  }
}

function read(key: string): Draft | null {
  try {
    const text = localStorage.getItem(key)
    if (text === null) return null
    const draft = JSON.parse(text) as Draft
    if (draft.state?.plan?.settings === undefined) return null
    // A draft of an earlier version may lack an option or a setting that has come since.
    const choosing = choosingSchema.safeParse(draft.state.choosing)
    const settings = settingsSchema.safeParse(draft.state.plan.settings)
    const plan = settings.success ? { ...draft.state.plan, settings: settings.data } : draft.state.plan
    return { ...draft, state: { ...draft.state, plan, choosing: choosing.success ? choosing.data : firstChoosing } }
  } catch {
    return null
  }
}
