import { icalendarOf } from '../../core/days/icalendar.ts'
import { planCsv } from '../../core/report/csv.ts'
import { planText } from '../../core/report/text.ts'
import { fileOfPlan } from '../state/plan-file.ts'
import { planFileName } from '../state/plan-title.ts'
import { facts, waysTo } from '../state/questions.ts'
import { standing } from '../state/reckoner.ts'
import { saved } from '../state/saving.ts'
import { plan, sheet } from '../state/store.ts'
import { choicesTold } from './choice-told.ts'
import { isYours } from './yours.ts'

/** Own steps of the ways beside the chosen ones: they would else be lost on a machine whose library does not hold them. */
function comparedSteps(): readonly string[] {
  const { transformations } = facts.value.library
  return plan.value.goals
    .flatMap(goal => waysTo(goal.target).flatMap(way => way.row.steps))
    .filter(id => {
      const step = transformations.get(id)
      return step !== undefined && isYours(step)
    })
}

/** The plan as files for other programs: itself, a table, plain text, a calendar. */
export function TakeAway() {
  const { evaluation } = standing.value
  if (evaluation === null) return null
  const { library } = facts.value
  const of = plan.value
  const calendar = icalendarOf(library, evaluation.days, saved.value?.id ?? 'plan', of.title, new Date().toISOString())
  return (
    <p class="take-away dos s">
      <span class="soft">As a file:</span>
      <Take
        name={planFileName(of.title, 'json')}
        type="application/json"
        text={() => JSON.stringify(fileOfPlan(sheet.value, facts.value, comparedSteps()), null, 2)}
      >
        the plan
      </Take>
      <Take name={planFileName(of.title, 'csv')} type="text/csv" text={() => planCsv(library, of, evaluation)}>
        a table
      </Take>
      <Take name={planFileName(of.title, 'txt')} type="text/plain" text={() => planText(library, of, evaluation, choicesTold())}>
        plain text
      </Take>
      {calendar !== null && (
        <Take name={planFileName(`${of.title} days`, 'ics')} type="text/calendar" text={() => calendar}>
          the days for a calendar
        </Take>
      )}
    </p>
  )
}

interface TakeProps {
  readonly name: string
  readonly type: string
  readonly text: () => string
  readonly children: string
}

/** One file of its own. */
export const Take = ({ name, type, text, children }: TakeProps) => (
  <button
    type="button"
    class="do"
    onClick={() => {
      const link = document.createElement('a')
      link.href = URL.createObjectURL(new Blob([text()], { type: `${type};charset=utf-8` }))
      link.download = name
      link.click()
      // The browser has begun to read it by then.
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
    }}
  >
    {children}
  </button>
)
