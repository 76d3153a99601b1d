import { emptyMaterial, type TypedMaterial } from './material-typed.ts'
import { filledFrom } from './mending.ts'

/** What the writing called a material that the library does not hold, and the charge line that asked for it, if one did. */
export interface Called {
  readonly text: string
  readonly line: string | null
}

/** What is typed of one material: a new one, one that a text asks for, or a record that is put right. */
export interface MaterialDraft {
  readonly typed: TypedMaterial
  /** Null where the page was opened by itself. */
  readonly called: Called | null
  /** As it stood before anything was typed, or as it was saved. */
  readonly begun: TypedMaterial
  /** Version of the own library that it was saved as; null = not yet. */
  readonly saved: number | null
}

/** The material that the page shows, and those begun before that wait. */
export interface MaterialDrafts {
  readonly now: MaterialDraft
  readonly others: readonly MaterialDraft[]
}

export const draftOf = (begun: TypedMaterial, called: Called | null = null): MaterialDraft => ({ typed: begun, called, begun, saved: null })
export const noDrafts: MaterialDrafts = { now: draftOf(emptyMaterial), others: [] }

const sameText = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other)

/** What a draft is about: of each there is one at most. */
const about = ({ typed, called }: MaterialDraft): string =>
  JSON.stringify(typed.over !== null ? ['record', typed.over.id] : called !== null ? ['called', called.text, called.line] : ['new'])

/** It holds what would be lost with it: typed since it was begun or saved, or saved and taken back. */
export const isUnsaved = ({ typed, begun, saved }: MaterialDraft, undone: ReadonlySet<number>): boolean =>
  !sameText(typed, begun) || (saved !== null && undone.has(saved))

/**
 * Another material takes the page: what stood there waits if anything in it is unsaved, and what was typed of that other one before comes back.
 *
 * @param undone versions of the own library that were taken back
 */
export function turnedTo({ now, others }: MaterialDrafts, next: MaterialDraft, undone: ReadonlySet<number>): MaterialDrafts {
  const all = [now, ...others].filter(one => isUnsaved(one, undone))
  const before = all.find(one => about(one) === about(next))
  return { now: before === undefined ? next : rebased(before, next), others: all.filter(one => one !== before) }
}

/** What was typed over a record that reads otherwise by now: every field that was left alone says what the record says. */
function rebased(before: MaterialDraft, next: MaterialDraft): MaterialDraft {
  const [was, is] = [before.typed.over, next.typed.over]
  if (was === null || is === null || sameText(was, is)) return before
  const untouched = filledFrom(was, String) as Readonly<Record<string, unknown>>
  const typed = Object.entries(before.typed).filter(([key, text]) => key in untouched && key !== 'over' && !sameField(text, untouched[key]))
  const { known, source, hazards, codesFrom, apartFrom } = before.typed
  return { ...next, typed: { ...next.typed, known, source, hazards, codesFrom, apartFrom, ...Object.fromEntries(typed) } }
}

/** What a solution is of is the same by its id, however it is named. */
const sameField = (one: unknown, other: unknown): boolean => sameText(idIn(one), idIn(other))
const idIn = (one: unknown): unknown => (typeof one === 'object' && one !== null && 'id' in one ? one.id : one)

/** What a draft is called in the list of those that wait. */
export const draftName = ({ typed, called }: MaterialDraft): string =>
  typed.over?.name || typed.name.trim() || typed.smiles.trim() || typed.formula.trim() || called?.text || 'a new material'
