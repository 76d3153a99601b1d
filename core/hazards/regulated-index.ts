import type { Structure, Toolkit } from '../chemistry/structure.ts'
import { namesListed } from './listed-names.ts'
import type { HazardTables, RegulatedEntry, RegulatedList, StructureAlert } from './tables.ts'

/** Everything a structure is once solvate molecules are off, ions included. */
export const wholeKey = (toolkit: Toolkit, structure: Structure): string => toolkit.essentialKeys(structure, 'solvates').join(' ')

/** The parts of a structure that no bond connects; taking it apart is dear and needless where it is written as one. */
export const partsOf = (structure: Structure | null): readonly Structure[] =>
  structure === null ? [] : structure.smiles.includes('.') ? structure.fragments : [structure]

/** What a structure and its salts, acids and hydrates of other charge have in common: all its atoms but hydrogen. */
export const heavyAtoms = (structure: Structure): string =>
  [...structure.composition.counts]
    .filter(([symbol]) => symbol !== 'H' && symbol !== 'D' && symbol !== 'T')
    .map(([symbol, count]) => `${symbol}${count}`)
    .sort()
    .join('')

export interface ListedRow {
  readonly entry: RegulatedEntry
  readonly list: RegulatedList
  readonly structure: Structure | null
  /** Key of its structure; null where none is known. Canonised when first asked for: most rows never are. */
  readonly key: string | null
}

/** The rows of all lists by everything they can be found by. */
export interface RegulatedIndex {
  readonly byCas: ReadonlyMap<string, readonly ListedRow[]>
  readonly byName: ReadonlyMap<string, readonly ListedRow[]>
  /** By the heavy atoms of each of their parts: what must agree before structures are worth comparing, salt or not. */
  readonly byHeavyAtoms: ReadonlyMap<string, readonly ListedRow[]>
  readonly withEsters: readonly ListedRow[]
  readonly alerts: readonly { readonly alert: StructureAlert; readonly list: RegulatedList; readonly exempt: readonly Structure[] }[]
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
  const structures = new Map<string, Structure | null>()
  const structureOf = (smiles: string): Structure | null => {
    if (!toolkit) return null
    const known = structures.get(smiles)
    if (known !== undefined) return known
    // Left and right hands and isotopes count as one substance: what is listed is listed in all of them.
    const read = toolkit.parse(smiles, [], 'flat')
    if (!read.ok) throw new RangeError(`${smiles} in a regulated list cannot be read`)
    structures.set(smiles, read.value)
    return read.value
  }
  const rowOf = (entry: RegulatedEntry): ListedRow => {
    const structure = entry.smiles === undefined ? null : structureOf(entry.smiles)
    let key: string | null = null
    return {
      entry,
      list: listOf(entry.list),
      structure,
      get key() {
        if (structure && toolkit) key ??= wholeKey(toolkit, structure)
        return key
      },
    }
  }
  const byCas = new Map<string, ListedRow[]>()
  const byName = new Map<string, ListedRow[]>()
  const byHeavyAtoms = new Map<string, ListedRow[]>()
  const rows = tables.entries.map(rowOf)
  for (const row of rows) {
    if (row.entry.cas !== undefined) push(byCas, row.entry.cas, row)
    for (const name of namesListed(row.entry.name, row.entry.synonyms)) push(byName, name, row)
    for (const heavy of new Set(partsOf(row.structure).map(heavyAtoms))) push(byHeavyAtoms, heavy, row)
  }
  return {
    byCas,
    byName,
    byHeavyAtoms,
    withEsters: rows.filter(row => row.entry.estersSmarts !== undefined),
    alerts: tables.alerts.map(alert => ({
      alert,
      list: listOf(alert.list),
      exempt: (alert.exemptSmiles ?? []).flatMap(smiles => structureOf(smiles) ?? []),
    })),
  }
}

function push(map: Map<string, ListedRow[]>, key: string, row: ListedRow): void {
  const rows = map.get(key)
  if (rows) rows.push(row)
  else map.set(key, [row])
}
