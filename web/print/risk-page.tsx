import { massText } from '../../core/quantity/print.ts'
import { longDate } from '../../core/report/dates.ts'
import { nameIn } from '../../core/report/names.ts'
import { riskRows } from '../../core/report/risk-assessment.ts'
import { counted } from '../../core/report/words.ts'
import { Name } from '../parts/words.tsx'
import type { PackProps } from './pack-props.ts'
import { Blank, Leaf } from './parts.tsx'

const blankRows = 2

/** One assessment for the whole plan, proposals filled in; left for the reader to complete, date and sign. */
export function RiskPage({ library, plan, evaluation, today }: PackProps) {
  const { start, steps } = evaluation
  return (
    <Leaf title="Risk assessment, for the reader to complete and sign">
      <p data-mark="reckoned">
        For all that this plan uses and makes, at its scale: {massText(start.massG)} of {nameIn(library)(start.material)},{' '}
        {counted(steps.length, 'step')}
        {plan.settings.bench === '' ? '' : `, at ${plan.settings.bench}`}. Proposals, drawn up {longDate(today)}: correct them, fill the
        blanks, sign.
      </p>
      <section class="keep">
        <h2>Who may do it</h2>
        <p class="res">
          <span>
            age and training <Blank mm={44} />
          </span>
          <span>
            supervised by <Blank mm={40} />
          </span>
        </p>
        <h2>Signed</h2>
        <div class="signs">
          {['assessed by', 'date', 'checked by', 'date', 'head of the bench', 'review on'].map((what, at) => (
            <span key={`${what}${at}`}>
              <Blank />
              {what}
            </span>
          ))}
        </div>
      </section>
      <table class="t ra" data-mark="reckoned">
        <thead>
          <tr>
            <th>Hazard</th>
            <th>Who, and how</th>
            <th>Control</th>
            <th>In an emergency</th>
            <th>What remains</th>
          </tr>
        </thead>
        <tbody>
          {riskRows(library, evaluation).map(row => (
            <tr key={row.subject}>
              <td colSpan={row.ofStep ? 2 : 1}>
                <b>
                  <Name text={row.subject} />
                </b>
                : {row.hazard} {row.ofStep && `${row.who}.`}
              </td>
              {!row.ofStep && <td>{row.who}</td>}
              <td>{row.control === '' ? <WriteIn /> : row.control}</td>
              <td>{row.emergency === '' ? <WriteIn /> : row.emergency}</td>
              <td>
                <WriteIn />
              </td>
            </tr>
          ))}
          {Array.from({ length: blankRows }, (_, at) => (
            <tr class="blank-row" key={at}>
              <td />
              <td />
              <td />
              <td />
              <td />
            </tr>
          ))}
        </tbody>
      </table>
    </Leaf>
  )
}

const WriteIn = () => (
  <>
    <Blank />
    <Blank />
  </>
)
