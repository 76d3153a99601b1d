import { capital, counted, inWords, listed } from '../../core/report/words.ts'
import { conditionsOf } from '../map/conditions.ts'
import { spoken } from '../map/scheme/runs.ts'
import type { Item } from '../map/scheme/types.ts'
import { nameOf, wayName } from '../state/names.ts'
import { facts, waysTo } from '../state/questions.ts'
import { plan } from '../state/store.ts'
import { wayAnswer } from './way-answer.ts'

/** More steps than this tell a way from others no better. */
export const mostTelling = 2

/** The steps by which a way is told from the others, as a chemist would say them: reagent and equivalents. */
export function wayItems(steps: readonly string[]): readonly Item[] {
  const { library } = facts.value
  return steps.slice(0, mostTelling).flatMap(id => {
    const transformation = library.transformations.get(id)
    if (transformation === undefined) return [[{ t: wayName(id) }]]
    const brief = conditionsOf(library, transformation, new Set([transformation.limiting])).brief
    return brief.length > 0 ? [brief[0]!] : [[{ t: wayName(id) }]]
  })
}

/** A way in a sentence: what its names say after "A to B,", or, where they say nothing, its telling reagents. */
export function wayText(steps: readonly string[]): string {
  const { library } = facts.value
  const told = steps.map(wayName).filter((name, at) => name !== library.transformations.get(steps[at] ?? '')?.name)
  return told.length > 0 ? listed(told.slice(0, mostTelling)) : listed(wayItems(steps).map(spoken))
}

/** The answer to question 3, as clauses; empty where no goal is chosen. */
export function wayClauses(target: string): readonly string[] {
  const goal = plan.value.goals.find(one => one.target === target)
  if (goal === undefined) return []
  const rows = waysTo(target).map(way => way.row)
  const steps = goal.route.steps.map(step => step.transformation)
  if (rows.length <= 1)
    return [
      `${capital(counted(steps.length, 'step'))} to ${nameOf(target)};`,
      rows.length === 0 ? 'looking for others' : 'no other way is known',
    ]
  const answer = wayAnswer(steps, rows)
  return [
    `${capital(wayText(answer.chosen))}${answer.gentlest ? ', the gentlest way' : ''};`,
    answer.better === null
      ? `the best yield of ${inWords(answer.ways)} ways`
      : `${wayText(answer.better.steps)} gives ${answer.better.points.toFixed(1)} points more`,
  ]
}
