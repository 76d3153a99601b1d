import { signal } from '@preact/signals'
import { icalendarOf } from '../../core/days/icalendar.ts'
import { missingSteps, stepMissing } from '../../core/plan/missing-steps.ts'
import type { Problem } from '../../core/problem/problem.ts'
import { planCsv } from '../../core/report/csv.ts'
import { planText } from '../../core/report/text.ts'
import { Problems } from '../parts/problem.tsx'
import { facts } from '../state/facts-here.ts'
import { fileOfPlan } from '../state/plan-file.ts'
import { planFileName } from '../state/plan-title.ts'
import { standing } from '../state/reckoner.ts'
import { saved } from '../state/saving.ts'
import { plan, sheet } from '../state/store.ts'
import { waysTo } from '../state/ways.ts'
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

/** Why the plan was not written the last time it was asked for; nothing of it is lost by that. */
const notWritten = signal<readonly Problem[]>([])

/** The plan as its file, or null where it cannot be written: why is then told. */
function planAsFile(): string | null {
  const missing = missingSteps(facts.value.library, plan.value)
  notWritten.value = missing.map(logMissing)
  return missing.length > 0 ? null : JSON.stringify(fileOfPlan(sheet.value, facts.value, comparedSteps()), null, 2)
}

/** The plan as files for other programs: itself, a table, plain text, a calendar. */
export function TakeAway() {
  const { evaluation } = standing.value
  if (evaluation === null) return null
  const { library } = facts.value
  const of = plan.value
  const calendar = icalendarOf(library, evaluation.days, saved.value?.id ?? 'plan', of.title, new Date().toISOString())
  return (
    <>
      <p class="take-away dos s">
        <span class="soft">As a file:</span>
        <Take name={planFileName(of.title, 'json')} type="application/json" text={planAsFile}>
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
      {notWritten.value.length > 0 && <Problems of={notWritten.value} />}
    </>
  )
}

/** The plan is whole on the sheet and in this browser; only a file could not be opened elsewhere. */
const logMissing = (id: string): Problem => ({
  ...stepMissing(id),
  why: 'A file without it could not be reckoned where it is opened. The plan and its bench log stay as they are here.',
  cure: `Write the record of "${id}" down again, or bring it in from a file that holds it (the library page, or an earlier file of this plan); then take the plan away. The table and the plain text can be had at once.`,
})

interface TakeProps {
  readonly name: string
  readonly type: string
  /** Null = it cannot be written, and that is told elsewhere. */
  readonly text: () => string | null
  readonly children: string
}

/** One file of its own. */
export const Take = ({ name, type, text, children }: TakeProps) => (
  <button
    type="button"
    class="do"
    onClick={() => {
      const written = text()
      if (written === null) return
      const link = document.createElement('a')
      link.href = URL.createObjectURL(new Blob([written], { type: `${type};charset=utf-8` }))
      link.download = name
      link.click()
      // The browser has begun to read it by then.
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000)
    }}
  >
    {children}
  </button>
)
