import type { HazardCounts } from '../hazards/hazard-list.ts'
import type { Library } from '../library/library.ts'
import type { RouteChoice } from '../plan/route-choice.ts'
import { numberText, percentText } from '../quantity/print.ts'
import { axisWords } from './list-end.ts'
import { nameIn } from './names.ts'
import { capital, counted, inWords, listed, lowerFirst } from './words.ts'

/** More alternatives than this are counted. */
const mostNamed = 3
/** More steps than this tell a way from another no better. */
const mostTelling = 2

/**
 * Whether the way to a goal is the best there is, and which others nothing beats: what a reader of the print has to know of the choice.
 *
 * @param steps transformation ids of the chosen way
 */
export function choiceText(library: Library, choice: RouteChoice, steps: readonly string[]): string {
  return [placeText(library, choice), unbeatenOthers(library, choice, new Set(steps))].filter(text => text !== '').join(' ')
}

function placeText(library: Library, choice: RouteChoice): string {
  const { target, by, place, listed: count, complete } = choice
  const name = capital(nameIn(library)(target))
  const axis = axisWords[by]
  if (place === null) return `${name}: the way taken is none of the ${counted(count, 'way')} found under what is asked for.`
  if (complete && count === 1) return `${name}: the way taken is the only one there is under what is asked for.`
  const among = complete ? `all ${counted(count, 'way')}` : `the ${counted(count, 'way')} listed of more`
  if (place > 1) return `${name}: by ${axis} the way taken is number ${place} of ${among}; ${firstText(choice, 'the first')}.`
  return `${name}: by ${axis} the way taken is the first of ${among}; ${firstText(choice, 'it')}.`
}

function firstText({ bestProven, atMostAbovePercent }: RouteChoice, it: string): string {
  if (bestProven) return `${it} is proven the best`
  return atMostAbovePercent === null
    ? `that ${it} is the best is not proven`
    : `${it} is not proven the best, and at most ${numberText(atMostAbovePercent, 2, 1)} % above the proven bound`
}

function unbeatenOthers(library: Library, { axes, exact, unbeaten, others, place }: RouteChoice, own: ReadonlySet<string>): string {
  if (axes.length === 0 || place === null) return ''
  const on = `On ${listed(axes.map(axis => axisWords[axis]))} together`
  const sure = exact ? '' : ', among the ways that were looked at'
  if (others.length === 0) return unbeaten ? `${on} no other way is unbeaten${sure}.` : ''
  const named = others.slice(0, mostNamed).map(other => {
    const told = other.steps.filter(id => !own.has(id)).map(id => lowerFirst(library.transformations.get(id)?.name ?? id))
    const steps = told.length === 0 ? 'fewer of these steps' : listed(told.slice(0, mostTelling))
    return `${steps} (${percentText(other.overallYieldOnStart)} on start; hazard ${hazardText(other.hazard)})`
  })
  const more = others.length - named.length
  const all = [...named, ...(more > 0 ? [`${inWords(more)} more`] : [])]
  const verdict = unbeaten ? 'nothing beats it, nor' : 'it is beaten; not so'
  return `${on}${sure} ${verdict} ${all.length === 1 ? 'the way' : 'the ways'} by ${all.join('; ')}.`
}

function hazardText(counts: HazardCounts): string {
  const parts = (['gravest', 'unknown', 'danger', 'warning'] as const)
    .filter(name => counts[name] > 0)
    .map(name => `${counts[name]} ${name}`)
  return parts.length === 0 ? 'none assigned' : parts.join(', ')
}
