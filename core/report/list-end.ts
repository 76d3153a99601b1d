import type { Library } from '../library/library.ts'
import type { Axis } from '../plan/choosing.ts'
import { moneyText } from '../quantity/money.ts'
import { durationText, massText, numberText } from '../quantity/print.ts'
import { nameIn } from './names.ts'
import { capital, counted, listed } from './words.ts'

/** What an axis is called in a sentence. */
export const axisWords: Readonly<Record<Axis, string>> = {
  start: 'start needed',
  yield: 'overall yield on start',
  steps: 'steps',
  cost: 'cost',
  'hands-on': 'hands-on time',
  elapsed: 'elapsed time',
  'mass-intensity': 'mass in',
  hazard: 'hazard',
}

/** Between which compounds the ways run, and in what money they are priced. */
export interface Between {
  readonly library: Library
  readonly start: string
  readonly target: string
  readonly currency: string | null
}

/**
 * "need less than 1.31 g of benzoin for each gram of benzil": what no way can do that is not listed.
 *
 * @param bound of the axis, in the units of a row's `value`
 * @returns null where the axis bounds nothing, or the figure cannot be told per gram
 */
export function boundText({ library, start, target, currency }: Between, by: Axis, bound: number): string | null {
  const molar = (id: string): number | null => library.molarMass.get(id) ?? null
  const nameOf = nameIn(library)
  const product = molar(target)
  if (by === 'steps') return `take fewer than ${counted(Math.ceil(bound - 1e-6), 'step')}`
  if (by === 'hands-on') return `take less than ${durationText(downHours(bound))} of hands`
  if (by === 'elapsed') return `be done in less than ${durationText(downHours(bound))}`
  if (by === 'mass-intensity') return `take in less than ${numberText(down(bound), 3)} g for each gram of ${nameOf(target)}`
  if (product === null) return null
  if (by === 'cost')
    return currency === null
      ? null
      : `cost less than ${moneyText(Math.floor(bound / product), currency)} for each gram of ${nameOf(target)}`
  const own = molar(start)
  if (by !== 'start' || own === null) return null
  return `need less than ${massText(down((bound * own) / product))} of ${nameOf(start)} for each gram of ${nameOf(target)}`
}

/** Three figures, never rounded up: what is said of a bound must hold. */
function down(value: number): number {
  if (!(value > 0)) return 0
  const unit = 10 ** (Math.floor(Math.log10(value)) - 2)
  // A figure that is whole but for rounding stays what it is.
  return Math.floor(value / unit + 1e-9) * unit
}

/** The same for hours, in the steps in which they are printed: minutes, tenths of an hour, tenths of a day. */
function downHours(hours: number): number {
  const inOne = hours < 1 ? 60 : hours < 72 ? 10 : 10 / 24
  return Math.floor(hours * inOne + 1e-9) / inOne
}

/** As much of a list of routes as tells how sure it is. */
export interface ListEnd {
  readonly complete: boolean
  readonly proven: boolean
  readonly tiesInOrder: boolean
  readonly best: { readonly proven: boolean; readonly atMostAbovePercent: number | null }
  readonly bound?: number
  readonly apart?: number
}

/**
 * What stands under a list of ways: whether these are all, what no other can do, and how sure the order is. Sentences.
 *
 * @param count   ways listed
 * @param stopped the search was ended by whoever asked
 */
export function listEnd(between: Between, by: Axis, list: ListEnd, count: number, stopped = false): readonly string[] {
  const thinned = list.apart === undefined ? '' : `, at least ${counted(list.apart, 'step')} apart,`
  const reorders = by === 'yield' || by === 'hazard'
  const bound = list.bound === undefined ? null : boundText(between, by, list.bound)
  const all = count === 1 ? 'This is the only way there is' : `These are all ${counted(count, 'way')} there are`
  const first = list.complete
    ? `${all}${thinned.replace(/,$/, '')}.`
    : `${capital(counted(count, 'way'))}${thinned} ${count === 1 ? 'is' : 'are'} listed; ${stopped ? 'the search was stopped, and there may be others' : 'there are more'}${bound === null ? '' : `, and none that is not listed can ${bound}`}.`
  return [first, ...surenessOf(list, reorders, by, count), ...tieText(list)]
}

function surenessOf({ complete, proven, best }: ListEnd, reorders: boolean, by: Axis, count: number): readonly string[] {
  if (reorders && !complete && !proven)
    return [`They stand by ${axisWords[by]} among those that were looked at; one that was not may come before them.`]
  if (!best.proven)
    return [
      best.atMostAbovePercent === null
        ? `That the first is the best by ${axisWords[by]} is not proven.`
        : `The first is not proven the best by ${axisWords[by]}; it is at most ${numberText(best.atMostAbovePercent, 2, 1)} % above the proven bound.`,
    ]
  if (count === 1) return []
  return [
    proven
      ? `Their order by ${axisWords[by]} is proven.`
      : `The first is proven the best by ${axisWords[by]}; later ones are the best that were found.`,
  ]
}

const tieText = ({ tiesInOrder }: ListEnd): readonly string[] =>
  tiesInOrder ? [] : ['Very many ways have one value: among them the order by fewer steps was given up.']

/** "No other way beats three of these on start needed, hands-on time and hazard at once". */
export function unbeatenText(axes: readonly Axis[], exact: boolean, count: number): string {
  const on = listed(axes.map(axis => axisWords[axis]))
  const many = capital(counted(count, 'way'))
  return exact
    ? `${many} ${count === 1 ? 'is' : 'are'} unbeaten on ${on} together: no other is nowhere worse and somewhere better.`
    : `${many} ${count === 1 ? 'is' : 'are'} unbeaten on ${on} together, among those that were looked at; others may beat ${count === 1 ? 'it' : 'them'}.`
}
