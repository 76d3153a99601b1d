import type { z } from 'zod'
import { defaultSettings, type Settings, settingsSchema } from '../../core/plan/settings.ts'
import { parseJson } from '../../core/problem/json.ts'
import { schemaProblems } from '../../core/problem/schema.ts'
import { type PacksFile, packsFileSchema } from '../../core/shopping/packs.ts'
import { type ShelfItem, shelfFileSchema } from '../../core/shopping/shelf.ts'
import type { Given, Terminal } from '../commands/command.ts'
import { demoParts } from '../library/demo.ts'
import { Refusal } from '../refusal.ts'

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

export async function sideFiles(given: Given, terminal: Terminal): Promise<SideFiles> {
  const shelf = given.text('shelf')
  const packs = given.text('packs')
  const settings = given.text('settings')
  return {
    shelf: shelf === undefined ? [] : shelf === 'demo' ? demoParts().shelf : (await fileOf(terminal, shelf, shelfFileSchema)).items,
    packs: packs === undefined ? null : packs === 'demo' ? demoParts().packs : await fileOf(terminal, packs, packsFileSchema),
    settings:
      settings === undefined
        ? defaultSettings
        : settings === 'demo'
          ? demoParts().settings
          : await fileOf(terminal, settings, settingsSchema),
  }
}
