import { usedText } from '../../core/report/breach-text.ts'
import { capital, counted, inWords, listed } from '../../core/report/words.ts'
import { conditionsOf } from '../map/conditions.ts'
import { mapName } from '../map/map-name.ts'
import { spoken } from '../map/scheme/runs.ts'
import type { Item } from '../map/scheme/types.ts'
import { breachBy } from '../state/breach.ts'
import { factsAsked } from '../state/facts-asked.ts'
import { facts } from '../state/facts-here.ts'
import { nameOf, wayName } from '../state/names.ts'
import { routesTo } from '../state/route-lists.ts'
import { keyOfSteps } from '../state/routes-of.ts'
import { plan } from '../state/store.ts'
import { waysTo } from '../state/ways.ts'
import { saysNoWay } from './no-way.tsx'
import { wayAnswer } from './way-answer.ts'
import { barredWay } from './way-barred.ts'
import { isYours } from './yours.ts'

/** More steps than this tell a way from others no better. */
export const mostTelling = 2

/** Roles of the line that a step is called by. */
const telling = new Set(['oxidant', 'reductant', 'reagent', 'base', 'acid', 'catalyst'])

/** The steps by which a way is told from the others, as a chemist would say them: reagent and equivalents. */
export function wayItems(steps: readonly string[]): readonly Item[] {
  const { library } = facts.value
  return steps.slice(0, mostTelling).flatMap(id => {
    const transformation = library.transformations.get(id)
    if (transformation === undefined) return [[{ t: wayName(id) }]]
    const brief = conditionsOf(library, transformation, new Set([transformation.limiting])).brief
    const item: Item = brief.length > 0 ? brief[0]! : [{ t: wayName(id) }]
    return [isYours(transformation) ? [...item, { t: ' (yours)' }] : item]
  })
}

/** A way in a sentence: what its names say after "A to B,"; where they say nothing, what it goes through, or the one reagent that tells it. */
export function wayText(steps: readonly string[]): string {
  const { library } = facts.value
  const named = steps.flatMap(id => library.transformations.get(id) ?? [])
  // Its reagent may be that of the library's way too.
  const yours = named.filter(isYours)
  if (yours.length > 0) return listed(yours.slice(0, mostTelling).map(step => `${step.name} (yours)`))
  const told = steps.map(wayName).filter((name, at) => name !== library.transformations.get(steps[at] ?? '')?.name)
  if (told.length > 0) return listed(told.slice(0, mostTelling))
  if (named.length > 1)
    return named
      .slice(0, mostTelling)
      .map(step => mapName(nameOf(step.mainProduct)))
      .join(', then ')
  const reagent = named[0]?.charge.find(line => telling.has(line.role))
  return reagent === undefined ? listed(wayItems(steps).map(spoken)) : mapName(nameOf(reagent.material))
}

/** The answer to question 3, as clauses; empty where no goal is chosen. */
export function wayClauses(target: string): readonly string[] {
  const goal = plan.value.goals.find(one => one.target === target)
  if (goal === undefined) return []
  const rows = waysTo(target).map(way => way.row)
  const steps = goal.route.steps.map(step => step.transformation)
  const { waiting, problems, answer } = routesTo(target)
  const breach = breachBy(steps)
  if (breach !== null) {
    const asked = listed(breach.asked)
    const found = waiting
      ? `Looking for ways without ${asked};`
      : rows.length > 0
        ? `${capital(counted(rows.length, 'way'))} without ${asked};`
        : problems.length > 0 && !saysNoWay(problems)
          ? `Ways without ${asked} could not be looked for;`
          : `No way without ${asked};`
    return [found, `the plan still uses ${usedText(breach.used)}`]
  }
  const chosen = `${capital(counted(steps.length, 'step'))} to ${nameOf(target)};`
  if (rows.length === 0)
    return [
      chosen,
      waiting || (problems.length === 0 && (answer === null || factsAsked.value.waiting))
        ? 'looking for others'
        : saysNoWay(problems)
          ? 'no way keeps to what is asked'
          : 'others could not be looked for',
    ]
  const listedHere = rows.some(row => keyOfSteps(row.steps) === keyOfSteps(steps))
  const barred = barredWay(steps, rows, nameOf, wayText)
  if (barred !== null) return barred
  if (rows.length === 1 && listedHere) return [chosen, 'no other way is known here']
  if (!listedHere)
    return [
      `${capital(wayText(steps.length > 1 ? steps.slice(0, 1) : steps))};`,
      rows.length === 1
        ? 'only another way keeps to what is asked'
        : `${rows.length === 2 ? 'neither' : 'none'} of the ${inWords(rows.length)} ways that keep to what is asked`,
    ]
  const told = wayAnswer(steps, rows)
  return [
    `${capital(wayText(told.chosen))}${told.gentlest ? ', the gentlest way' : ''};`,
    told.better === null
      ? `the best yield of ${inWords(told.ways)} ways`
      : `${wayText(told.better.steps)} gives ${told.better.points.toFixed(1)} points more`,
  ]
}
