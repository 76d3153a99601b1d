import { libraryFileOf } from '../../core/library/print.ts'
import { didYouMean } from '../../core/problem/nearest.ts'
import { notHeld } from '../library/not-held.ts'
import { type Form, forms, writtenAs } from '../library/written-as.ts'
import { stopsInStep } from '../planning/slice-screen.ts'
import { Refusal } from '../refusal.ts'
import { badOption, type Command } from './command.ts'
import { workshopFor } from './workshop-for.ts'

export const library: Command = {
  name: 'library',
  summary: 'prints the merged library in the library format, or in another form',
  usage:
    '[--library FILE]* [--form json|csv|tsv|charges-csv|charges-tsv|sdf|rdf|smi|rxn]\n       waybench library --charges ID [--form csv|tsv]',
  options: {
    form: {
      type: 'string',
      value: 'FORM',
      help: 'json (default) holds everything; csv, tsv and sdf the materials; charges-csv and -tsv the charges of all steps; rdf the transformations; smi and rxn the equations; what a form cannot hold is said',
    },
    charges: { type: 'string', value: 'ID', help: 'the charges of one transformation as a table, csv (default) or tsv' },
  },
  async run(given, terminal) {
    const workshop = await workshopFor(given)
    const { library, names } = workshop
    const id = given.text('charges')
    const named = given.text('form')
    const allowed: readonly Form[] = id === undefined ? forms : ['csv', 'tsv']
    const form = allowed.find(one => one === (named ?? (id === undefined ? 'json' : 'csv')))
    if (form === undefined)
      throw badOption('--form', `is "${named}".`, `It is one of: ${allowed.join(', ')}.`, 'Write one of them.', 'form-unknown')
    if (id !== undefined) {
      if (!library.transformations.has(id))
        throw badOption(
          '--charges',
          `is "${id}".`,
          'The library has no transformation of that id.',
          `${didYouMean(id, library.transformations.keys())}waybench library lists them all.`,
          'id-unknown',
        )
      const one = library.transformations.get(id)!
      const stops = stopsInStep(workshop, one)
      if (stops.length > 0) throw new Refusal('no-answer', stops)
      const step = { ...libraryFileOf(library), materials: [], transformations: [one] }
      const table = form === 'tsv' ? 'charges-tsv' : 'charges-csv'
      terminal.out(asLines(writtenAs(table, step, library, names())))
      for (const lost of notHeld(table, step, library)) terminal.err(`Not in it: ${lost}\n`)
      return 0
    }
    const file = libraryFileOf(library)
    terminal.out(asLines(writtenAs(form, file, library, names())))
    for (const lost of notHeld(form, file, library)) terminal.err(`Not in it: ${lost}\n`)
    return 0
  },
}

/** A terminal ends its lines its own way; a file that is fetched ends them as tables do. */
const asLines = (text: string): string => text.replaceAll('\r\n', '\n')
