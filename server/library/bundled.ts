import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { TableKeys } from '../../core/library/checks/check.ts'
import type { Library } from '../../core/library/library.ts'
import { type LibraryText, loadLibrary } from '../../core/library/load.ts'
import { tableKeys } from '../../core/library/table-keys.ts'
import { type Problem, paragraph } from '../../core/problem/problem.ts'

/** The library in `routes-data/` and what the rules warn of in it. */
export interface Bundled {
  readonly library: Library
  readonly warnings: readonly Problem[]
}

/**
 * The folder `routes-data`, looked for upwards from this file, so that it is found from the sources and from the built server alike.
 *
 * @throws Error where there is none: a broken installation
 */
export function dataFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url))
  for (;;) {
    const candidate = join(folder, 'routes-data')
    if (existsSync(join(candidate, 'materials'))) return candidate
    const above = dirname(folder)
    if (above === folder) throw new Error(`The folder routes-data is missing: it lies beside core/ and server/ in a complete checkout.`)
    folder = above
  }
}

/** The bundled library files, in order of name; names are those inside `routes-data`. */
export const bundledFiles = (): readonly LibraryText[] => [...textsIn('materials'), ...textsIn('transformations')]

/** Names that mean several bottles stand beside the tables, but are a list of another kind. */
const ambiguousNames = 'tables/ambiguous-names.json'

/** The bundled tables: GHS, hazards, reactivity, incidents, storage, waste, regulated lists, rules of thumb. */
export const bundledTables = (): readonly LibraryText[] => textsIn('tables').filter(({ name }) => name !== ambiguousNames)

/** The list of names that mean several bottles, as parsed JSON. */
export const bundledAmbiguousNames = (): unknown => JSON.parse(readFileSync(join(dataFolder(), ambiguousNames), 'utf8'))

/** The keys that materials may use, out of the tables. */
export const keysOf = (tables: readonly LibraryText[]): TableKeys => tableKeys(tables.flatMap(({ text }) => JSON.parse(text).rows))

const textsIn = (folder: string): LibraryText[] =>
  readdirSync(join(dataFolder(), folder))
    .filter(file => file.endsWith('.json'))
    .sort()
    .map(file => ({ name: `${folder}/${file}`, text: readFileSync(join(dataFolder(), folder, file), 'utf8') }))

/** Title of the library that comes with the program. */
export const bundledTitle = 'Waybench bundled library'

let read: Bundled | null = null

/**
 * The bundled library, read and checked once per process.
 *
 * @throws Error with every problem where the bundled data break a rule: our mistake, which the data tests catch
 */
export function bundled(): Bundled {
  if (read !== null) return read
  const loaded = loadLibrary(bundledFiles(), { title: bundledTitle, tables: keysOf(bundledTables()) })
  if (!loaded.ok) throw new Error(`The bundled library breaks its own rules.\n${loaded.problems.map(paragraph).join('\n')}`)
  read = { library: loaded.value, warnings: loaded.warnings }
  return read
}
