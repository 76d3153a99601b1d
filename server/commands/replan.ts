import type { Library } from '../../core/library/library.ts'
import { type Way, waysOn } from '../../core/logbook/replan.ts'
import { planFileOf } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { paragraph } from '../../core/problem/problem.ts'
import { moneyText } from '../../core/quantity/money.ts'
import { massText } from '../../core/quantity/print.ts'
import { carriageOpen } from '../../core/report/basket-gaps.ts'
import { cautionSentences } from '../../core/report/cautions.ts'
import { workingOrder } from '../../core/route/working-order.ts'
import { nextEdition } from '../planning/edition.ts'
import { planIn, workshopOf } from '../planning/plan-file.ts'
import { listRoutes } from '../planning/request.ts'
import { Refusal } from '../refusal.ts'
import { loadSolver } from '../solver/highs.ts'
import { badOption, type Command, type Given, type Terminal } from './command.ts'
import { workshopFor } from './workshop-for.ts'

const words: Readonly<Record<Way['way'], string>> = {
  'scale-down': 'Scale down',
  'top-up': 'Top up from shelf or shop',
  repeat: 'Repeat the step',
  'another-route': 'Another route',
}

export const replan: Command = {
  name: 'replan',
  summary: 'four ways on from what was logged, side by side',
  usage: 'PLAN [--step ID] [--take WAY --save FILE]',
  options: {
    step: { type: 'string', value: 'ID', help: 'the step in question (default: the last one logged)' },
    take: { type: 'string', value: 'WAY', help: 'goes on this way: scale-down, top-up, repeat or another-route' },
    save: { type: 'string', value: 'FILE', help: 'writes the plan of the way taken, as the next version' },
  },
  positionals: { least: 1, most: 1, what: 'plan files' },
  async run(given, terminal) {
    const file = given.words[0]!
    const beneath = await workshopFor(given)
    const opened = await planIn(beneath, file, terminal)
    const { plan, changes } = opened
    const workshop = workshopOf(beneath, opened)
    const { library, tables } = workshop
    const step = given.text('step')
    const routes = (start: string, target: string) => {
      try {
        const rows = listRoutes(workshop, { from: start, to: target, count: 20 }, plan)
        return rows.routes.map(row => ({ start, target, steps: workingOrder(library, start, row.steps) }))
      } catch (error) {
        // No route from here is an answer, told in the row; anything else is not.
        if (error instanceof Refusal) return []
        throw error
      }
    }
    const ways = waysOn({
      library,
      tables,
      traits: workshop.traits(),
      plan,
      solver: await loadSolver(),
      routes,
      ...(step === undefined ? {} : { step }),
    })
    await takeWay(given, terminal, library, plan, ways)
    if (given.on('json')) terminal.out(`${JSON.stringify({ ways, changes, cautions: cautionSentences }, null, 2)}\n`)
    else {
      for (const change of changes) terminal.out(`${paragraph(change)}\n`)
      for (const way of ways) terminal.out(`${wayText(way, id => library.materials.get(id)?.name ?? id)}\n`)
    }
    return ways.some(way => way.plan !== null) ? 0 : 1
  },
}

async function takeWay(given: Given, terminal: Terminal, library: Library, before: Plan, ways: readonly Way[]): Promise<void> {
  const take = given.text('take')
  const save = given.text('save')
  if (take === undefined && save === undefined) return
  if (take === undefined || save === undefined)
    throw badOption(
      take === undefined ? '--take' : '--save',
      'is missing.',
      'The plan of the way taken is written to a file.',
      'Give both: --take repeat --save FILE.',
      'option-missing',
    )
  const way = ways.find(one => one.way === take)
  if (way === undefined)
    throw badOption(
      '--take',
      `is "${take}".`,
      'There are four ways on.',
      `Write one of ${ways.map(one => one.way).join(', ')}.`,
      'way-unknown',
    )
  if (way.plan === null)
    throw new Refusal('no-answer', [
      {
        code: 'way-none',
        where: ['command line', '--take'],
        what: `There is no way on by ${take}.`,
        why: way.reason ?? '',
        cure: 'Take another of the four.',
      },
    ])
  await terminal.writeFile(save, `${JSON.stringify(planFileOf(library, nextEdition(library, before, way.plan)), null, 2)}\n`)
  terminal.err(`Wrote ${save}.\n`)
}

function wayText(way: Way, name: (id: string) => string): string {
  const { evaluation, added } = way
  if (evaluation === null) return `${words[way.way]}: none. ${way.reason ?? ''}`
  const goals = evaluation.goals.map(
    goal => `${massText(goal.medianG)} ${name(goal.target)} (${massText(goal.p10G)} to ${massText(goal.p90G)})`,
  )
  const { basket, days } = evaluation
  const cost =
    basket?.totalMinor == null
      ? 'no prices'
      : `${moneyText(basket.totalMinor, basket.currency)}${basket.complete && carriageOpen(basket) === null ? '' : ' at least'}`
  const more = added === null ? '' : `; adds ${massText(added.medianG)} ${name(added.compound)} (nine times in ten ${massText(added.p10G)})`
  return `${words[way.way]}: ${goals.join(', ')}${more}; ${cost}; ${days.finishDate === null ? 'no date: bench windows or a start date are missing' : `done ${days.finishDate}`}.`
}
