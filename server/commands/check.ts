import { loadLibrary } from '../../core/library/load.ts'
import { parseJson } from '../../core/problem/json.ts'
import { type Problem, paragraph } from '../../core/problem/problem.ts'
import { bundledTables, keysOf } from '../library/bundled.ts'
import { openWorkshop } from '../library/workshop.ts'
import { planFileProblems } from '../planning/plan-file.ts'
import type { Command } from './command.ts'

export const check: Command = {
  name: 'check',
  summary: 'validates library or plan files, one line a finding',
  usage: 'FILE ...',
  options: {},
  positionals: { least: 1, most: Number.POSITIVE_INFINITY, what: 'files' },
  async run(given, terminal) {
    const workshop = await openWorkshop(given.texts('library'), given.texts('lists'))
    const tables = keysOf(bundledTables())
    const errors: Problem[] = []
    const warnings: Problem[] = []
    const libraries: { name: string; text: string }[] = []
    for (const name of given.words) {
      const text = await terminal.readFile(name)
      const json = parseJson(name, text)
      if (!json.ok) errors.push(...json.problems)
      else if ((json.value as { format?: unknown } | null)?.format === 'waybench-plan') {
        const found = planFileProblems(workshop, json.value, name)
        errors.push(...found.errors)
        warnings.push(...found.warnings)
      } else libraries.push({ name, text })
    }
    if (libraries.length > 0) {
      const loaded = loadLibrary(libraries, { tables, toolkit: workshop.toolkit })
      if (loaded.ok) warnings.push(...loaded.warnings)
      else errors.push(...loaded.problems)
    }
    if (given.on('json')) terminal.out(`${JSON.stringify({ errors, warnings }, null, 2)}\n`)
    else {
      for (const problem of errors) terminal.out(`error: ${paragraph(problem)}\n`)
      for (const problem of warnings) terminal.out(`warning: ${paragraph(problem)}\n`)
      if (errors.length + warnings.length === 0)
        terminal.out(`No findings in ${given.words.length === 1 ? 'one file' : `${given.words.length} files`}.\n`)
    }
    return errors.length > 0 ? 2 : 0
  },
}
