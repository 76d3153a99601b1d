import { type Library, transformationOf } from '../library/library.ts'
import type { Booked, Days } from './days.ts'

/** Octets of one line, its break not counted. Source: RFC 5545 section 3.1. */
const mostOctets = 75

/**
 * The calendar of a plan as an iCalendar file (RFC 5545): one event a task, in floating local time, so that it stands on the wall clock of
 * whoever opens it. What only stands leaves its time free for others.
 *
 * @param planId   told apart from other plans' events; letters, digits and hyphens
 * @param title    name of the calendar
 * @param stampUtc when the file was made, `YYYY-MM-DDTHH:MM:SSZ`
 * @returns the text with CRLF; null where the plan has no dates
 */
export function icalendarOf(library: Library, days: Days, planId: string, title: string, stampUtc: string): string | null {
  if (days.startDate === null || days.booked.length === 0) return null
  const stamp = stampUtc.replace(/[-:]/g, '').replace(/\.\d+/, '')
  const events = days.booked.flatMap((entry, index) => eventOf(library, entry, `${planId}-${index + 1}@waybench`, stamp))
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Waybench//Bench calendar//EN',
    'CALSCALE:GREGORIAN',
    `X-WR-CALNAME:${escaped(title)}`,
    ...events,
    'END:VCALENDAR',
  ]
    .map(line => `${folded(line)}\r\n`)
    .join('')
}

function eventOf(library: Library, entry: Booked, uid: string, stamp: string): readonly string[] {
  // An event must end after it begins (section 3.6.1); what takes no minute has no place in a calendar.
  if (entry.start === null || entry.end === null || entry.start === entry.end) return []
  const name = transformationOf(library, entry.step).name
  const batch = entry.batch > 1 ? `, batch ${entry.batch}` : ''
  const alone = entry.kind === 'stand' && entry.window === null ? ' Stands with nobody there: put up the notice.' : ''
  return [
    'BEGIN:VEVENT',
    `UID:${uid}`,
    `DTSTAMP:${stamp}`,
    `DTSTART:${localTime(entry.start)}`,
    `DTEND:${localTime(entry.end)}`,
    `SUMMARY:${escaped(`${entry.do} (${name}${batch})`)}`,
    `DESCRIPTION:${escaped(`${kinds[entry.kind]}${alone}`)}`,
    `TRANSP:${entry.kind === 'stand' ? 'TRANSPARENT' : 'OPAQUE'}`,
    'END:VEVENT',
  ]
}

const kinds: Readonly<Record<Booked['kind'], string>> = {
  hands: 'Hands: needs a person.',
  watch: 'Watch: somebody stays in the room.',
  stand: 'Stands alone.',
}

/** `2026-12-03T18:30` as `20261203T183000`: a date with local time, form 1 of section 3.3.5. */
const localTime = (wall: string): string => `${wall.replace(/[-:]/g, '')}00`

/** Text as section 3.3.11 wants it: backslash, semicolon, comma and line break escaped; other control characters left out. */
export function escaped(text: string): string {
  return text
    .replace(/\\/g, '\\\\')
    .replace(/;/g, '\\;')
    .replace(/,/g, '\\,')
    .replace(/\r\n|\r|\n/g, '\\n')
    .replace(/\p{Cc}/gu, ' ')
}

/** One content line, folded so that no line has more than 75 octets and no character is torn (section 3.1). */
export function folded(line: string): string {
  const lines: string[] = []
  let current = ''
  let octets = 0
  for (const character of line) {
    const size = octetsOf(character)
    if (octets + size > mostOctets) {
      lines.push(current)
      // The blank that opens a continuation counts.
      current = ' '
      octets = 1
    }
    current += character
    octets += size
  }
  return [...lines, current].join('\r\n')
}

/** Octets of a character in UTF-8. */
function octetsOf(character: string): number {
  const code = character.codePointAt(0)!
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
}
