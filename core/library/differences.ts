import { differenceText } from './difference-text.ts'
import { inFieldOrder } from './field-words.ts'
import type { LibraryFile } from './library.ts'

/** A key whose value differs, as the library format holds it; absent = not stated. */
export interface FieldDifference {
  readonly key: string
  readonly before?: unknown
  readonly now?: unknown
}

/** The same with what a chemist reads: "density: 0.79 g/mL → 0.81 g/mL". */
export interface ToldDifference extends FieldDifference {
  readonly text: string
}

/** What one record of a layer does to what lies beneath. */
export interface RecordDifference {
  readonly list: 'materials' | 'transformations'
  readonly id: string
  readonly name: string
  /** `overrides`: stands in place of a record of the library beneath, which stays untouched. */
  readonly change: 'added' | 'overrides' | 'changed' | 'same' | 'removed'
  /** For `overrides` against the library beneath, for `changed` against what the layer held. */
  readonly fields: readonly ToldDifference[]
}

type Records = Pick<LibraryFile, 'materials' | 'transformations'>

/**
 * What taking over records would do, one row a record, in order of list and id.
 *
 * @param beneath  the library under the layer
 * @param layer    the layer as it stands
 * @param taken    records that are to be added to it, or to replace its own
 * @param removed  ids that it is to lose
 */
export function differences(
  beneath: { readonly [L in keyof Records]: ReadonlyMap<string, Records[L][number]> },
  layer: Records,
  taken: Records,
  removed: { readonly [L in keyof Records]: readonly string[] } = { materials: [], transformations: [] },
): readonly RecordDifference[] {
  const names = new Map([...layer.materials, ...taken.materials].map(({ id, name }) => [id, name]))
  const nameOf = (id: string): string => names.get(id) ?? beneath.materials.get(id)?.name ?? id
  return (['materials', 'transformations'] as const).flatMap(list => {
    const own = new Map<string, Records[typeof list][number]>(layer[list].map(record => [record.id, record]))
    const rows = taken[list].map((record): RecordDifference => {
      const head = { list, id: record.id, name: record.name }
      const before = own.get(record.id)
      const under = beneath[list].get(record.id)
      if (before !== undefined) {
        const fields = toldDifferences(before, record, nameOf)
        return { ...head, change: fields.length === 0 ? 'same' : 'changed', fields }
      }
      if (under === undefined) return { ...head, change: 'added', fields: [] }
      const fields = toldDifferences(under, record, nameOf)
      return { ...head, change: fields.length === 0 ? 'same' : 'overrides', fields }
    })
    const gone = removed[list].flatMap((id): RecordDifference[] => {
      const record = own.get(id)
      return record === undefined ? [] : [{ list, id, name: record.name, change: 'removed', fields: [] }]
    })
    return [...rows, ...gone].sort((one, other) => (one.id < other.id ? -1 : 1))
  })
}

/** Keys whose values differ, each in words, in the order of the format. */
export const toldDifferences = (before: object, now: object, nameOf: (id: string) => string): readonly ToldDifference[] =>
  [...fieldDifferences(before, now)]
    .sort((one, other) => inFieldOrder(one.key, other.key))
    .map(field => ({ ...field, text: differenceText(before, now, field.key, nameOf) }))

/** Keys whose values differ, in order of name; the order of keys inside a value does not count. */
export function fieldDifferences(before: object, now: object): readonly FieldDifference[] {
  const old = before as Readonly<Record<string, unknown>>
  const fresh = now as Readonly<Record<string, unknown>>
  return [...new Set([...Object.keys(old), ...Object.keys(fresh)])].sort().flatMap((key): FieldDifference[] => {
    if (canonical(old[key]) === canonical(fresh[key])) return []
    return [{ key, ...(old[key] === undefined ? {} : { before: old[key] }), ...(fresh[key] === undefined ? {} : { now: fresh[key] }) }]
  })
}

function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join()}]`
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'absent'
  const entries = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1))
  return `{${entries.map(([key, inner]) => `${JSON.stringify(key)}:${canonical(inner)}`).join()}}`
}
