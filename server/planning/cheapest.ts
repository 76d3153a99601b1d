import { cheapestWays, type JointAnswer, type JointWay } from '../../core/choose/joint.ts'
import type { WayLimits } from '../../core/choose/limits.ts'
import type { ChoosingOptions } from '../../core/choose/query.ts'
import { dayOf } from '../../core/days/civil-date.ts'
import type { Goal, Plan } from '../../core/plan/plan.ts'
import type { Checked } from '../../core/problem/problem.ts'
import { minorDigitsOf, moneyText } from '../../core/quantity/money.ts'
import { stopProblems } from '../../core/report/stops.ts'
import { badOption, type Given, type Option } from '../commands/command.ts'
import type { Workshop } from '../library/workshop.ts'
import { Refusal } from '../refusal.ts'
import { loadSolver } from '../solver/highs.ts'
import { searched } from './searching.ts'

/** Options that choose the ways to all goals together; each limit implies `--cheapest`. */
export const cheapestOptions: Readonly<Record<string, Option>> = {
  cheapest: { type: 'boolean', help: 'the cheapest way to all goals: routes, make-or-buy and packs chosen together, with the reason' },
  budget: { type: 'string', value: '70', help: 'at most so much for all that is bought, in the currency of the packs; as --cheapest' },
  'max-hands-on': { type: 'string', value: 'HOURS', help: 'at most so many hours of hands; as --cheapest' },
  'finish-by': { type: 'string', value: 'DATE', help: 'done by this day (2026-12-11); as --cheapest' },
}

export const wantsCheapest = (given: Given): boolean =>
  given.on('cheapest') || ['budget', 'max-hands-on', 'finish-by'].some(name => given.text(name) !== undefined)

/** Limits of a command line. */
export function limitsFrom(given: Given, currency: string): WayLimits {
  const number = (name: string, what: string): number | undefined => {
    const text = given.text(name)
    if (text === undefined) return undefined
    const value = Number(text.trim())
    if (text.trim() !== '' && value >= 0 && Number.isFinite(value)) return value
    throw badOption(`--${name}`, `is "${text}".`, `It is ${what}, with a point for the decimals.`, 'Write a plain number.', 'limit')
  }
  const budget = number('budget', `a sum in ${currency}`)
  const hours = number('max-hands-on', 'a number of hours')
  const date = given.text('finish-by')
  if (date !== undefined && (!/^\d{4}-\d{2}-\d{2}$/.test(date) || dayOf(date) === null))
    throw badOption('--finish-by', `is "${date}".`, 'It is a day of the calendar.', 'Write it as 2026-12-11.', 'limit')
  return {
    ...(budget === undefined ? {} : { budgetMinor: Math.round(budget * 10 ** minorDigitsOf(currency)) }),
    ...(hours === undefined ? {} : { maxHandsOnH: hours }),
    ...(date === undefined ? {} : { finishBy: date }),
  }
}

/** The same as `choosing.ways` would hold it: everything about the choice but the plan and its evaluation. */
export type Chosen = Omit<JointWay, 'plan' | 'evaluation'>

/** What is asked for: a plan without routes, its goals, what may be used and what it may cost. */
export interface CheapestAsked {
  readonly plan: Omit<Plan, 'goals'>
  readonly goals: readonly Omit<Goal, 'route'>[]
  readonly options: ChoosingOptions
  readonly limits: WayLimits
}

/** The search for it, to be run in turns; `chosenIn` reads what it comes to. */
export async function cheapestSearch(
  workshop: Workshop,
  asked: CheapestAsked,
  shouldStop?: () => boolean,
): Promise<ReturnType<typeof cheapestWays>> {
  const { library, tables } = workshop
  const solver = await loadSolver()
  return cheapestWays({ library, tables, traits: workshop.traits(), ...asked, solver, ...(shouldStop === undefined ? {} : { shouldStop }) })
}

/** @throws Refusal with every problem; where nothing keeps within the limits, by how much and which goal to leave out */
export function chosenIn({ library }: Workshop, answer: Checked<JointAnswer>): { readonly plan: Plan; readonly chosen: Chosen } {
  if (!answer.ok) throw new Refusal('bad-input', answer.problems)
  if (answer.value.kind === 'stopped') throw new Refusal('no-answer', stopProblems(library, answer.value.stopped))
  if (answer.value.kind === 'none') throw new Refusal('no-answer', answer.value.problems)
  const { kind: _kind, plan: found, evaluation: _evaluation, ...chosen } = answer.value
  return { plan: found, chosen }
}

/**
 * The cheapest way for a plan's start, shelf, packs and settings to its goals, whatever routes these had.
 *
 * @param signal ends the search at its next pause
 * @throws Refusal as `chosenIn` does
 */
export async function cheapestPlan(
  workshop: Workshop,
  plan: Omit<Plan, 'goals'>,
  goals: readonly Omit<Goal, 'route'>[],
  options: ChoosingOptions,
  limits: WayLimits,
  signal?: AbortSignal,
): Promise<{ readonly plan: Plan; readonly chosen: Chosen }> {
  return chosenIn(workshop, await searched(await cheapestSearch(workshop, { plan, goals, options, limits }), signal))
}

/** The choice in words: what was compared, how sure it is, why it won and what the limits changed. */
export function chosenWords({ library }: Workshop, { plan, chosen }: { readonly plan: Plan; readonly chosen: Chosen }): string {
  const { figures, ways, reckoned, proven } = chosen
  const currency = plan.packs?.currency ?? 'XXX'
  const total = figures.totalMinor === null ? 'what it costs is not known' : `it costs ${moneyText(figures.totalMinor, currency)}`
  const unknown =
    figures.priceUnknown === 0 ? '' : ` and ${figures.priceUnknown === 1 ? 'one unknown price' : `${figures.priceUnknown} unknown prices`}`
  const rest = plan.goals.find(goal => goal.amount.kind === 'rest')
  const perGram =
    figures.perGramMinor === null || rest === undefined
      ? ''
      : `, ${moneyText(figures.perGramMinor, currency)} for each gram of ${library.materials.get(rest.target)?.name ?? rest.target}`
  return [
    `The cheapest of ${ways === 1 ? 'the one way' : `${ways} ways`} to these goals: ${total}${unknown}${perGram}.`,
    proven
      ? `Proven: ${reckoned === 1 ? 'one was' : `${reckoned} were`} reckoned in full, the others cannot cost less.`
      : `Not proven: the search was cut short, and a cheaper way may exist${chosen.boundMinor === null ? '' : `; none costs less than ${moneyText(chosen.boundMinor, currency)}`}.`,
    ...(chosen.changedByLimits === null ? [] : [`The limits change the way. ${chosen.changedByLimits}`]),
    ...chosen.reasons.map(reason => `- ${reason}`),
  ].join('\n')
}
