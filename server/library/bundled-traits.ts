import { createHash } from 'node:crypto'
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { toolkitFrom } from '../../core/chemistry/openchemlib.ts'
import { loadHazardTables } from '../../core/hazards/tables.ts'
import { type Traits, traitsOf } from '../../core/hazards/traits.ts'
import { bundled, bundledFiles, bundledTables } from './bundled.ts'

interface TraitsFile {
  /** Of the data they were reckoned from. */
  readonly key: string
  readonly traits: readonly (readonly [string, Traits])[]
}

/** Name of the file that the build writes beside the server. */
export const traitsFileName = 'bundled-traits.json'

const keyOfData = (): string => {
  const hash = createHash('sha256')
  for (const { name, text } of [...bundledFiles(), ...bundledTables()]) hash.update(name).update('\0').update(text).update('\0')
  return hash.digest('hex')
}

/** The traits of the bundled library, reckoned now: what the build keeps, so that a command need not screen every material anew. */
export async function reckonedTraitsFile(): Promise<string> {
  const tables = loadHazardTables(bundledTables())
  if (!tables.ok) throw new Error(tables.problems.map(p => p.what).join(' '))
  const traits = traitsOf(bundled().library, tables.value, toolkitFrom(await import('openchemlib')))
  return JSON.stringify({ key: keyOfData(), traits: [...traits] } satisfies TraitsFile)
}

/** The traits that the build kept; null where there are none, or the data have changed since: then they are reckoned. */
export function keptTraits(): ReadonlyMap<string, Traits> | null {
  const path = join(dirname(fileURLToPath(import.meta.url)), traitsFileName)
  if (!existsSync(path)) return null
  const file = JSON.parse(readFileSync(path, 'utf8')) as TraitsFile
  return file.key === keyOfData() ? new Map(file.traits) : null
}
