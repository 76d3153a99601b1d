import type { ReachRow } from '../../core/choose/reach-row.ts'
import { sideFiles } from '../planning/files.ts'
import { reachFrom } from '../planning/reaching.ts'
import type { Command } from './command.ts'
import { progressOn, untilInterrupted } from './progress.ts'
import { table } from './table.ts'
import { workshopFor } from './workshop-for.ts'

export const reach: Command = {
  name: 'reach',
  summary: 'everything a compound can become',
  usage: '--from ID [--max-steps N] [--settings FILE]',
  options: {
    from: { type: 'string', value: 'ID', help: 'what is in hand' },
    'max-steps': { type: 'string', value: 'N', help: 'at most so many steps' },
    settings: {
      type: 'string',
      value: 'FILE',
      help: 'settings of the bench: whose hand, own yields; "demo" names the workshop of the demo',
    },
  },
  async run(given, terminal) {
    const from = given.need('from', 'What can it become? asks about something.')
    const maxSteps = given.text('max-steps') === undefined ? undefined : given.whole('max-steps', 1, 1000, 1)
    const workshop = await workshopFor(given)
    const { settings } = await sideFiles(given, terminal)
    const { reach: rows, complete } = await untilInterrupted(terminal, shouldStop =>
      reachFrom(workshop, { from, maxSteps, settings }, shouldStop, progressOn(terminal, 'compounds')),
    )
    if (given.on('json')) terminal.out(`${JSON.stringify({ reach: rows, complete }, null, 2)}\n`)
    else {
      terminal.out(`${summary(rows, workshop.library.materials.get(from)?.name ?? from, complete)}\n\n`)
      const cells = rows.map(row => [
        row.compound,
        row.steps === null ? 'not proven' : String(row.steps),
        row.bestYieldOnStart === null ? 'not proven' : `${(row.bestYieldOnStart * 100).toFixed(1)} %`,
        row.yieldTrust ?? '',
        row.counted ? String(row.routes) : `${row.routes}+`,
        row.flags
          .map(flag => flag.kind)
          .filter((kind, at, all) => all.indexOf(kind) === at)
          .join(', '),
      ])
      terminal.out(
        table(['compound', 'steps', 'best on start', 'yields', 'routes', 'flags'], cells, [false, true, true, false, true, false]),
      )
    }
    return 0
  },
}

/** How many there are, and what is not known of them. */
function summary(rows: readonly ReachRow[], from: string, complete: boolean): string {
  const proven = rows.filter(row => row.proven).length
  const open = rows.length - proven
  const sure = `${proven} ${proven === 1 ? 'compound' : 'compounds'} can be made from ${from}.`
  const stopped = complete ? '' : ' The search was stopped before its end.'
  return `${sure}${stopped}${open === 0 ? '' : ` Of ${open} more it is not proven: no route to them was found so far.`}`
}
