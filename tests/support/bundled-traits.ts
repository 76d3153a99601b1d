import type { HazardTables } from '../../core/hazards/tables.ts'
import { loadHazardTables } from '../../core/hazards/tables.ts'
import { type Traits, traitsOf } from '../../core/hazards/traits.ts'
import { bundled, bundledTables } from '../../server/library/bundled.ts'

/** The bundled tables, and the traits of the bundled materials by CAS number and name (structures need the toolkit, which is slow to start). */
export function bundledTraits(): { readonly tables: HazardTables; readonly traits: ReadonlyMap<string, Traits> } {
  const loaded = loadHazardTables(bundledTables().filter(({ text }) => !text.includes('"kind": "hazardRecord"')))
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems[0]))
  return { tables: loaded.value, traits: traitsOf(bundled().library, loaded.value, null) }
}
