import type { Structure, Toolkit } from '../chemistry/structure.ts'
import type { Source } from '../library/source.ts'
import { isAbbreviation } from './listed-names.ts'
import { shows } from './pattern.ts'
import { type ListedRow, regulatedIndex, wholeKey } from './regulated-index.ts'
import type { HazardTables, RegulatedEntry, RegulatedList } from './tables.ts'

/** A row of a list that a substance meets, before region, buyer, strength and role are looked at. Plain JSON. */
export interface RegulatedMatch {
  readonly action: 'stop' | 'licence' | 'reporting'
  /** Full name of the list. */
  readonly list: string
  readonly category: string
  readonly legal: string
  /** What of the material is listed, as a clause: "safrole is listed", "it is a salt of piperidine, which is listed". */
  readonly reason: string
  readonly matchedBy: 'cas' | 'name' | 'structure' | 'family'
  readonly regions: RegulatedList['regions']
  readonly coversGivenOff: boolean
  /** Mass fraction of what is listed; null where the library cannot tell. */
  readonly massFraction: number | null
  readonly public: NonNullable<RegulatedEntry['public']> | null
  readonly sources: readonly Source[]
}

/** What of a material is held against the lists. */
export interface Identity {
  readonly names: readonly string[]
  readonly cas: string | null
  readonly structure: Structure | null
}

/** A match before the strength of the bottle is known. */
export type BareMatch = Omit<RegulatedMatch, 'massFraction'>

const actionOf = { stop: 'stop', 'licence or declaration needed': 'licence', 'reporting of suspicious transactions': 'reporting' } as const

/**
 * Makes the comparison with all regulated rows: by CAS number, by name and synonym, by structure (solvates off; counter-ions only where the
 * row's salts rule says so; hands and isotopes ignored), by structural family. A stop row is found in any part of what a structure holds.
 *
 * @param toolkit null where none is at hand: then only CAS numbers and names are compared
 */
export function screenFrom(tables: HazardTables['regulated'], toolkit: Toolkit | null): (identity: Identity) => readonly BareMatch[] {
  const index = regulatedIndex(tables, toolkit)
  return ({ names, cas, structure }) => {
    const found = new Map<object, BareMatch>()
    const add = (row: ListedRow, matchedBy: RegulatedMatch['matchedBy'], reason = listed(row)) => {
      if (!found.has(row)) found.set(row, matchOf(row.list, row.entry, matchedBy, reason, row.entry.public ?? null))
    }
    const keys = structure && toolkit ? keysOf(toolkit, structure, index.formulas) : noKeys
    if (cas !== null) for (const row of index.byCas.get(cas) ?? []) add(row, 'cas')
    for (const name of names) {
      for (const row of index.byName.get(name) ?? []) {
        // An abbreviation is nobody's own: where both structures are known, they decide.
        if (!isAbbreviation(name) || row.key === null || structure === null || row.key === keys.whole) add(row, 'name')
      }
    }
    for (const row of index.byKey.get(keys.whole) ?? []) add(row, 'structure')
    for (const part of keys.parts) {
      for (const row of index.byKey.get(part) ?? [])
        if (row.entry.action === 'stop') add(row, 'structure', `it holds ${row.entry.name}, which is listed`)
    }
    for (const [key, isAllOfIt] of keys.neutral) {
      for (const row of index.byKey.get(key) ?? []) {
        if (row.entry.covers?.includes('salts') && (isAllOfIt || row.entry.action === 'stop'))
          add(row, 'structure', `it is a salt of ${row.entry.name}, which is listed with its salts`)
      }
    }
    if (structure && toolkit) {
      for (const row of index.withEsters) {
        if (shows(toolkit, structure, { smarts: row.entry.estersSmarts!, needs: row.entry.estersNeed }))
          add(row, 'family', `it is an ester of ${row.entry.name}, which is listed with its esters`)
      }
      for (const { alert, list, exempt } of index.alerts) {
        if (cas !== null && alert.exemptCas?.includes(cas)) continue
        if (!shows(toolkit, structure, alert) || exempt.has(wholeKey(toolkit, structure))) continue
        found.set(alert, matchOf(list, alert, 'family', `it belongs to a listed family: ${alert.text}`, null))
      }
    }
    return [...found.values()]
  }
}

const listed = ({ entry }: ListedRow): string => `${entry.name} is listed${entry.note === undefined ? '' : ` (${entry.note})`}`

/** What of a structure is looked up: all of it without solvates, each part as it stands, each part made neutral (true: nothing else is left). */
interface Keys {
  readonly whole: string
  readonly parts: readonly string[]
  readonly neutral: ReadonlyMap<string, boolean>
}
const noKeys: Keys = { whole: '', parts: [], neutral: new Map() }

/** Canonising is dear: a single molecule without ions whose formula no listed substance has needs no key. */
function keysOf(toolkit: Toolkit, structure: Structure, formulas: ReadonlySet<string>): Keys {
  const parts = structure.smiles.includes('.') ? structure.fragments : [structure]
  if (parts.length === 1 && !ionic(structure)) return formulas.has(structure.formula) ? { ...noKeys, whole: structure.identityKey } : noKeys
  const bare = toolkit.essentialKeys(structure, 'solvates and counter-ions')
  const all = parts.length === 1 ? bare : parts.flatMap(part => toolkit.essentialKeys(part, 'solvates and counter-ions'))
  return {
    whole: wholeKey(toolkit, structure),
    parts: parts.length === 1 ? [] : parts.map(part => part.identityKey),
    neutral: new Map(all.map(key => [key, bare.includes(key)])),
  }
}

/** Charges, other than those that a nitro group or an oxide is written with. */
const ionic = (structure: Structure): boolean =>
  /[+-]\d*\]/.test(structure.smiles.replace(/\[N\+\]\(?=?O?\)?\(?\[O-\]\)?|\[O-\]\[N\+\]/g, ''))

const matchOf = (
  list: RegulatedList,
  row: {
    readonly action: RegulatedEntry['action']
    readonly category: string
    readonly legal?: string
    readonly sources: readonly Source[]
  },
  matchedBy: RegulatedMatch['matchedBy'],
  reason: string,
  limit: RegulatedMatch['public'],
): BareMatch => ({
  action: actionOf[row.action],
  list: list.fullName,
  category: row.category,
  legal: row.legal ?? '',
  reason,
  matchedBy,
  regions: list.regions,
  coversGivenOff: list.coversGivenOff,
  public: limit,
  sources: row.sources,
})
