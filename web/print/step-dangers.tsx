import type { LabelledMaterial } from '../../core/hazards/hazard-list.ts'
import type { Marked } from '../../core/library/mark.ts'
import type { BenchSheet } from '../../core/report/bench-sheet.ts'
import { meetingBrief, meetingMark, severityText, sharedMeetings } from '../../core/report/hazard-sheet.ts'
import { nameIn } from '../../core/report/names.ts'
import { degrees, listed, lowerFirst, sentence } from '../../core/report/words.ts'
import { MarkSign } from '../parts/mark.tsx'
import { SmallLabel } from './hazard-label.tsx'
import type { PackProps } from './pack-props.ts'

/** Told in full; rules about a kind of step only by their titles, notes in the hazard list alone. */
export const isTold = (meeting: BenchSheet['meetings'][number]): boolean => meeting.severity !== 'note' && !meeting.general

/** What can hurt in the step: its notes, what meets what, and a small label of each material. */
export function StepDangers({ sheet, library, record }: PackProps & { readonly sheet: BenchSheet; readonly record: Marked }) {
  // Rules about a kind of step are told in full once, in the hazard list; here their titles remind of them.
  const kinds = sheet.meetings.filter(meeting => meeting.general && meeting.severity === 'never')
  const general = kinds.map(meeting => lowerFirst(degrees(meeting.title)))
  const labelled = sheet.materials.filter(material => material.class !== 'none')
  const charged = new Set(sheet.charge.map(row => row.material))
  const comesOf = ({ material, as }: LabelledMaterial): string =>
    charged.has(material) ? '' : as.includes('gas') ? ' (given off here)' : as.includes('by-product') ? ' (a by-product here)' : ''
  const none = sheet.materials
    .filter(material => material.class === 'none')
    .map(material => `${nameIn(library)(material.material)}${comesOf(material)}`)
  return (
    <>
      <h2>
        What can hurt in step {sheet.number}
        <MarkSign of={record} />
      </h2>
      <div class="s">
        {sheet.dangers.length > 0 && (
          <p data-mark={record.mark}>
            {sheet.dangers.map((text, at) => (
              <span key={text}>
                {at > 0 && ' '}
                {text}
              </span>
            ))}
          </p>
        )}
        {sharedMeetings(sheet.meetings.filter(isTold)).map(({ meeting }, at) => (
          <p key={`${meeting.title}${at}`} data-mark={meetingMark(meeting).mark}>
            <b>
              {severityText(meeting)}: {sentence(meeting.title)}
            </b>{' '}
            {meetingBrief(library, meeting)}
            <MarkSign of={meetingMark(meeting)} />
          </p>
        ))}
        {general.length > 0 && (
          <p data-mark={kinds.map(meetingMark).find(one => one.mark === 'remembered')?.mark ?? meetingMark(kinds[0]!).mark}>
            <b>Never here, as the hazard list tells:</b> {general.join('; ')}.
          </p>
        )}
      </div>
      <div class="hz-two">
        {labelled.map(material => (
          <SmallLabel library={library} material={material} where={comesOf(material)} key={material.material} />
        ))}
      </div>
      {none.length > 0 && <p class="s soft">No hazard class assigned, with a source: {listed(none)}.</p>}
    </>
  )
}
