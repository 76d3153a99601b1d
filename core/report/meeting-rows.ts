import type { Meeting } from '../hazards/hazard-list.ts'
import type { Library } from '../library/library.ts'
import { conditionsText, type SharedMeeting, severityText, togetherText } from './hazard-sheet.ts'
import { nameIn } from './names.ts'
import { capital, listed, sentence } from './words.ts'

/** Meetings that ask for the same: what to do is said once, after all of them. */
export interface MeetingRow {
  /** "With care, keep them in separate cabinets, for three days of this plan", or severity and place. */
  readonly head: string
  readonly text: string
}

/** What is said of two groups where nothing better is known; it tells nothing, and is left out of a list. */
const usual = 'Leaks and vapours would meet.'

/**
 * Meetings of a cabinet or of a waste bottle as rows, those with one severity, one place and one thing to do together. In a cabinet notes
 * that ask for no more than a tray are one row.
 */
export function meetingRows(library: Library, shared: readonly SharedMeeting[]): readonly MeetingRow[] {
  const rows = new Map<string, [SharedMeeting, ...SharedMeeting[]]>()
  for (const one of shared) {
    const { meeting } = one
    const key = [
      meeting.severity,
      meeting.intended,
      one.places,
      meeting.do,
      meeting.where === 'storage' && asks(meeting) ? meeting.days : '',
    ].join('|')
    const row = rows.get(key)
    if (row) row.push(one)
    else rows.set(key, [one])
  }
  return [...rows.values()].map(row => {
    const { meeting, places } = row[0]
    if (meeting.where !== 'storage')
      return {
        head: `${severityText(meeting)}, ${places}.`,
        text: `${row.map(one => wasteText(library, one.meeting)).join(' ')} ${sentence(meeting.do)}`,
      }
    const pairs = row.map(one => storageText(one.meeting)).join('; ')
    return {
      head: `${severityText(meeting)}: ${sentence(meeting.do)}${asks(meeting) ? togetherText(meeting) : ''}`,
      text: `${pairs}.`,
    }
  })
}

/** A note on a cabinet asks for a tray, however long they stand there. */
const asks = ({ severity }: Meeting): boolean => severity !== 'note'

function storageText({ title, consequence }: Meeting): string {
  const why = consequence === usual ? '' : ` (${consequence.replace(/\.$/, '')})`
  return `${title}${why}`
}

function wasteText(library: Library, meeting: Meeting): string {
  const names = capital(listed(meeting.materials.map(nameIn(library))))
  return `${sentence(meeting.title)} ${names}: ${sentence(meeting.consequence)}${conditionsText(meeting)}`
}
