import type { OpenedPlan } from '../../core/plan/file.ts'
import type { Plan } from '../../core/plan/plan.ts'
import type { Problem } from '../../core/problem/problem.ts'
import type { Workshop } from '../library/workshop.ts'
import { gramsOf } from '../planning/amounts.ts'
import { type Chosen, cheapestPlan, chosenWords, limitsFrom, wantsCheapest } from '../planning/cheapest.ts'
import { choosingFrom } from '../planning/choosing.ts'
import { sideFiles } from '../planning/files.ts'
import { gentlestWords } from '../planning/gentlest.ts'
import { goalFrom, goalOfPair } from '../planning/goal-text.ts'
import { ownSettings } from '../planning/own-settings.ts'
import { planOf } from '../planning/request.ts'
import { badOption, type Given, type Terminal } from './command.ts'

/** A plan as the command line asks for it, with what is to be told beside it. */
export interface Asked {
  readonly plan: Plan
  /** What was chosen without being asked for, in words. */
  readonly note: string | null
  /** The saved plan, with the records it brings along. */
  readonly opened?: OpenedPlan
  /** How the cheapest way was chosen, where it was asked for. */
  readonly chosen?: Chosen
  readonly changes: readonly Problem[]
}

/** A new plan out of options. */
export async function planAsked(workshop: Workshop, given: Given, terminal: Terminal): Promise<Asked> {
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
