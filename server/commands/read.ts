import { paragraph } from '../../core/problem/problem.ts'
import { numberText } from '../../core/quantity/print.ts'
import { readPreparation } from '../../core/reading/preparation.ts'
import { isReactionFile } from '../library/reaction-list.ts'
import { refuseListed } from '../planning/reading-screen.ts'
import { badOption, type Command } from './command.ts'
import { newMaterialOptions, readReactions } from './read-reactions.ts'
import { table } from './table.ts'
import { workshopFor } from './workshop-for.ts'

export const read: Command = {
  name: 'read',
  summary: 'reads a preparation as plain text and reckons it; of a file of reactions, each',
  usage: 'FILE   ("-" = standard input)',
  options: newMaterialOptions,
  positionals: { least: 1, most: 1, what: 'files' },
  async run(given, terminal) {
    const file = given.words[0]!
    const text = file === '-' ? await terminal.readInput() : await terminal.readFile(file)
    const workshop = await workshopFor(given)
    const { library, names, toolkit } = workshop
    const isAsked = given.on('new-materials') || given.texts('called').length > 0
    if (isReactionFile(text) && (isAsked || !isPreparation(text))) return readReactions(text, file, workshop, given, terminal)
    if (isAsked) throw noReactions(given.on('new-materials') ? '--new-materials' : '--called', file)
    const read = readPreparation(text, library, names(), toolkit)
    refuseListed(workshop, read)
    const { balanced, reactants: _reactants, products: _products, proposals: _proposals, ...reading } = read
    if (given.on('json')) terminal.out(`${JSON.stringify(reading, null, 2)}\n`)
    else {
      const rows = reading.lines.map(line => [
        line.text,
        line.material ?? 'not read',
        show(line.amountMol, 1000),
        show(line.equivalents, 1),
      ])
      terminal.out(table(['line', 'material', 'mmol', 'eq'], rows, [false, false, true, true]))
      if (reading.limiting !== null) terminal.out(`\nLimiting: ${reading.limiting}.`)
      if (reading.theoreticalG !== null) terminal.out(` Theory ${numberText(reading.theoreticalG, 4)} g.`)
      if (reading.percentYield !== null) terminal.out(` Yield ${numberText(reading.percentYield, 3)} % of theory.`)
      terminal.out('\n')
      for (const note of reading.notes) terminal.out(`${note}\n`)
      if (reading.unread.length > 0) terminal.out(`\nNot read, kept as typed:\n${reading.unread.map(line => `  ${line}`).join('\n')}\n`)
      const { tasks, equipment } = reading.proposed
      if (tasks.length > 0) {
        terminal.out('\nTasks that the text suggests (guesses, not part of the record):\n')
        for (const { task, guessed } of tasks)
          terminal.out(
            `  ${task.kind} ${numberText(task.hours, 3)} h: ${task.do}${guessed.includes('hours') ? '' : ' (hours from the text)'}\n`,
          )
      }
      if (equipment.length > 0) terminal.out(`\nEquipment that the text suggests: ${equipment.join(', ')}.\n`)
      if (reading.missing.length > 0) terminal.out(`\nStill missing for the library: ${reading.missing.join(', ')}.\n`)
      for (const problem of reading.problems) terminal.err(`\n${paragraph(problem)}\n`)
    }
    return balanced ? 0 : 2
  },
}

/** A reaction SMILES alone, or with charges under it, is a preparation like any other. */
const isPreparation = (text: string): boolean => !/^\s*\$/.test(text) && text.trim().split('\n').length === 1

const noReactions = (option: string, file: string) =>
  badOption(
    option,
    `stands beside ${file}, which is a preparation.`,
    'It is for files of reactions, whose structures have no names.',
    'Leave it out; what a preparation names and the library does not hold is told by its lines.',
  )

const show = (value: number | null, times: number): string => (value === null ? 'unknown' : numberText(value * times, 4))
