import type { Library } from '../library/library.ts'
import type { Evaluation } from '../plan/evaluation.ts'
import type { Plan } from '../plan/plan.ts'
import { massText, percentText } from '../quantity/print.ts'
import { spreadText } from './answers.ts'
import { metricColumns, metricsNote, metricsSheetOf } from './metrics-sheet.ts'
import { nameIn } from './names.ts'
import { groupsSentence, medianAndTypical, outsideSpread, startSentence } from './start-sentence.ts'
import { columns, heading, wrapped } from './text-layout.ts'

/** The goals with their spread, both hands, and what to start from. */
export function goalLines(library: Library, { settings }: Plan, evaluation: Evaluation): readonly string[] {
  const { goals: rows, start, chanceAll, coProducts } = evaluation
  const nameOf = nameIn(library)
  const table = columns(
    [
      'goal',
      'median',
      'P10–P90 g',
      'at typical yields',
      settings.hand === 'practised' ? 'first attempts' : 'practised hand',
      'yield on start',
      'longest chain',
      'chance',
    ],
    rows.map(goal => [
      nameOf(goal.target),
      massText(goal.medianG),
      spreadText(goal.p10G, goal.p90G),
      massText(goal.expectedG),
      massText(goal.otherHandG),
      percentText(goal.overallYieldOnStart),
      percentText(goal.longestLinearYield),
      goal.chance === null ? '' : percentText(goal.chance, 2),
    ]),
  )
  const used = `Takes ${massText(start.massG)} of ${nameOf(start.material)}${start.leftG > 0.0005 ? `; ${massText(start.leftG)} stays` : ''}.`
  return [
    heading('How much'),
    ...table,
    ...wrapped(`${medianAndTypical} ${outsideSpread}`, ''),
    used,
    ...(start.recoveryPercent === null
      ? []
      : [`The feedstock gives ${percentText(start.recoveryPercent / 100)} by mass; this is not multiplied into the yields.`]),
    ...(chanceAll === null || rows.length < 2 ? [] : [`All masses together: ${percentText(chanceAll, 2)} of the draws.`]),
    ...rows.flatMap(goal => {
      const told = groupsSentence(goal)
      return told === null ? [] : wrapped(`${nameOf(goal.target)}: ${told}`, '')
    }),
    ...wrapped(startSentence(library, evaluation) ?? '', ''),
    ...coProducts.map(one => `Also ${massText(one.expectedG)} of ${nameOf(one.compound)}, step ${one.step}.`),
  ]
}

/** The mass metrics as a table. */
export function metricLines(library: Library, evaluation: Evaluation): readonly string[] {
  const nameOf = nameIn(library)
  const made = (step: string): string => nameOf(evaluation.steps.find(one => one.number === step)?.makes ?? '')
  return [
    heading('Mass metrics'),
    ...columns(
      ['', ...metricColumns.map(column => column.short)],
      metricsSheetOf(evaluation).map(row => [
        row.step === null ? 'the whole plan' : `${row.step} ${made(row.step)}`,
        ...metricColumns.map(({ which }) => row.figures[which] ?? '–'),
      ]),
    ),
    ...wrapped(metricsNote, ''),
  ]
}
