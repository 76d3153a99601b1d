import { isWanted, type WantedMark, wantedMarks } from '../../core/library/mark.ts'
import { planChanges } from '../../core/plan/changes.ts'
import { changesSince, type OpenedPlan, planFileOf } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import { paragraph } from '../../core/problem/problem.ts'
import { figureLines } from '../../core/report/figures-text.ts'
import { planFigures } from '../../core/report/plan-figures.ts'
import { leftOversOf, solventsOf } from '../../core/report/shopping-notes.ts'
import { planText } from '../../core/report/text.ts'
import { trustOfPlan } from '../../core/report/trust-words.ts'
import type { Workshop } from '../library/workshop.ts'
import { gramsOf } from '../planning/amounts.ts'
import { type Chosen, cheapestOptions, cheapestPlan, chosenWords, limitsFrom, wantsCheapest } from '../planning/cheapest.ts'
import { choicesOf, choiceTexts } from '../planning/choice.ts'
import { choosingFrom, choosingGiven } from '../planning/choosing.ts'
import { sideFiles } from '../planning/files.ts'
import { gentlestWords } from '../planning/gentlest.ts'
import { goalFrom, goalOfPair } from '../planning/goal-text.ts'
import { ownSettings, settingOptions } from '../planning/own-settings.ts'
import { evaluatePlan, type openPlan, planIn, workshopOf } from '../planning/plan-file.ts'
import { printed } from '../planning/printed.ts'
import { planOf } from '../planning/request.ts'
import { withShelved } from '../planning/shelving.ts'
import { tablesSaved } from '../planning/tables-saved.ts'
import { choosingOptions } from './choosing.ts'
import { badOption, type Command, type Given, type Terminal } from './command.ts'
import { inOptions } from './option-words.ts'
import { workshopFor } from './workshop-for.ts'

export const plan: Command = {
  name: 'plan',
  summary: 'amounts, shopping, hazards and days of a route or of several goals',
  usage:
    '--from ID --to ID [--steps ID,ID,... | choosing options --route N] (--have "24 g" | --want "5 g" [--confidence 0.9])\n       waybench plan --from ID --goal ID=5g [--goal ID=50%] [--goal ID=rest] (--have "24 g" | --confidence 0.9)\n       waybench plan ... --cheapest [--budget 70] [--max-hands-on 5] [--finish-by 2026-12-11]\n       waybench plan FILE',
  options: {
    from: { type: 'string', value: 'ID', help: 'what is in hand' },
    to: { type: 'string', value: 'ID', help: 'what is wanted' },
    have: { type: 'string', value: '"24 g"', help: 'how much is in hand' },
    want: { type: 'string', value: '"5 g"', help: 'how much product is wanted; the start is reckoned backwards' },
    goal: {
      type: 'string',
      multiple: true,
      value: 'ID=5g',
      help: 'one of several goals: a mass, a share of the start (ID=50%) or what the others leave (ID=rest)',
    },
    groups: {
      type: 'string',
      value: 'runs|lot',
      help: 'with an amount such as "12 x 2 g": every group runs the last step itself, or one lot is divided',
    },
    ...settingOptions,
    steps: { type: 'string', value: 'ID,ID', help: 'the transformations of the route' },
    route: { type: 'string', value: 'N', help: 'number of the route as waybench routes lists it (default 1)' },
    ...choosingOptions,
    ...cheapestOptions,
    shelf: { type: 'string', value: 'FILE', help: 'what is in stock (waybench-shelf, or a table .csv); "demo" names the invented one' },
    currency: { type: 'string', value: 'EUR', help: 'of the prices in a packs table (default EUR)' },
    shelve: {
      type: 'string',
      multiple: true,
      value: 'ID',
      help: 'moves a second product of the plan to its shelf, for other steps to use; repeatable',
    },
    'basket-limit': {
      type: 'string',
      value: 'N',
      help: 'nodes that the search for the basket may take; beyond it the best found, with its gap',
    },
    print: { type: 'string', value: 'FILE', help: 'writes the pack: .html, .csv or .txt; .ics writes the days for a calendar' },
    since: { type: 'string', value: 'FILE', help: 'an earlier plan file: the pack says what changed since' },
    records: {
      type: 'string',
      value: 'old|new',
      help: 'with a saved plan whose library has changed: old keeps the records it was saved with, new goes by the library; --save keeps the choice',
    },
    figures: {
      type: 'string',
      value: 'WORD',
      help: 'lists the figures that the plan rests on, with their sources: all, "not seen", seen, remembered, estimated, invented, unknown ...',
    },
    save: { type: 'string', value: 'FILE', help: 'writes the plan file' },
    'save-shelf': { type: 'string', value: 'FILE.csv', help: 'writes the shelf of the plan as a table, which --shelf reads' },
    'save-packs': { type: 'string', value: 'FILE.csv', help: 'writes packs and suppliers as a table, which --packs reads' },
  },
  positionals: { least: 0, most: 1, what: 'files' },
  async run(given, terminal) {
    const opened = await workshopFor(given)
    const file = given.words[0]
    const found = await sinceEarlier(
      opened,
      given,
      terminal,
      file === undefined ? await planAsked(opened, given, terminal) : await planSaved(opened, file, given, terminal),
    )
    const workshop = found.opened === undefined ? opened : workshopOf(opened, { ...found.opened, plan: found.plan })
    const shelve = given.texts('shelve')
    const asked = shelve.length === 0 ? found : { ...found, plan: withShelved(workshop, found.plan, shelve) }
    const limit = given.text('basket-limit') === undefined ? undefined : given.whole('basket-limit', 0, 1_000_000_000, 0)
    const evaluation = await evaluatePlan(workshop, asked.plan, limit)
    const figures = figuresWanted(given)
    const choosing = choosingGiven(asked.plan, given)
    const choice = await choicesOf(workshop, asked.plan, choosing)
    const choiceTold = choiceTexts(workshop, asked.plan, choice)
    for (const path of [given.text('print')].filter(p => p !== undefined)) {
      await terminal.writeFile(
        path,
        await printed(path, workshop, asked.plan, evaluation, terminal.today, asked.changes, choiceTold, choosing),
      )
      terminal.err(`Wrote ${path}.\n`)
    }
    const save = given.text('save')
    if (save !== undefined) {
      await terminal.writeFile(save, `${JSON.stringify(planFileOf(workshop.library, asked.plan), null, 2)}\n`)
      terminal.err(`Wrote ${save}.\n`)
    }
    await tablesSaved(given, terminal, asked.plan)
    if (given.on('json')) {
      const under = {
        leftOvers: leftOversOf(workshop.library, evaluation),
        solvents: solventsOf(workshop.library, asked.plan.settings, evaluation),
        trust: trustOfPlan(workshop.library, asked.plan, evaluation),
        ...(figures === null
          ? {}
          : {
              figures: planFigures(workshop.library, asked.plan, evaluation).filter(
                one => figures === 'all' || isWanted(figures, one.mark),
              ),
            }),
      }
      const chosen = asked.chosen === undefined ? {} : { chosen: asked.chosen }
      terminal.out(`${JSON.stringify({ ...evaluation, ...under, ...chosen, choice, changes: asked.changes }, null, 2)}\n`)
    } else {
      if (asked.note !== null) terminal.out(`${asked.note}\n\n`)
      for (const change of asked.changes) terminal.out(`${paragraph(change)}\n`)
      terminal.out(planText(workshop.library, asked.plan, evaluation, choiceTold))
      if (figures !== null) terminal.out(`\n${figureLines(workshop.library, asked.plan, evaluation, figures).join('\n')}\n`)
    }
    return 0
  },
}

/** Which figures are to be listed; null = none. */
function figuresWanted(given: Given): WantedMark | 'all' | null {
  const word = given.text('figures')
  if (word === undefined || word === 'all') return word ?? null
  const wanted = wantedMarks.find(one => one === word)
  if (wanted === undefined)
    throw badOption(
      '--figures',
      `is "${word}".`,
      `A figure is one of: ${wantedMarks.join(', ')}.`,
      'Write one of them, or all; those of two words in quotes.',
    )
  return wanted
}

interface Asked {
  readonly plan: Plan
  /** What was chosen without being asked for, in words. */
  readonly note: string | null
  /** The saved plan, with the records it brings along. */
  readonly opened?: OpenedPlan
  /** How the cheapest way was chosen, where it was asked for. */
  readonly chosen?: Chosen
  readonly changes: readonly ReturnType<typeof openPlan>['changes'][number][]
}

async function planSaved(workshop: Workshop, file: string, given: Given, terminal: Terminal): Promise<Asked> {
  for (const name of [
    'from',
    'to',
    'have',
    'want',
    'steps',
    'route',
    'shelf',
    'packs',
    'settings',
    'confidence',
    'reserve',
    'retained-sample',
    'recovery',
    'groups',
  ] as const) {
    if (given.text(name) !== undefined)
      throw badOption(
        `--${name}`,
        'does not go with a plan file.',
        `"${file}" is taken for a plan file, which holds it already.`,
        'Leave one of the two out; a value with spaces belongs in quotes, as in --have "24 g".',
        'option-clash',
      )
  }
  const read = await planIn(workshop, file, terminal)
  const opened = { ...read, plan: onRecords(read.plan, given) }
  const { plan } = opened
  const changes = changesSince(workshop.library, opened).map(inOptions)
  if (!wantsCheapest(given)) return { plan, changes, opened, note: null }
  const limits = limitsFrom(given, plan.packs?.currency ?? 'EUR')
  const answer = await cheapestPlan(workshopOf(workshop, opened), plan, plan.goals, choosingFrom(given), limits)
  return { ...answer, changes, opened, note: chosenWords(workshopOf(workshop, opened), answer) }
}

/** A saved plan as it is, or told to go by its own records or by the library. */
function onRecords(plan: Plan, given: Given): Plan {
  const records = given.text('records')
  if (records === undefined) return plan
  if (records !== 'old' && records !== 'new')
    throw badOption(
      '--records',
      `is "${records}".`,
      'A plan goes by the records it was saved with, or by the library.',
      'Write old or new.',
    )
  const { keepsRecords: _keeps, ...rest } = plan
  return records === 'old' ? { ...rest, keepsRecords: true } : rest
}

/** Held against an earlier file: one version after it, with what changed. */
async function sinceEarlier(workshop: Workshop, given: Given, terminal: Terminal, asked: Asked): Promise<Asked> {
  const since = given.text('since')
  if (since === undefined) return asked
  const { plan: before } = await planIn(workshop, since, terminal)
  const changed = planChanges(workshop.library, before, asked.plan)
  const number = Math.max(asked.plan.edition?.number ?? 1, (before.edition?.number ?? 1) + (changed.length > 0 ? 1 : 0))
  return { ...asked, plan: { ...asked.plan, edition: { number, changed } } }
}

async function planAsked(workshop: Workshop, given: Given, terminal: Terminal): Promise<Asked> {
  const { library } = workshop
  if (given.text('records') !== undefined)
    throw badOption('--records', 'goes with a saved plan.', 'A new plan has no older records.', 'Name the plan file, or leave it out.')
  const from = given.need('from', 'A plan begins with what is in hand; or name a saved plan.')
  const to = given.text('to')
  const goalTexts = given.texts('goal')
  const have = given.text('have')
  const want = given.text('want')
  if ((to === undefined) === (goalTexts.length === 0)) {
    throw badOption(
      to === undefined ? '--to' : '--goal',
      to === undefined ? 'is missing.' : 'does not go with --to.',
      'A plan has one target or several goals.',
      'Give --to ID, or --goal ID=5g once or more.',
      'option-clash',
    )
  }
  if (to !== undefined && (have === undefined) === (want === undefined)) {
    throw badOption(
      have === undefined ? '--have' : '--want',
      have === undefined ? 'or --want is missing.' : 'does not go with --have.',
      'Amounts run forwards from what you have or backwards from what you want.',
      'Give one of them, with a unit: --have "24 g".',
      'option-clash',
    )
  }
  if (want !== undefined && goalTexts.length > 0)
    throw badOption('--want', 'does not go with --goal.', 'Each goal carries its own amount.', 'Write --goal ID=5g.', 'option-clash')
  if (given.text('steps') !== undefined && goalTexts.length > 0)
    throw badOption(
      '--steps',
      'goes with a single --to.',
      'Several goals have several routes.',
      'Steer them with --avoid-step and --must-pass.',
      'option-clash',
    )
  const targets = goalTexts.map(text => text.slice(0, text.indexOf('=')).trim())
  const twice = targets.find((target, at) => targets.indexOf(target) !== at)
  if (twice !== undefined)
    throw badOption(
      '--goal',
      `names ${twice} more than once.`,
      'Each goal has one row of amounts.',
      'Put both amounts into one goal.',
      'goal-twice',
    )
  const side = await sideFiles(given, terminal)
  const settings = ownSettings(workshop, given, side.settings, side.packs?.currency)
  // An id that the library does not know is told by the search with a proposal; amounts can then not be read.
  const known = (id: string) => library.materials.has(id)
  const haveG = have === undefined ? null : known(from) ? gramsOf(library, from, have, ['command line', '--have']) : 1
  const goals =
    to === undefined
      ? goalTexts.map(text => goalOfPair(workshop, given, text))
      : [want === undefined ? { target: to, amount: { kind: 'rest' } as const } : goalFrom(workshop, given, to, want, '--want')]
  if (haveG === null && goals.some(goal => goal.amount.kind !== 'mass')) {
    throw badOption(
      '--have',
      'is missing.',
      'A share or the rest is a part of what is in hand.',
      'Give --have "24 g", or goals in grams.',
      'option-clash',
    )
  }
  const steps = given.text('steps')
  const choosing = choosingFrom(given)
  const route = given.whole('route', 1, 100_000, 1)
  const request = {
    from,
    haveG,
    goals,
    steps:
      steps === undefined
        ? null
        : steps
            .split(',')
            .map(id => id.trim())
            .filter(Boolean),
    route,
    choosing,
    side: { ...side, settings },
    seed: given.whole('seed', 0, 4_294_967_295, 1),
    title: `${library.materials.get(from)?.name ?? from} to ${goals.map(goal => library.materials.get(goal.target)?.name ?? goal.target).join(', ')}`,
  }
  if (wantsCheapest(given)) {
    if (steps !== undefined || given.text('route') !== undefined)
      throw badOption(
        steps === undefined ? '--route' : '--steps',
        'does not go with --cheapest.',
        'The cheapest way chooses the routes itself.',
        'Leave one of the two out.',
        'option-clash',
      )
    const bare = { ...request.side, title: request.title, start: { material: from, massG: haveG }, log: [], seed: request.seed }
    const answer = await cheapestPlan(workshop, bare, goals, choosing, limitsFrom(given, side.packs?.currency ?? 'EUR'))
    return { ...answer, changes: [], note: chosenWords(workshop, answer) }
  }
  const plan = planOf(workshop, request)
  const chosen = steps === undefined && given.text('route') === undefined && goals.length === 1
  return { plan, changes: [], note: chosen ? gentlestWords(workshop, request) : null }
}
