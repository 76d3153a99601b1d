import type { Structure, Toolkit } from '../chemistry/structure.ts'
import type { Source } from '../library/source.ts'
import { isAbbreviation } from './listed-names.ts'
import { shows } from './pattern.ts'
import { heavyAtoms, type ListedRow, partsOf, type RegulatedIndex, regulatedIndex, wholeKey } from './regulated-index.ts'
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

/** An index for each pair of tables and toolkit: a material is screened at every letter typed, and indexing takes far longer than screening. */
const indexes = new WeakMap<HazardTables['regulated'], Map<Toolkit | null, RegulatedIndex>>()

function indexOf(tables: HazardTables['regulated'], toolkit: Toolkit | null): RegulatedIndex {
  const known = indexes.get(tables) ?? new Map<Toolkit | null, RegulatedIndex>()
  indexes.set(tables, known)
  const index = known.get(toolkit) ?? regulatedIndex(tables, toolkit)
  known.set(toolkit, index)
  return index
}

/**
 * Makes the comparison with all regulated rows: by CAS number, by name and synonym, by structure (solvates off; counter-ions only where the
 * row's salts rule says so; hands and isotopes ignored), by structural family. A stop row is found in any part of what a structure holds.
 *
 * @param toolkit null where none is at hand: then only CAS numbers and names are compared
 */
export function screenFrom(tables: HazardTables['regulated'], toolkit: Toolkit | null): (identity: Identity) => readonly BareMatch[] {
  const index = indexOf(tables, toolkit)
  return ({ names, cas, structure }) => {
    const found = new Map<object, BareMatch>()
    const add = (row: ListedRow, matchedBy: RegulatedMatch['matchedBy'], reason = listed(row)) => {
      if (!found.has(row)) found.set(row, matchOf(row.list, row.entry, matchedBy, reason, row.entry.public ?? null))
    }
    if (cas !== null) for (const row of index.byCas.get(cas) ?? []) add(row, 'cas')
    const whole = structure && toolkit ? once(() => wholeKey(toolkit, structure)) : null
    for (const name of names) {
      for (const row of index.byName.get(name) ?? []) {
        // An abbreviation is nobody's own: where both structures are known, they decide.
        if (!isAbbreviation(name) || row.key === null || whole === null || row.key === whole()) add(row, 'name')
      }
    }
    if (structure && toolkit && whole) {
      const parts = partsOf(structure)
      const candidates = new Set(parts.flatMap(part => index.byHeavyAtoms.get(heavyAtoms(part)) ?? []))
      const saltKeys = once(() => keysAsSalt(toolkit, structure, parts))
      for (const row of candidates) {
        const key = row.key
        if (key === null) continue
        const stops = row.entry.action === 'stop'
        if (key === whole()) add(row, 'structure')
        else if (stops && parts.length > 1 && parts.some(part => part.identityKey === key))
          add(row, 'structure', `it holds ${row.entry.name}, which is listed`)
        else if (row.entry.covers?.includes('salts') && (stops ? saltKeys().ofParts : saltKeys().ofAll).has(key))
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
        if (!shows(toolkit, structure, alert) || exempt.some(one => wholeKey(toolkit, one) === wholeKey(toolkit, structure))) continue
        found.set(alert, matchOf(list, alert, 'family', `it belongs to a listed family: ${alert.text}`, null))
      }
    }
    return [...found.values()]
  }
}

const listed = ({ entry }: ListedRow): string => `${entry.name} is listed${entry.note === undefined ? '' : ` (${entry.note})`}`

/** Keys of the neutral acids and bases in a salt: of all that is left without counter-ions, and of every part whatever it stands beside. */
function keysAsSalt(
  toolkit: Toolkit,
  structure: Structure,
  parts: readonly Structure[],
): { ofAll: ReadonlySet<string>; ofParts: ReadonlySet<string> } {
  const bare = (one: Structure) => toolkit.essentialKeys(one, 'solvates and counter-ions')
  const ofAll = new Set(bare(structure))
  return { ofAll, ofParts: new Set([...ofAll, ...(parts.length > 1 ? parts.flatMap(bare) : [])]) }
}

/** Reckons when first asked, and once. */
function once<T>(reckon: () => T): () => T {
  let known: { readonly value: T } | null = null
  return () => {
    known ??= { value: reckon() }
    return known.value
  }
}

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
