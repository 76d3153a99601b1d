import type { Evaluation } from '../../core/plan/evaluation.ts'
import { metricColumns, metricsNote, metricsSheetOf } from '../../core/report/metrics-sheet.ts'

/** Mass metrics of the plan and of each step. */
export function MetricsTable({ evaluation, nameOf }: { readonly evaluation: Evaluation; readonly nameOf: (id: string) => string }) {
  const made = (step: string): string => nameOf(evaluation.steps.find(one => one.number === step)?.makes ?? '')
  return (
    <section data-mark="reckoned">
      <h2>Mass metrics</h2>
      <table class="t">
        <thead>
          <tr>
            <th>of</th>
            {metricColumns.map(({ which, short }) => (
              <th class="n" key={which}>
                {short}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {metricsSheetOf(evaluation).map(row => (
            <tr key={row.step ?? 'all'}>
              <td>{row.step === null ? 'the whole plan' : `${row.step} ${made(row.step)}`}</td>
              {metricColumns.map(({ which }) => (
                <td class="n" key={which}>
                  {row.figures[which] ?? '–'}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p class="s soft">{metricsNote}</p>
    </section>
  )
}
