import type { TableKeys } from './checks/check.ts'

/** A table as its JSON holds it: rows of several kinds, told apart by `kind`. */
export type TableRow = Readonly<Record<string, unknown>>

/**
 * The keys that materials may use, out of the rows of all tables together. A kind of which there is no row is not checked against.
 *
 * @param rows  of the kinds hazardStatement, reactivityGroup, storageGroup, wasteStream and peroxideClass; others are passed over
 */
export function tableKeys(rows: Iterable<TableRow>): TableKeys {
  const byKind = new Map<unknown, TableRow[]>()
  for (const row of rows) {
    const alike = byKind.get(row.kind)
    if (alike === undefined) byKind.set(row.kind, [row])
    else alike.push(row)
  }
  const keys = <K>(kind: string, key: string, fits: (value: unknown) => value is K): ReadonlySet<K> | undefined => {
    const found = byKind.get(kind)
    return found && new Set(found.map(row => row[key]).filter(fits))
  }
  const all = {
    hazardCodes: keys('hazardStatement', 'code', isText),
    reactivityGroups: keys('reactivityGroup', 'number', isNumber),
    storageGroups: keys('storageGroup', 'id', isText),
    wasteStreams: keys('wasteStream', 'id', isText),
    peroxideClasses: keys('peroxideClass', 'class', isText),
  }
  return Object.fromEntries(Object.entries(all).filter(([, found]) => found !== undefined))
}

const isText = (value: unknown): value is string => typeof value === 'string'
const isNumber = (value: unknown): value is number => typeof value === 'number'
