import type { Meeting } from '../../core/hazards/hazard-list.ts'
import { meetingMark, severityText, sharedMeetings, togetherText } from '../../core/report/hazard-sheet.ts'
import { capital, counted, listed, sentence } from '../../core/report/words.ts'
import { MarkLegend, MarkSign } from '../parts/mark.tsx'
import { nameOf } from '../state/names.ts'

/** What may not meet. Inside the steps it stands open; cabinet, waste and mere notes are one press away, and all of it is in print. */
export function Meetings({ of }: { readonly of: readonly Meeting[] }) {
  if (of.length === 0) return null
  const inSteps = of.filter(meeting => meeting.where === 'step')
  const serious = inSteps.filter(meeting => meeting.severity !== 'note')
  const folded = [
    ['noted in the steps', inSteps.filter(meeting => meeting.severity === 'note')],
    ['in the cabinet', of.filter(meeting => meeting.where === 'storage')],
    ['in the waste', of.filter(meeting => meeting.where === 'waste')],
  ] as const
  return (
    <div>
      <h3>May not meet</h3>
      <MeetingList of={serious} />
      {folded.map(([where, meetings]) =>
        meetings.length === 0 ? null : (
          <details class="more-of" key={where}>
            <summary>
              {capital(counted(sharedMeetings(meetings).length, 'more', 'more'))} {where}
            </summary>
            <MeetingList of={meetings} />
          </details>
        ),
      )}
      <MarkLegend used={of.map(meeting => meetingMark(meeting).mark)} />
    </div>
  )
}

/** What a meeting is meant under, and what the reader has to ask; a condition is never taken as met. */
function conditionsText({ conditions }: Meeting): string {
  const asked = conditions.filter(condition => condition.endsWith('?'))
  const told = conditions.filter(condition => !condition.endsWith('?'))
  return [told.length > 0 ? sentence(`Only so: ${told.join('; ')}`) : '', ...asked].filter(text => text !== '').join(' ')
}

function MeetingList({ of }: { readonly of: readonly Meeting[] }) {
  if (of.length === 0) return null
  return (
    <ul class="plain-list">
      {sharedMeetings(of).map(({ meeting, places }, at) => (
        <li key={`${meeting.title}${at}`}>
          <b>
            {severityText(meeting)}: {meeting.title}.
          </b>{' '}
          {meeting.where === 'step' ? `${capital(places)}: ` : ''}
          {listed(meeting.materials.map(nameOf))}. {sentence(meeting.consequence)} {sentence(meeting.do)}
          {togetherText(meeting)} <span class="soft">{conditionsText(meeting)}</span>
          <MarkSign of={meetingMark(meeting)} />
        </li>
      ))}
    </ul>
  )
}
