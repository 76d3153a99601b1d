import { libraryFileOf, printLibraryFile } from '../../core/library/print.ts'
import { openWorkshop } from '../library/workshop.ts'
import type { Command } from './command.ts'

export const library: Command = {
  name: 'library',
  summary: 'prints the merged library in the library format',
  usage: '[--library FILE]*',
  options: {},
  async run(given, terminal) {
    const { library } = await openWorkshop(given.texts('library'), given.texts('lists'))
    terminal.out(printLibraryFile(libraryFileOf(library)))
    return 0
  },
}
