import { isWanted, type WantedMark, wantedMarks } from '../../core/library/mark.ts'
import { planFileOf } from '../../core/plan/file.ts'
import { paragraph } from '../../core/problem/problem.ts'
import { figureLines } from '../../core/report/figures-text.ts'
import { planFigures } from '../../core/report/plan-figures.ts'
import { leftOversOf, solventsOf } from '../../core/report/shopping-notes.ts'
import { planText } from '../../core/report/text.ts'
import { trustOfPlan } from '../../core/report/trust-words.ts'
import { cheapestOptions } from '../planning/cheapest.ts'
import { choicesOf, choiceTexts } from '../planning/choice.ts'
import { choosingGiven } from '../planning/choosing.ts'
import { settingOptions } from '../planning/own-settings.ts'
import { evaluatePlan, workshopOf } from '../planning/plan-file.ts'
import { beneathIn, printed } from '../planning/printed.ts'
import { withShelved } from '../planning/shelving.ts'
import { tablesSaved } from '../planning/tables-saved.ts'
import { choosingOptions } from './choosing.ts'
import { badOption, type Command, type Given } from './command.ts'
import { planAsked } from './plan-asked.ts'
import { planSaved, sinceEarlier } from './plan-saved.ts'
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
      const beneath = beneathIn(workshop, asked.plan)
      const under = {
        leftOvers: leftOversOf(workshop.library, evaluation),
        solvents: solventsOf(workshop.library, asked.plan.settings, evaluation),
        trust: trustOfPlan(workshop.library, asked.plan, evaluation),
        beneath: { yields: Object.fromEntries(beneath.yields), materials: Object.fromEntries(beneath.materials) },
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
      terminal.out(planText(workshop.library, asked.plan, evaluation, choiceTold, beneathIn(workshop, asked.plan)))
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
