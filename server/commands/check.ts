import { loadLibrary } from '../../core/library/load.ts'
import { trusts } from '../../core/library/trust.ts'
import { weakSpots } from '../../core/library/weak-spots.ts'
import { parseJson } from '../../core/problem/json.ts'
import { type Problem, paragraph } from '../../core/problem/problem.ts'
import { bundledTables, keysOf } from '../library/bundled.ts'
import { openLibrary } from '../library/open.ts'
import { openWorkshop } from '../library/workshop.ts'
import { planFileProblems } from '../planning/plan-file.ts'
import { runsLogged } from '../planning/runs-logged.ts'
import { Refusal } from '../refusal.ts'
import { badOption, type Command, type Given, type Terminal } from './command.ts'
import { storeIn } from './data-folder.ts'

export const check: Command = {
  name: 'check',
  summary: 'validates library or plan files, one line a finding',
  usage: 'FILE ... [--weak [--trust WORD] [--data DIR]]',
  options: {
    weak: {
      type: 'boolean',
      help: 'where the libraries are weak: yields on one source or remembered, hazards unknown, no density; "bundled" names the bundled one',
    },
    trust: { type: 'string', value: 'WORD', help: 'with --weak: only what is seen, remembered, unknown or of the "own bench"' },
    data: { type: 'string', value: 'DIR', help: 'with --weak: folder of the saved plans, whose logs tell what was never run here' },
  },
  positionals: { least: 1, most: Number.POSITIVE_INFINITY, what: 'files' },
  async run(given, terminal) {
    if (given.on('weak')) return weak(given, terminal)
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

/** Where the named libraries are weak, one line a finding; nothing of it is wrong. */
function weak(given: Given, terminal: Terminal): number {
  const opened = openLibrary(given.words)
  if (!opened.ok) throw new Refusal('bad-input', opened.problems)
  const trust = given.text('trust')
  if (trust !== undefined && !(trusts as readonly string[]).includes(trust))
    throw badOption('--trust', `is "${trust}".`, `A figure is one of: ${trusts.join(', ')}.`, 'Write one of them; "own bench" in quotes.')
  const folder = given.text('data')
  const store = folder === undefined ? null : storeIn(folder, true)
  const spots = weakSpots(opened.value, store === null ? null : runsLogged(store)).filter(
    spot => trust === undefined || spot.trust === trust,
  )
  store?.close()
  if (given.on('json')) terminal.out(`${JSON.stringify({ weak: spots }, null, 2)}\n`)
  else {
    for (const { kind, id, name, what, cure } of spots) terminal.out(`${kind}: ${name} (${id}): ${what}. ${cure}\n`)
    const count = spots.length === 1 ? 'One weak spot' : `${spots.length} weak spots`
    terminal.out(`${count}${store === null ? '; what was never run here is told with --data' : ''}.\n`)
  }
  return 0
}
