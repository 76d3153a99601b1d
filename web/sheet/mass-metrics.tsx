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
      <table class="t metrics">
        <thead>
          <tr>
            <th>of</th>
            {metricColumns.map(column => (
              <th class="n" key={column.which}>
                {column.short}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {metricsSheetOf(evaluation).map(row => {
            const names = metricColumns.map(({ which }) => figureOf({ of: 'metric', which, step: row.transformation }))
            const of = row.step === null ? 'the whole plan' : made(row.step)
            return [
              <tr key={row.step ?? 'all'}>
                <th scope="row" class={row.step === null ? '' : 'plain'}>
                  {row.step === null ? of : `${row.step} ${of}`}
                </th>
                {metricColumns.map(({ which, name }, at) => (
                  <td class="n" key={which}>
                    {row.figures[which] === null ? (
                      <Unknown>none</Unknown>
                    ) : (
                      <Figure name={names[at]!} label={`${name} of ${of}`}>
                        {row.figures[which]}
                      </Figure>
                    )}
                  </td>
                ))}
              </tr>,
              ...names.map(name => <WorkingRow name={name} span={metricColumns.length + 1} key={name} />),
            ]
          })}
        </tbody>
      </table>
      <p class="s soft">{metricsNote}</p>
    </details>
  )
}
