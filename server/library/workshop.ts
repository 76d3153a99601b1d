import { toolkitFrom } from '../../core/chemistry/openchemlib.ts'
import type { Toolkit } from '../../core/chemistry/structure.ts'
import type { HazardTables } from '../../core/hazards/tables.ts'
import { type Traits, traitsOf } from '../../core/hazards/traits.ts'
import type { Library } from '../../core/library/library.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { type AmbiguousName, NameIndex } from '../../core/reading/names.ts'
import { Refusal } from '../refusal.ts'
import { bundledAmbiguousNames } from './bundled.ts'
import { keptTraits } from './bundled-traits.ts'
import { tablesWithLists } from './further-lists.ts'
import { openLibrary } from './open.ts'

/** A library ready to work with: what it holds, the tables beside it and what the toolkit tells of its materials. */
export interface Workshop {
  readonly library: Library
  /** What lies beneath the own records of the bench; absent where there are none. */
  readonly beneath?: Library
  readonly warnings: readonly Problem[]
  readonly tables: HazardTables
  /** Identity, list hits and groups of every material; reckoned at the first call. */
  readonly traits: () => ReadonlyMap<string, Traits>
  readonly toolkit: Toolkit
  /** Names as people type them; those that mean several bottles are asked about. */
  readonly names: () => NameIndex
}

let bundledWorkshop: Promise<Workshop> | null = null

/**
 * Opens the named libraries (none = the bundled one, which is opened once a process).
 *
 * @param lists  further regulated lists beside the bundled ones: files or folders of the keeper of the library
 * @throws Refusal with every problem of the files
 */
export function openWorkshop(chosen: readonly string[], lists: readonly string[] = []): Promise<Workshop> {
  if (lists.length > 0 || chosen.some(name => name !== 'bundled')) return opened(chosen, lists)
  bundledWorkshop ??= opened([], [])
  return bundledWorkshop
}

async function opened(chosen: readonly string[], lists: readonly string[]): Promise<Workshop> {
  const loaded = openLibrary(chosen)
  if (!loaded.ok) throw new Refusal('bad-input', loaded.problems)
  // Half of the start-up is this toolkit; it is imported here once and nowhere else in the server.
  const toolkit = toolkitFrom(await import('openchemlib'))
  const library = loaded.value
  const tables = tablesWithLists(lists, toolkit)
  const isBundled = chosen.length === 0 && lists.length === 0
  let names: NameIndex | null = null
  let traits: ReadonlyMap<string, Traits> | null = null
  return {
    library,
    warnings: loaded.warnings,
    tables,
    traits: () => (traits ??= (isBundled ? keptTraits() : null) ?? traitsOf(library, tables, toolkit)),
    toolkit,
    names: () => (names ??= new NameIndex(library.materials, ambiguousNames(), toolkit)),
  }
}

/** Names that mean several bottles, as the table beside the library lists them. */
export const ambiguousNames = (): readonly AmbiguousName[] => {
  const table = bundledAmbiguousNames()
  return (Array.isArray(table) ? table : (table as { rows: unknown }).rows) as readonly AmbiguousName[]
}

/** The workshop with a layer over its library: what the layer holds stands in place of what lies beneath, which is not written. */
export function withLayer(
  beneath: Workshop,
  layer: { readonly library: Library; readonly traits: ReadonlyMap<string, Traits> },
  warnings: readonly Problem[],
): Workshop {
  let traits: ReadonlyMap<string, Traits> | null = null
  let names: NameIndex | null = null
  return {
    ...beneath,
    library: layer.library,
    warnings: [...beneath.warnings, ...warnings],
    traits: () => (traits ??= new Map([...beneath.traits(), ...layer.traits])),
    names: () => (names ??= new NameIndex(layer.library.materials, ambiguousNames(), beneath.toolkit)),
  }
}
