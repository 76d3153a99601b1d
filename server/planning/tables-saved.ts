import type { Plan } from '../../core/plan/plan.ts'
import { packsToCsv } from '../../core/shopping/packs-csv.ts'
import { shelfToCsv } from '../../core/shopping/shelf-csv.ts'
import { badOption, type Given, type Terminal } from '../commands/command.ts'

/** Shelf and packs as tables, where they are asked for. */
export async function tablesSaved(given: Given, terminal: Terminal, { shelf, packs }: Plan): Promise<void> {
  const tables: readonly (readonly [option: string, text: string | null])[] = [
    // A second product moved to the shelf is there only once the plan has been run.
    ['save-shelf', shelfToCsv(shelf.filter(item => item.gainedIn === undefined))],
    ['save-packs', packs === null ? null : packsToCsv(packs)],
  ]
  for (const [option, text] of tables) {
    const path = given.text(option)
    if (path === undefined) continue
    if (text === null)
      throw badOption(
        `--${option}`,
        'has nothing to write.',
        'This plan has no packs.',
        'Give --packs, or leave the option out.',
        'no-packs',
      )
    await terminal.writeFile(path, text)
    terminal.err(`Wrote ${path}.\n`)
  }
}
