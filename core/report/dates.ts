import { dayOf, weekdayOf } from '../days/civil-date.ts'
import { noBreakSpace } from '../quantity/print.ts'

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']
const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun']

/**
 * "15 Dec" of an ISO date or wall time, with the day of the week before it where asked; the same on every machine, no locale asked. What is
 * no date comes back as it is.
 */
export function shortDate(iso: string, withWeekday = false): string {
  const day = dayOf(iso.slice(0, 10))
  if (day === null) return iso
  const [, month = 1, date = 1] = iso.slice(0, 10).split('-').map(Number)
  return `${withWeekday ? `${weekdays[weekdayOf(day) - 1]}${noBreakSpace}` : ''}${date}${noBreakSpace}${months[month - 1]}`
}

/** "3 Dec 2026". */
export const longDate = (iso: string): string =>
  dayOf(iso.slice(0, 10)) === null ? iso : `${shortDate(iso)}${noBreakSpace}${Number(iso.slice(0, 4))}`

/** "Tue 1 Dec, 18:30" of a wall time. */
export const dateAndTime = (iso: string): string => `${shortDate(iso, true)}${iso.length >= 16 ? `, ${iso.slice(11, 16)}` : ''}`
