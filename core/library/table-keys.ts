import type { TableKeys } from './checks/check.ts'

/** A table as its JSON holds it: rows of several kinds, told apart by `kind`. */
export type TableRows = readonly Readonly<Record<string, unknown>>[]

/** The tables that materials point into, as far as they are at hand. */
export interface PointedInto {
  /** Rows of kind `hazard`. */
  readonly ghs?: TableRows | undefined
  /** Rows of kind `group`. */
  readonly compatibility?: TableRows | undefined
  /** Rows of the kinds `group`, `wasteStream` and `peroxideClass`. */
  readonly storage?: TableRows | undefined
}

/** The keys that materials may use, out of the tables; a table that is not at hand is not checked against. */
export const tableKeys = ({ ghs, compatibility, storage }: PointedInto): TableKeys => ({
  ...(ghs && { hazardCodes: texts(ghs, 'hazard', 'code') }),
  ...(compatibility && {
    reactivityGroups: new Set(valuesOf(compatibility, 'group', 'number').filter(value => typeof value === 'number')),
  }),
  ...(storage && {
    storageGroups: texts(storage, 'group', 'id'),
    wasteStreams: texts(storage, 'wasteStream', 'id'),
    peroxideClasses: texts(storage, 'peroxideClass', 'class'),
  }),
})

const texts = (rows: TableRows, kind: string, key: string): ReadonlySet<string> => new Set(valuesOf(rows, kind, key).filter(isText))

const isText = (value: unknown): value is string => typeof value === 'string'

const valuesOf = (rows: TableRows, kind: string, key: string): unknown[] => rows.filter(row => row.kind === kind).map(row => row[key])
