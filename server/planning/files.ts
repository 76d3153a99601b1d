import type { z } from 'zod'
import { defaultSettings, type Settings, settingsSchema } from '../../core/plan/settings.ts'
import { parseJson } from '../../core/problem/json.ts'
import { schemaProblems } from '../../core/problem/schema.ts'
import { materialCell } from '../../core/reading/material-cell.ts'
import type { MaterialCell } from '../../core/shopping/csv-cells.ts'
import { type PacksFile, packsFileSchema } from '../../core/shopping/packs.ts'
import { type ShelfItem, shelfFileSchema } from '../../core/shopping/shelf.ts'
import type { Given, Terminal } from '../commands/command.ts'
import { workshopFor } from '../commands/workshop-for.ts'
import { demoParts } from '../library/demo.ts'
import { Refusal } from '../refusal.ts'
import { isCsv, packsOfCsv, shelfOfCsv } from './csv-files.ts'

async function fileOf<S extends z.ZodType>(terminal: Terminal, path: string, schema: S): Promise<z.output<S>> {
  const json = parseJson(path, await terminal.readFile(path))
  if (!json.ok) throw new Refusal('bad-input', json.problems)
  const parsed = schema.safeParse(json.value)
  if (!parsed.success) throw new Refusal('bad-input', schemaProblems(parsed.error, schema, json.value, [path]))
  return parsed.data
}

/** What `--shelf`, `--packs` and `--settings` name; the word `demo` stands for the invented workshop. */
export interface SideFiles {
  readonly shelf: readonly ShelfItem[]
  readonly packs: PacksFile | null
  readonly settings: Settings
}

/**
 * Reads them; a name that ends in .csv or .tsv is a table, anything else JSON.
 *
 * @throws Refusal with every fault of a file at once; of a table, line by line
 */
export async function sideFiles(given: Given, terminal: Terminal): Promise<SideFiles> {
  // Only a table names its materials as people do, and needs a library to read them.
  const cells = async () => materialCell((await workshopFor(given)).names())
  const shelf = given.text('shelf')
  const packs = given.text('packs')
  const settings = given.text('settings')
  return {
    shelf: shelf === undefined ? [] : shelf === 'demo' ? demoParts().shelf : await shelfFile(terminal, cells, shelf),
    packs:
      packs === undefined
        ? null
        : packs === 'demo'
          ? demoParts().packs
          : await packsFile(terminal, cells, packs, given.text('currency') ?? 'EUR'),
    settings:
      settings === undefined
        ? defaultSettings
        : settings === 'demo'
          ? demoParts().settings
          : await fileOf(terminal, settings, settingsSchema),
  }
}

export const shelfFile = async (terminal: Terminal, cells: () => Promise<MaterialCell>, path: string): Promise<readonly ShelfItem[]> =>
  isCsv(path) ? shelfOfCsv(await cells(), path, await terminal.readFile(path)) : (await fileOf(terminal, path, shelfFileSchema)).items

/** @param currency of a table's prices where no cell says otherwise */
export const packsFile = async (
  terminal: Terminal,
  cells: () => Promise<MaterialCell>,
  path: string,
  currency: string,
): Promise<PacksFile> =>
  isCsv(path) ? packsOfCsv(await cells(), path, await terminal.readFile(path), currency) : fileOf(terminal, path, packsFileSchema)
