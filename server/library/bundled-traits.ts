import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { toolkitFrom } from '../../core/chemistry/openchemlib.ts'
import { loadHazardTables } from '../../core/hazards/tables.ts'
import { type Traits, traitsOf } from '../../core/hazards/traits.ts'
import { bundled, bundledFiles, bundledTables, dataFolder } from './bundled.ts'

const checkout = dirname(dataFolder())

interface TraitsFile {
  /** Of what they were reckoned from, and by. */
  readonly key: string
  readonly traits: readonly (readonly [string, Traits])[]
}

/** Name of the file that the build writes beside the server. */
export const traitsFileName = 'bundled-traits.json'

/** Of the data, and in a checkout also of the code that screens them, so that neither can change unseen. */
const keyNow = (): string => {
  const hash = createHash('sha256')
  for (const { name, text } of [...bundledFiles(), ...bundledTables()]) hash.update(name).update('\0').update(text).update('\0')
  for (const folder of ['hazards', 'chemistry'].map(name => join(checkout, 'core', name)).filter(existsSync)) {
    for (const file of readdirSync(folder).sort())
      hash
        .update(file)
        .update('\0')
        .update(readFileSync(join(folder, file)))
        .update('\0')
  }
  return hash.digest('hex')
}

/** The traits of the bundled library, reckoned now: what the build keeps, so that a command need not screen every material anew. */
export async function reckonedTraitsFile(): Promise<string> {
  const tables = loadHazardTables(bundledTables())
  if (!tables.ok) throw new Error(tables.problems.map(p => p.what).join(' '))
  const traits = traitsOf(bundled().library, tables.value, toolkitFrom(await import('openchemlib')))
  return JSON.stringify({ key: keyNow(), traits: [...traits] } satisfies TraitsFile)
}

/** The traits that the build kept; null where there are none, or the data have changed since: then they are reckoned. */
export function keptTraits(): ReadonlyMap<string, Traits> | null {
  // Beside this file in a build; run from its sources, in what the last build left.
  const path = [dirname(fileURLToPath(import.meta.url)), join(checkout, 'dist', 'server')]
    .map(folder => join(folder, traitsFileName))
    .find(existsSync)
  if (path === undefined) return null
  const file = JSON.parse(readFileSync(path, 'utf8')) as TraitsFile
  return file.key === keyNow() ? new Map(file.traits) : null
}
