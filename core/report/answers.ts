import type { HazardList, LabelledMaterial } from '../hazards/hazard-list.ts'
import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import { isolatedOf, standing } from '../plan/logged.ts'
import type { Plan } from '../plan/plan.ts'
import type { Settings } from '../plan/settings.ts'
import { moneyText } from '../quantity/money.ts'
import { durationText, massText, noBreakSpace, numberText, percentText } from '../quantity/print.ts'
import { barredClause } from './barred-clause.ts'
import { carriageOpen } from './basket-gaps.ts'
import { shortDate } from './dates.ts'
import { nameIn } from './names.ts'
import { goalAmountText, madeGoals, shortClauses } from './short-start.ts'
import { capital, counted, inWords, listed } from './words.ts'

/** One of the seven questions with its answer as clauses, which a heading may break between. */
export interface Answer {
  readonly no: 1 | 2 | 3 | 4 | 5 | 6 | 7
  readonly ask: string
  readonly clauses: readonly string[]
}

/** What else stands downstream, where somebody has looked: so many compounds within so many steps. */
export interface Reach {
  readonly compounds: number
  readonly steps: number
}

export const questions = [
  'What have I got?',
  'What can it become?',
  'Which way?',
  'How much?',
  'What do I need?',
  'What can hurt?',
  'What happened?',
] as const

/** The seven headings of the sheet: folded they are the plan, and page 1 of the pack prints exactly these. */
export function answersOf(library: Library, plan: Plan, evaluation: Evaluation, reach?: Reach): readonly Answer[] {
  const nameOf = nameIn(library)
  const barred = barredClause(evaluation.hazards, nameOf)
  const clauses = [
    haveAnswer(plan, nameOf),
    becomeAnswer(plan, nameOf, reach),
    [...barred, ...wayAnswer(evaluation)],
    amountAnswer(evaluation, nameOf),
    [...barred, ...needAnswer(evaluation, plan.settings.windows)],
    hurtAnswer(evaluation.hazards, nameOf),
    [happenedAnswer(plan, evaluation, nameOf)],
  ]
  return questions.map((ask, at) => ({ no: (at + 1) as Answer['no'], ask, clauses: clauses[at]! }))
}

type NameOf = (id: string) => string

/** "24.0 g of benzoin and six bottles; a hood, no inert gas". */
export function haveAnswer({ start, shelf, settings }: Plan, nameOf: NameOf): readonly string[] {
  const bottles = shelf.filter(item => item.material !== start.material).length
  const inHand = start.massG === null ? nameOf(start.material) : `${massText(start.massG)} of ${nameOf(start.material)}`
  const first = bottles === 0 ? inHand : `${inHand} and ${counted(bottles, 'bottle')}`
  const owned = [
    settings.hood === null ? null : settings.hood ? 'a hood' : 'no hood',
    settings.inertGas === null ? null : settings.inertGas ? 'inert gas' : 'no inert gas',
  ].filter(part => part !== null)
  return owned.length === 0 ? [first] : [`${first};`, owned.join(', ')]
}

function becomeAnswer({ goals }: Plan, nameOf: NameOf, reach: Reach | undefined): readonly string[] {
  if (reach === undefined) {
    const names = listed(goals.map(goal => nameOf(goal.target)))
    return [`${capital(names)} ${goals.length === 1 ? 'is the goal' : 'are the goals'}`]
  }
  const first = `${counted(reach.compounds, 'compound')} within ${counted(reach.steps, 'step')};`
  return [capital(first), goals.length === 1 ? 'one is your goal' : `${inWords(goals.length)} are your goals`]
}

/** Steps, and both yields by their names. */
function wayAnswer({ steps, goals }: Evaluation): readonly string[] {
  const longest = goals.reduce((most, goal) => Math.max(most, goal.steps.length), 0)
  const first =
    steps.length === longest ? counted(steps.length, 'step') : `${counted(steps.length, 'step')}, at most ${inWords(longest)} for one goal`
  const yields = goals.map(goal => goal.overallYieldOnStart)
  const least = Math.min(...yields)
  const most = Math.max(...yields)
  const range = most - least < 0.0005 ? percentText(least) : `${numberText(least * 100, 3, 1)}–${percentText(most)}`
  return [`${capital(first)};`, `overall yield on start ${range} at typical yields`]
}

/** What does not suffice first; then, largest first, medians, each with P10 and P90 in g. */
function amountAnswer(evaluation: Evaluation, nameOf: NameOf): readonly string[] {
  const amounts = [...madeGoals(evaluation)]
    .sort((a, b) => b.medianG - a.medianG)
    .map(
      (goal, at, all) =>
        `${goalAmountText(evaluation, goal)} ${nameOf(goal.target)} (${spreadText(goal.p10G, goal.p90G)})${at < all.length - 1 ? ',' : ''}`,
    )
  return [...shortClauses(evaluation, nameOf), ...amounts]
}

/** "18.5–23.6": P10 and P90 in g, with as many places as both can bear. */
export function spreadText(p10G: number, p90G: number): string {
  const places = p90G >= 10 ? 1 : 2
  return `${numberText(p10G, 3, places)}–${numberText(p90G, 3, places)}`
}

/** "€ 62.30 and one price unknown; five evenings, done 15 Dec". */
export const needAnswer = (evaluation: Evaluation, windows: Settings['windows']): readonly string[] => [
  `${costText(evaluation)};`,
  daysText(evaluation, windows),
]

/** What the total is and, in the same breath, what is missing from it. */
export function costText({ basket, shopping }: Evaluation): string {
  const toBuy = shopping.filter(line => line.buy.amount === null || line.buy.amount > 0 || line.packs.length > 0).length
  if (basket === null) return toBuy === 0 ? 'Nothing to buy' : `${capital(counted(toBuy, 'material'))} to buy`
  const missing = [
    ...(basket.priceUnknown.length === 0 ? [] : [`${counted(basket.priceUnknown.length, 'price')} unknown`]),
    ...(basket.amountUnknown.length === 0 ? [] : [`${counted(basket.amountUnknown.length, 'amount')} left open`]),
    ...(carriageOpen(basket) === null ? [] : ['carriage not stated']),
  ]
  if (basket.totalMinor === null && toBuy > 0) return `${capital(counted(toBuy, 'material'))} to buy, no price known`
  if (toBuy === 0 && missing.length === 0) return 'Nothing to buy'
  // No cost beside an unknown price would read as free.
  if (basket.totalMinor === null || basket.totalMinor === 0) return missing.length === 0 ? 'Nothing to pay' : capital(listed(missing))
  const total = moneyText(basket.totalMinor, basket.currency)
  return missing.length === 0 ? total : `${total} and ${listed(missing)}`
}

/** A window that begins at five or later is an evening. */
const evening = '17:00'

export function windowWord(windows: Settings['windows']): readonly [one: string, many: string] {
  return windows.length > 0 && windows.every(window => window.from >= evening) ? ['evening', 'evenings'] : ['bench window', 'bench windows']
}

function daysText({ days }: Evaluation, windows: Settings['windows']): string {
  const [one, many] = windowWord(windows)
  if (days.tooLong.length > 0) {
    const longer = days.tooLong.every(({ why }) => why === 'longer')
    const what = counted(days.tooLong.length, longer ? 'piece' : 'step')
    const would = days.wouldDo === null ? '' : `; one of ${durationText(days.wouldDo.hours)} would do`
    return `${what}${longer ? ` of work longer than any ${one}` : ` that no ${one} comes soon enough for`}${would}`
  }
  const done = days.finishDate === null ? '' : `, done ${shortDate(days.finishDate)}`
  if (days.windowsUsed !== null) return `${counted(days.windowsUsed, one, many)}${done}`
  return days.handsOnH === null ? 'hands-on hours unknown' : `${Math.round(days.handsOnH * 10) / 10}${noBreakSpace}hours hands-on${done}`
}

/**
 * What the buyer cannot have first; then the worst that is known, by name: what is handled before what only comes of it; and how many materials
 * nobody has data for.
 */
export function hurtAnswer(hazards: HazardList, nameOf: NameOf): readonly string[] {
  return [...barredClause(hazards, nameOf), ...worstAnswer(hazards, nameOf)]
}

function worstAnswer({ materials, unknown }: HazardList, nameOf: NameOf): readonly string[] {
  const unknownText = unknown.length === 0 ? '' : `${counted(unknown.length, 'material')} without hazard data`
  const worst = worstNames(materials, nameOf)
  if (worst.length > 0) {
    const first = capital(listed(worst))
    return unknownText === '' ? [first] : [`${first};`, unknownText]
  }
  if (unknownText !== '') return [capital(unknownText)]
  return materials.some(material => material.class === 'warning')
    ? ['Nothing above a warning']
    : ['No hazard class assigned to anything, with a source']
}

/** Comes out of a bottle: weighed or poured, not made on the way nor given off. */
const isHandled = ({ as }: LabelledMaterial): boolean => (as.includes('charged') || as.includes('start')) && !as.includes('made')

/** Codes that can hurt at once, worst first: poison, with water, corrosive and oxidizing. Own order, no source. */
const atOnce = [/^H(30[01]|31[01]|33[01])/, /^H26[01]/, /^H314/, /^H27[012]/]

const rankAtOnce = ({ codes }: LabelledMaterial): number => {
  const at = atOnce.findIndex(pattern => codes.some(({ code }) => pattern.test(code)))
  return at < 0 ? atOnce.length : at
}

/** What is handled of the gravest class and of Danger, one each; then the rest of the worse of the two classes, by name or by number. */
function worstNames(materials: readonly LabelledMaterial[], nameOf: NameOf): readonly string[] {
  const of = (grade: LabelledMaterial['class']) => materials.filter(material => material.class === grade)
  const handled = (grade: LabelledMaterial['class']) =>
    of(grade)
      .filter(isHandled)
      .sort((a, b) => rankAtOnce(a) - rankAtOnce(b))
      .slice(0, 1)
  const leads = [...handled('gravest'), ...handled('danger')]
  const worse = of('gravest').length > 0 ? 'gravest' : 'danger'
  const others = of(worse).filter(material => !leads.includes(material))
  const name = (material: LabelledMaterial): string => nameOf(material.material).replace(/, .*$/, '')
  const names = leads.map(name)
  if (others.length === 0) return names
  if (others.length === 1 && names.length < 2) return [...names, name(others[0]!)]
  const more = leads.some(lead => lead.class === worse) ? counted(others.length, 'other') : inWords(others.length)
  return [...names, `${more} of ${worse === 'gravest' ? 'the gravest class' : 'the class Danger'}`]
}

/** The last run that stands, held against theory. */
function happenedAnswer({ log }: Plan, { steps }: Evaluation, nameOf: NameOf): string {
  const last = standing(log).at(-1)
  if (last === undefined) return 'No run logged'
  const step = steps.find(one => one.transformation === last.step)
  const name = capital(step === undefined ? last.step.replaceAll('-', ' ') : nameOf(step.makes))
  if (last.failed) return `${name}: a run failed`
  const dryG = isolatedOf(last)
  const chargedG = last.chargedG ?? (step === undefined ? null : step.limiting.massG / Math.max(1, step.batches))
  const theoryG = step?.theoreticalG == null || chargedG === null ? null : (step.theoreticalG * chargedG) / step.limiting.massG
  if (theoryG === null || theoryG === 0) return `${name}: ${massText(dryG)}`
  const percent = Math.round((dryG / theoryG) * 100)
  return percent > 100
    ? `${name} weighs ${percent}${noBreakSpace}% of theory: wet or mis-weighed?`
    : `${name}: ${massText(dryG)}, ${percent}${noBreakSpace}% of theory`
}
