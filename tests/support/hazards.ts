import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as openchemlib from 'openchemlib'
import { toolkitFrom } from '../../core/chemistry/openchemlib.ts'
import type { Toolkit } from '../../core/chemistry/structure.ts'
import { type HazardTables, loadHazardTables, type TableText } from '../../core/hazards/tables.ts'
import { type Traits, traitsOf } from '../../core/hazards/traits.ts'
import type { Library } from '../../core/library/library.ts'
import { type Material, materialSchema } from '../../core/library/material.ts'
import { root } from './tree.ts'

const folder = join(root, 'routes-data', 'tables')

/** The bundled table files of these names (beginnings of file names), as text. */
export const tableTexts = (beginnings: RegExp): readonly TableText[] =>
  readdirSync(folder)
    .filter(name => beginnings.test(name) && name.endsWith('.json'))
    .sort()
    .map(name => ({ name, text: readFileSync(join(folder, name), 'utf8') }))

let tables: HazardTables | null = null

/** The bundled tables that hazards are reckoned from. */
export function bundledTables(): HazardTables {
  if (tables) return tables
  const loaded = loadHazardTables(tableTexts(/^(ghs|compatibility|incidents|regulated|storage)/))
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.problems, null, 1))
  tables = loaded.value
  return tables
}

export const toolkit: Toolkit = toolkitFrom(openchemlib)

/** A material with what a test does not care about filled in. */
export const materialWith = (given: Partial<Material> & { readonly id: string }): Material =>
  materialSchema.parse({ name: given.id, kind: 'compound', form: 'solid', sources: [{ citation: 'test', checked: false }], ...given })

/** A library of materials alone, with molar masses where a test needs them. */
export const libraryWith = (materials: readonly Material[], molarMass: Readonly<Record<string, number>> = {}): Library => ({
  title: 'test',
  materials: new Map(materials.map(material => [material.id, material])),
  transformations: new Map(),
  molarMass: new Map(Object.entries(molarMass)),
  makers: new Map(),
  users: new Map(),
})

/** Traits of materials that belong to no library. */
export const traitsWith = (materials: readonly Material[], molarMass: Readonly<Record<string, number>> = {}): ReadonlyMap<string, Traits> =>
  traitsOf(libraryWith(materials, molarMass), bundledTables(), toolkit)
