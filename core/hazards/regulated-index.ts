import type { Structure, Toolkit } from '../chemistry/structure.ts'
import { namesListed } from './listed-names.ts'
import type { HazardTables, RegulatedEntry, RegulatedList, StructureAlert } from './tables.ts'

/** Everything a structure is once solvate molecules are off, ions included. */
export const wholeKey = (toolkit: Toolkit, structure: Structure): string => toolkit.essentialKeys(structure, 'solvates').join(' ')

export interface ListedRow {
  readonly entry: RegulatedEntry
  readonly list: RegulatedList
  readonly key: string | null
}

/** The rows of all lists by everything they can be found by. */
export interface RegulatedIndex {
  readonly byCas: ReadonlyMap<string, readonly ListedRow[]>
  readonly byName: ReadonlyMap<string, readonly ListedRow[]>
  readonly byKey: ReadonlyMap<string, readonly ListedRow[]>
  /** Formulas of all listed structures. */
  readonly formulas: ReadonlySet<string>
  readonly withEsters: readonly ListedRow[]
  readonly alerts: readonly { readonly alert: StructureAlert; readonly list: RegulatedList; readonly exempt: ReadonlySet<string> }[]
}

/**
 * Indexes the rows once, so that a library is screened by look-ups.
 *
 * @param toolkit null = no structures
 * @throws RangeError for a structure of a table that cannot be read, or a list without its row: our mistake, the loader and the data tests catch it
 */
export function regulatedIndex(tables: HazardTables['regulated'], toolkit: Toolkit | null): RegulatedIndex {
  const lists = new Map(tables.lists.map(list => [list.name, list]))
  const listOf = (name: string): RegulatedList => {
    const list = lists.get(name)
    if (!list) throw new RangeError(`no regulated list ${name}`)
    return list
  }
  const formulas = new Set<string>()
  const keys = new Map<string, string>()
  const keyOf = (smiles: string): string | null => {
    if (!toolkit) return null
    const known = keys.get(smiles)
    if (known !== undefined) return known
    // Left and right hands and isotopes count as one substance: what is listed is listed in all of them.
    const read = toolkit.parse(smiles, [], 'flat')
    if (!read.ok) throw new RangeError(`${smiles} in a regulated list cannot be read`)
    for (const part of read.value.fragments) formulas.add(part.formula)
    const key = wholeKey(toolkit, read.value)
    keys.set(smiles, key)
    return key
  }
  const byCas = new Map<string, ListedRow[]>()
  const byName = new Map<string, ListedRow[]>()
  const byKey = new Map<string, ListedRow[]>()
  const rows = tables.entries.map(
    (entry): ListedRow => ({ entry, list: listOf(entry.list), key: entry.smiles === undefined ? null : keyOf(entry.smiles) }),
  )
  for (const row of rows) {
    if (row.entry.cas !== undefined) push(byCas, row.entry.cas, row)
    for (const name of namesListed(row.entry.name, row.entry.synonyms)) push(byName, name, row)
    if (row.key !== null) push(byKey, row.key, row)
  }
  return {
    byCas,
    byName,
    byKey,
    formulas,
    withEsters: rows.filter(row => row.entry.estersSmarts !== undefined),
    alerts: tables.alerts.map(alert => ({
      alert,
      list: listOf(alert.list),
      exempt: new Set((alert.exemptSmiles ?? []).flatMap(smiles => keyOf(smiles) ?? [])),
    })),
  }
}

function push(map: Map<string, ListedRow[]>, key: string, row: ListedRow): void {
  const rows = map.get(key)
  if (rows) rows.push(row)
  else map.set(key, [row])
}
