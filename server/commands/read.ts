import { paragraph } from '../../core/problem/problem.ts'
import { numberText } from '../../core/quantity/print.ts'
import { readPreparation } from '../../core/reading/preparation.ts'
import { isReactionFile, reactionsShown } from '../library/reaction-list.ts'
import type { Workshop } from '../library/workshop.ts'
import { screenedReaction } from '../planning/reactions-screen.ts'
import { refuseListed } from '../planning/reading-screen.ts'
import { Refusal } from '../refusal.ts'
import type { Command, Given, Terminal } from './command.ts'
import { table } from './table.ts'
import { workshopFor } from './workshop-for.ts'

export const read: Command = {
  name: 'read',
  summary: 'reads a preparation as plain text and reckons it; of a file of reactions, each',
  usage: 'FILE   ("-" = standard input)',
  options: {},
  positionals: { least: 1, most: 1, what: 'files' },
  async run(given, terminal) {
    const file = given.words[0]!
    const text = file === '-' ? await terminal.readInput() : await terminal.readFile(file)
    const workshop = await workshopFor(given)
    const { library, names, toolkit } = workshop
    if (isReactionFile(text) && !isPreparation(text)) return reactions(text, file, workshop, given, terminal)
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

/** The reactions of a file, each with what is wrong with it. */
function reactions(text: string, file: string, workshop: Workshop, given: Given, terminal: Terminal): number {
  const { names, toolkit } = workshop
  const shown = reactionsShown([{ name: file === '-' ? 'standard input' : file, text }], names(), toolkit)
  if (!shown.ok) throw new Refusal('bad-input', shown.problems)
  const list = shown.value.map(one => screenedReaction(workshop, one))
  if (given.on('json')) terminal.out(`${JSON.stringify({ reactions: list }, null, 2)}\n`)
  else {
    for (const { number, title, read } of list) {
      terminal.out(`${number}. ${title === '' ? 'without a name' : title}: ${read?.equation ?? 'not read'}\n`)
      if (read !== null && read.agents.length > 0) terminal.out(`   over the arrow, without amounts: ${read.agents.join('; ')}\n`)
      if (read !== null && read.unknown.length > 0) terminal.out(`   not in the library: ${read.unknown.join('; ')}\n`)
    }
    for (const problem of list.flatMap(({ number, problems }) =>
      problems.map(one => ({ ...one, where: [`reaction ${number}`, ...one.where] })),
    ))
      terminal.err(`\n${paragraph(problem)}\n`)
  }
  if (list.some(one => one.problems.some(problem => problem.code === 'stopped'))) return 1
  return list.every(one => one.read !== null && one.balanced) ? 0 : 2
}

const show = (value: number | null, times: number): string => (value === null ? 'unknown' : numberText(value * times, 4))
