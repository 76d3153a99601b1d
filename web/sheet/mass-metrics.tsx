import type { Evaluation } from '../../core/plan/evaluation.ts'
import { metricColumns, metricsNote, metricsSheetOf } from '../../core/report/metrics-sheet.ts'
import { Figure, figureOf } from '../parts/figure.tsx'
import { Unknown } from '../parts/words.tsx'
import { WorkingRow } from '../parts/working.tsx'
import { nameOf } from '../state/names.ts'

/** Mass metrics of the plan and of each step; every figure opens its working with where it is defined. */
export function MassMetricsTable({ evaluation }: { readonly evaluation: Evaluation }) {
  const made = (step: string): string => nameOf(evaluation.steps.find(one => one.number === step)?.makes ?? '')
  return (
    <details class="more-of">
      <summary>Mass metrics: what goes in for what comes out</summary>
      {metricsSheetOf(evaluation).map(row => {
        const of = row.step === null ? 'The whole plan' : `Step ${row.step}, ${made(row.step)}`
        return (
          <table class="t metrics" key={of}>
            <caption>{of}</caption>
            <tbody>
              {metricColumns.map(({ which, name }) => {
                const figure = figureOf({ of: 'metric', which, step: row.transformation })
                const text = row.figures[which]
                // An EcoScale that has no form here is no unknown: it is left out.
                if (text === null && which === 'eco-scale') return null
                return [
                  <tr key={which}>
                    <th scope="row" class="plain">
                      {name}
                    </th>
                    <td class="n" data-mark="reckoned">
                      {text === null ? (
                        <Unknown>not defined</Unknown>
                      ) : (
                        <Figure name={figure} label={`${name}: ${of}`}>
                          {text}
                        </Figure>
                      )}
                    </td>
                  </tr>,
                  <WorkingRow name={figure} span={2} key={`${which} working`} />,
                ]
              })}
            </tbody>
          </table>
        )
      })}
      <p class="s soft">{metricsNote}</p>
    </details>
  )
}
