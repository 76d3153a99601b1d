import { nearest } from '../core/problem/nearest.ts'
import { paragraph } from '../core/problem/problem.ts'
import { unsteered } from '../core/problem/readable.ts'
import { check } from './commands/check.ts'
import { type Command, givenFor, type Terminal } from './commands/command.ts'
import { helpOf, helpOfAll } from './commands/help.ts'
import { library } from './commands/library.ts'
import { log } from './commands/log.ts'
import { inOptions } from './commands/option-words.ts'
import { own } from './commands/own.ts'
import { plan } from './commands/plan.ts'
import { reach } from './commands/reach.ts'
import { read } from './commands/read.ts'
import { replan } from './commands/replan.ts'
import { routes } from './commands/routes.ts'
import { serve } from './commands/serve.ts'
import { Refusal, refusalOf } from './refusal.ts'

export const commands: readonly Command[] = [reach, routes, plan, log, replan, read, library, check, own, serve]

/**
 * Runs one command line.
 *
 * @param words  what stands after `waybench`
 * @returns exit code: 0 done, 1 no answer (unreachable, infeasible, stopped for safety), 2 bad input
 */
export async function runCommand(words: readonly string[], given: Terminal): Promise<number> {
  const json = words.includes('--json')
  // Titles and notes of a file that somebody sent are printed as they are, but must not steer the terminal.
  const terminal: Terminal = { ...given, out: text => given.out(unsteered(text)), err: text => given.err(unsteered(text)) }
  try {
    const [name, ...rest] = words
    if (name === undefined || name === '--help' || name === 'help') {
      terminal.out(helpOfAll(commands))
      return 0
    }
    const command = commands.find(c => c.name === name)
    if (!command) throw unknownCommand(name)
    const options = givenFor(command, rest)
    if (options.on('help')) {
      terminal.out(helpOf(command))
      return 0
    }
    return await command.run(options, terminal)
  } catch (error) {
    const refusal = refusalOf(error)
    if (refusal === null) throw error
    const problems = refusal.problems.map(inOptions)
    if (json) terminal.err(`${JSON.stringify({ problems }, null, 2)}\n`)
    else terminal.err(`${problems.map(paragraph).join('\n\n')}\n`)
    return refusal.kind === 'no-answer' ? 1 : 2
  }
}

function unknownCommand(name: string): Refusal {
  const near = nearest(
    name,
    commands.map(c => c.name),
  )
  const cure = `${near ? `Did you mean "${near}"? ` : ''}waybench --help lists the commands.`
  return new Refusal('bad-input', [
    {
      code: 'command-unknown',
      where: ['command line', name],
      what: `There is no command "${name}".`,
      why: 'A command says what to reckon.',
      cure,
    },
  ])
}
