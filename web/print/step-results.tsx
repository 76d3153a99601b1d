import type { Marked } from '../../core/library/mark.ts'
import { massText } from '../../core/quantity/print.ts'
import type { BenchSheet } from '../../core/report/bench-sheet.ts'
import { Marked as MarkedFigure } from '../parts/mark.tsx'
import { Blank, Tick } from './parts.tsx'

/** So many batches get a line of results each. */
const mostResults = 6

/** Blanks for what was weighed and how it melts, a line a batch. */
export function StepResults({ sheet }: { readonly sheet: BenchSheet }) {
  const lines = sheet.batches <= mostResults ? Math.max(1, sheet.batches) : 1
  return (
    <section class="keep" data-mark="reckoned">
      <h2>
        Result{' '}
        <span class="s soft plain">
          {lines > 2 && sheet.theoryG !== null && `in % of ${massText(sheet.theoryG)}, the theory of a batch; `}above 100 %: wet or
          mis-weighed? Weigh again before the next step.
        </span>
      </h2>
      <div class={lines > 2 ? 'results' : undefined}>
        {Array.from({ length: lines }, (_, at) => (
          <p class="res" key={at}>
            <span>
              {lines > 1 ? `batch ${at + 1}: ` : ''}
              {lines > 2 ? '' : 'weighed '}
              <Blank mm={lines > 2 ? 14 : 20} /> g
            </span>
            <span>
              <Tick /> damp <Tick /> dry
            </span>
            {sheet.theoryG !== null && (
              <span>
                {lines > 2 ? '' : `÷ ${massText(sheet.theoryG)} `}= <Blank mm={lines > 2 ? 11 : 14} /> %
              </span>
            )}
            {sheet.melting !== null && at === 0 && lines <= 2 && <Melting library={sheet.melting} sure={sheet.meltingSure} />}
          </p>
        ))}
      </div>
      {sheet.melting !== null && lines > 2 && (
        <p class="res">
          <Melting library={sheet.melting} sure={sheet.meltingSure} />
        </p>
      )}
    </section>
  )
}

const Melting = ({ library, sure }: { readonly library: string; readonly sure: Marked | null }) => (
  <span>
    melts at <Blank mm={14} /> °C, library {sure === null ? library : <MarkedFigure of={sure}>{library}</MarkedFigure>}
  </span>
)
