import { fieldDifferences } from '../library/differences.ts'
import { fieldLabel } from '../library/field-words.ts'
import type { Material } from '../library/material.ts'
import { type Checked, good } from '../problem/problem.ts'
import { idOfName } from './id-of-name.ts'

/** The materials that a file's records stand over. */
export interface Beneath {
  readonly byId: ReadonlyMap<string, Material>
  /** The one of just this name; undefined where there is none, a problem where the name means several. */
  readonly named: (name: string, where: readonly string[]) => Checked<Material | undefined>
}

/** Nothing lies beneath: every record is new. */
export const nothingBeneath: Beneath = { byId: new Map(), named: () => good(undefined) }

/** The id of a record that gives none, and what is known under it: the material of its name, else a new one. */
export function idFor(name: string, beneath: Beneath, taken: ReadonlySet<string>, where: readonly string[]): Checked<string> {
  const named = beneath.named(name, where)
  if (!named.ok) return named
  return good(named.value?.id ?? idOfName(name, { has: id => taken.has(id) || beneath.byId.has(id) }))
}

/** Keys that every record has: an empty cell under one of them says nothing. */
const always: ReadonlySet<string> = new Set(['id', 'name', 'kind', 'form', 'sources'])

/**
 * A record as a file gives it, laid over the one that is known by its id: what the file does not speak of stays as it is, an emptied cell
 * empties, and where a figure changes without a source the file is named as one.
 *
 * @param record  what the file says; absent = not said, or emptied
 * @param spoken  keys that the file speaks of, emptied ones among them
 * @param known   absent = a new material
 * @param from    what the file is called as a source
 */
export function overKnown(
  record: Readonly<Record<string, unknown>>,
  spoken: ReadonlySet<string>,
  known: Material | undefined,
  from: string,
): Record<string, unknown> {
  const source = { citation: from, checked: false }
  if (known === undefined) return { ...record, kind: record.kind ?? 'compound', sources: record.sources ?? [source] }
  const kept = Object.fromEntries(Object.entries(known).filter(([key]) => always.has(key) || !spoken.has(key)))
  const whole: Record<string, unknown> = { ...kept, ...record }
  const changed = fieldDifferences(known, whole).map(one => fieldLabel(one.key))
  if (record.sources !== undefined || changed.length === 0) return whole
  // The file changed something before: it speaks for that still.
  const before = known.sources.filter(one => one.citation === from)
  if (before.some(one => one.for === undefined)) return whole
  const all = [...new Set([...before.flatMap(one => one.for?.split(', ') ?? []), ...changed])]
  return { ...whole, sources: [...known.sources.filter(one => one.citation !== from), { ...source, for: all.join(', ') }] }
}
