import type { Library } from '../library/library.ts'
import { isWanted, type WantedMark } from '../library/mark.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import type { Plan } from '../plan/plan.ts'
import { markText } from './marks.ts'
import { type PlanFigure, planFigures } from './plan-figures.ts'
import { heading, wrapped } from './text-layout.ts'
import { capital } from './words.ts'

/** "Of the 140 figures that this plan rests on 61 were seen in a source." */
export function restsOn(figures: readonly PlanFigure[]): string {
  const seen = figures.filter(one => one.mark === 'seen').length
  return `Of the ${figures.length} figures that this plan rests on ${seen} were seen in a source.`
}

/** The figures that a plan rests on and that are so sure, a line each, with where they come from; all of them where nothing is wanted. */
export function figureLines(library: Library, plan: Plan, evaluation: Evaluation, wanted: WantedMark | 'all'): readonly string[] {
  const figures = planFigures(library, plan, evaluation)
  const shown = wanted === 'all' ? figures : figures.filter(one => isWanted(wanted, one.mark))
  const places = [...new Set(shown.map(one => one.place))]
  return [
    heading('What the figures rest on'),
    restsOn(figures),
    ...places.flatMap(place => [
      capital(place),
      ...shown
        .filter(one => one.place === place)
        .flatMap(one => wrapped(`${one.of}, ${one.figure} ${one.value}: ${markText(one)}`, '  - ')),
    ]),
  ]
}
