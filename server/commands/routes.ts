import { type Axis, axes } from '../../core/choose/query.ts'
import { type RouteRows, routeList } from '../../core/choose/route-list.ts'
import type { RouteRow } from '../../core/choose/route-row.ts'
import { yieldsTold } from '../../core/report/yields-told.ts'
import { choosingFrom } from '../planning/choosing.ts'
import { sideFiles } from '../planning/files.ts'
import { routesInput, rowsIn } from '../planning/request.ts'
import { searched } from '../planning/searching.ts'
import { choosingOptions } from './choosing.ts'
import { badOption, type Command, type Given } from './command.ts'
import { progressOn, untilInterrupted } from './progress.ts'
import { hazardWords } from './words.ts'
import { workshopFor } from './workshop-for.ts'

export const routes: Command = {
  name: 'routes',
  summary: 'routes from one compound to another, in order',
  usage: '--from ID --to ID [choosing options] [--count K] [--unbeaten AXIS,AXIS] [--apart D] [--prove]',
  options: {
    from: { type: 'string', value: 'ID', help: 'what is in hand' },
    to: { type: 'string', value: 'ID', help: 'what is wanted' },
    ...choosingOptions,
    count: { type: 'string', value: 'K', help: 'how many routes to list (default 10)' },
    unbeaten: {
      type: 'string',
      value: 'AXIS,AXIS',
      help: 'only routes that no other beats on all of two to four axes at once, such as start,cost',
    },
    apart: {
      type: 'string',
      value: 'D',
      help: 'a filter, not the best K: only routes at least D steps different from every one listed before',
    },
    prove: { type: 'boolean', help: 'by steps or hands-on: has an integer solver prove the best where the search could not (seconds)' },
  },
  async run(given, terminal) {
    const from = given.need('from', 'A route begins with what is in hand.')
    const to = given.need('to', 'A route ends with what is wanted.')
    const count = given.whole('count', 1, 100_000, 10)
    const choosing = choosingFrom(given)
    const side = await sideFiles(given, terminal)
    const workshop = await workshopFor(given)
    const query = { ...choosing, from, to, count, ...comparing(given) }
    const answer = await untilInterrupted(terminal, shouldStop =>
      searched(routeList({ ...routesInput(workshop, query, side), shouldStop }), undefined, progressOn(terminal, 'routes')),
    )
    const rows = rowsIn(workshop, answer)
    if (given.on('json')) {
      terminal.out(`${JSON.stringify(rows, null, 2)}\n`)
      return 0
    }
    const name = (id: string) => workshop.library.materials.get(id)?.name ?? id
    terminal.out(`${rows.routes.length} ${rows.routes.length === 1 ? 'route' : 'routes'} from ${name(from)} to ${name(to)}`)
    terminal.out(`${restText(rows)}\n`)
    for (const line of surenessText(rows)) terminal.out(`${line}\n`)
    for (const [at, row] of rows.routes.entries()) terminal.out(`\n${routeText(row, at + 1, name, yieldsTold(row.yieldTrust))}`)
    if (rows.gentlest) {
      const { place, yieldPointsLost } = rows.gentlest
      terminal.out(
        `\nGentlest within ten points of the first: number ${place}, ${hazardWords(rows.gentlest.hazard)}; it ${yieldPointsLost >= 0 ? `costs ${yieldPointsLost.toFixed(1)}` : `gains ${(-yieldPointsLost).toFixed(1)}`} points of overall yield on start.\n  ${rows.gentlest.steps.join(', ')}\n`,
      )
    }
    return 0
  },
}

/** What narrows the list itself, beside the choosing options. */
function comparing(given: Given) {
  const named = (given.text('unbeaten') ?? '')
    .split(',')
    .map(axis => axis.trim())
    .filter(Boolean)
  const wrong = named.find(axis => !(axes as readonly string[]).includes(axis))
  if (wrong !== undefined)
    throw badOption(
      '--unbeaten',
      `names "${wrong}".`,
      `Routes are compared by: ${axes.join(', ')}.`,
      'Name two to four of them with commas between.',
      'axis-unknown',
    )
  return {
    ...(given.text('unbeaten') === undefined ? {} : { unbeaten: named as Axis[] }),
    ...(given.text('apart') === undefined ? {} : { apart: given.whole('apart', 1, 1000, 1) }),
    prove: given.on('prove'),
  }
}

/** What there is besides the rows. */
function restText({ complete, bound, unbeaten, apart }: RouteRows): string {
  const among = [
    ...(unbeaten ? [`unbeaten on ${unbeaten.axes.join(', ')}`] : []),
    ...(apart === undefined ? [] : [`at least ${apart} steps different from those before (a filter, not the best so many)`]),
  ]
  const kind = among.length === 0 ? '' : `, ${among.join(' and ')}`
  if (complete) return `${kind}, and there is no other.`
  if (unbeaten && !unbeaten.exact) return `${kind}, among the routes that were looked at; others may beat them.`
  return `${kind}; more exist${bound === undefined ? '' : `, none of them below ${figure(bound)} on this axis`}.`
}

/** How sure the order is, where it is not certain. */
function surenessText({ best, proven, tiesInOrder, unbeaten }: RouteRows): string[] {
  const lines: string[] = []
  if (!best.proven && !unbeaten)
    lines.push(
      best.atMostAbovePercent === null
        ? 'The first is the best that was found; it is not proven.'
        : `The first is the best that was found, at most ${best.atMostAbovePercent.toFixed(1)} % above the proven bound.`,
    )
  else if (!proven && !unbeaten) lines.push('The first is proven the best; later rows are the best that were found.')
  if (!tiesInOrder) lines.push('Very many routes have one value: among them the order by fewer steps was given up.')
  return lines
}

const figure = (value: number): string => String(Number(value.toPrecision(5)))
const percent = (fraction: number): string => `${(fraction * 100).toFixed(1)} %`

function routeText(row: RouteRow, number: number, name: (id: string) => string, yields: string): string {
  return [
    `${number}. ${row.steps.join(', ')}`,
    `   overall yield on start ${percent(row.overallYieldOnStart)}, of the longest linear sequence ${percent(row.longestLinearYield)}${row.value === null ? '' : `; ${row.valueAtLeast ? 'at least ' : ''}${figure(row.value)} on this axis`}`,
    `   ${yields}`,
    ...(row.values ? [`   ${valuesText(row.values)}`] : []),
    `   hazard: ${hazardWords(row.hazard)}`,
    ...(row.made.length > 0 ? [`   made: ${row.made.map(name).join('; ')}`] : []),
    `   bought: ${row.bought.map(name).join('; ')}`,
    ...row.flags.map(flag => `   ! ${flag.text}`),
    '',
  ].join('\n')
}

function valuesText(values: NonNullable<RouteRow['values']>): string {
  const told = (axis: string, value: number | null) =>
    axis === 'hazard' ? '' : `${axis} ${value === null ? 'unknown' : axis === 'yield' ? percent(value) : figure(value)}`
  return Object.entries(values)
    .map(([axis, value]) => told(axis, value))
    .filter(Boolean)
    .join(', ')
}
