import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { TableKeys } from '../../core/library/checks/check.ts'
import type { Library } from '../../core/library/library.ts'
import { type LibraryText, loadLibrary } from '../../core/library/load.ts'
import { type TableRow, tableKeys } from '../../core/library/table-keys.ts'
import { type Problem, paragraph } from '../../core/problem/problem.ts'

/** Everything in `routes-data/`: the library, what the rules warn of in it, and the tables by file name without its ending. */
export interface Bundled {
  readonly library: Library
  readonly warnings: readonly Problem[]
  readonly tables: ReadonlyMap<string, unknown>
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
export function bundledFiles(): readonly LibraryText[] {
  const data = dataFolder()
  return ['materials', 'transformations'].flatMap(folder =>
    jsonFilesIn(join(data, folder)).map(file => ({ name: `${folder}/${file}`, text: readFileSync(join(data, folder, file), 'utf8') })),
  )
}

/** The bundled tables as parsed JSON, by file name without its ending, e.g. `ghs`. */
export function bundledTables(): ReadonlyMap<string, unknown> {
  const folder = join(dataFolder(), 'tables')
  return new Map(jsonFilesIn(folder).map(file => [file.replace(/\.json$/, ''), JSON.parse(readFileSync(join(folder, file), 'utf8'))]))
}

/** The keys that materials may use, out of the tables. */
export const keysOf = (tables: ReadonlyMap<string, unknown>): TableKeys => tableKeys([...tables.values()].flatMap(rowsOf))

const rowsOf = (table: unknown): readonly TableRow[] =>
  typeof table === 'object' && table !== null && 'rows' in table && Array.isArray(table.rows) ? table.rows : []

/** Title of the library that comes with the program. */
export const bundledTitle = 'Waybench bundled library'

let read: Bundled | null = null

/**
 * The bundled library with its tables, read and checked once per process.
 *
 * @throws Error with every problem where the bundled data break a rule: our mistake, which the data tests catch
 */
export function bundled(): Bundled {
  if (read !== null) return read
  const tables = bundledTables()
  const loaded = loadLibrary(bundledFiles(), { title: bundledTitle, tables: keysOf(tables) })
  if (!loaded.ok) throw new Error(`The bundled library breaks its own rules.\n${loaded.problems.map(paragraph).join('\n')}`)
  read = { library: loaded.value, warnings: loaded.warnings, tables }
  return read
}

const jsonFilesIn = (folder: string): string[] =>
  readdirSync(folder)
    .filter(file => file.endsWith('.json'))
    .sort()
