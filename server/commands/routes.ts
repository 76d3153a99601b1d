import type { RouteRow } from '../../core/choose/route-rows.ts'
import { openWorkshop } from '../library/workshop.ts'
import { choosingFrom } from '../planning/choosing.ts'
import { sideFiles } from '../planning/files.ts'
import { listRoutes } from '../planning/request.ts'
import { choosingOptions } from './choosing.ts'
import type { Command } from './command.ts'
import { hazardWords } from './words.ts'

export const routes: Command = {
  name: 'routes',
  summary: 'routes from one compound to another, in order',
  usage: '--from ID --to ID [choosing options] [--count K]',
  options: {
    from: { type: 'string', value: 'ID', help: 'what is in hand' },
    to: { type: 'string', value: 'ID', help: 'what is wanted' },
    ...choosingOptions,
    count: { type: 'string', value: 'K', help: 'how many routes to list (default 10)' },
  },
  async run(given, terminal) {
    const from = given.need('from', 'A route begins with what is in hand.')
    const to = given.need('to', 'A route ends with what is wanted.')
    const count = given.whole('count', 1, 100_000, 10)
    const choosing = choosingFrom(given)
    const side = await sideFiles(given, terminal)
    const workshop = await openWorkshop(given.texts('library'), given.texts('lists'))
    const rows = listRoutes(workshop, { ...choosing, from, to, count }, side)
    if (given.on('json')) {
      terminal.out(`${JSON.stringify(rows, null, 2)}\n`)
      return 0
    }
    const name = (id: string) => workshop.library.materials.get(id)?.name ?? id
    terminal.out(`${rows.routes.length} ${rows.routes.length === 1 ? 'route' : 'routes'} from ${name(from)} to ${name(to)}`)
    terminal.out(
      rows.complete
        ? ', and there is no other.\n'
        : `; more exist${rows.bound === undefined ? '' : `, none of them below ${figure(rows.bound)} on this axis`}.\n`,
    )
    for (const [at, row] of rows.routes.entries()) terminal.out(`\n${routeText(row, at + 1, name)}`)
    if (rows.gentlest) {
      const { place, yieldPointsLost } = rows.gentlest
      terminal.out(
        `\nGentlest within ten points of the first: number ${place}, ${hazardWords(rows.gentlest.hazard)}; it ${yieldPointsLost >= 0 ? `costs ${yieldPointsLost.toFixed(1)}` : `gains ${(-yieldPointsLost).toFixed(1)}`} points of overall yield on start.\n  ${rows.gentlest.steps.join(', ')}\n`,
      )
    }
    return 0
  },
}

const figure = (value: number): string => String(Number(value.toPrecision(5)))
const percent = (fraction: number): string => `${(fraction * 100).toFixed(1)} %`

function routeText(row: RouteRow, number: number, name: (id: string) => string): string {
  return [
    `${number}. ${row.steps.join(', ')}`,
    `   overall yield on start ${percent(row.overallYieldOnStart)}, of the longest linear sequence ${percent(row.longestLinearYield)}${row.value === null ? '' : `; ${figure(row.value)} on this axis`}`,
    `   hazard: ${hazardWords(row.hazard)}`,
    ...(row.made.length > 0 ? [`   made: ${row.made.map(name).join('; ')}`] : []),
    `   bought: ${row.bought.map(name).join('; ')}`,
    ...row.flags.map(flag => `   ! ${flag.text}`),
    '',
  ].join('\n')
}
