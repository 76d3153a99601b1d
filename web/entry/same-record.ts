import { fieldDifferences } from '../../core/library/differences.ts'
import { ownBench } from '../../core/library/trust.ts'

type Raw = Readonly<Record<string, unknown>>

/** The day on which a note of the own bench was typed: the same record typed again tomorrow is still the same. Another day of its run is not. */
const day = new RegExp(`^(${ownBench}), entered \\d{4}-\\d\\d-\\d\\d`)

const undated = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map((source: { readonly citation?: unknown }) => ({ ...source, citation: String(source.citation).replace(day, '$1') }))
    : value

/** The record among those kept that says the same in every key but its id; null where none does. */
export function sameRecord<R extends object>(record: Raw, kept: readonly R[]): R | null {
  const wanted = { ...record, sources: undated(record.sources) }
  return (
    kept.find(one => {
      const other = { ...one, sources: undated((one as Raw).sources) }
      return fieldDifferences(other, wanted).every(({ key }) => key === 'id')
    }) ?? null
  )
}
