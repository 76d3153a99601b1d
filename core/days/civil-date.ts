/**
 * Dates as people write them on a wall, without a clock and without time zones: a day is a number, 0 = 1970-01-01.
 * Source of the two conversions: H. Hinnant, "chrono-compatible low-level date algorithms" (days_from_civil, civil_from_days); tested
 * against the platform's own calendar.
 */

const daysPerEra = 146_097

/**
 * The day of a date.
 *
 * @param iso `YYYY-MM-DD`
 * @returns null for what is no date of the calendar: "2026-02-30", "tomorrow"
 * @example dayOf('1970-01-02') // 1
 */
export function dayOf(iso: string): number | null {
  const read = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso)
  if (read === null) return null
  const [year, month, date] = [Number(read[1]), Number(read[2]), Number(read[3])]
  if (month < 1 || month > 12 || date < 1) return null
  // The year begins in March, so that the leap day is its last.
  const shifted = month > 2 ? year : year - 1
  const era = Math.floor(shifted / 400)
  const yearOfEra = shifted - era * 400
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + date - 1
  const day = era * daysPerEra + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719_468
  return dateOf(day) === iso ? day : null
}

/** The date of a day, `YYYY-MM-DD`. */
export function dateOf(day: number): string {
  const shifted = day + 719_468
  const era = Math.floor(shifted / daysPerEra)
  const dayOfEra = shifted - era * daysPerEra
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const monthFromMarch = Math.floor((5 * dayOfYear + 2) / 153)
  const date = dayOfYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1
  const month = monthFromMarch < 10 ? monthFromMarch + 3 : monthFromMarch - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(date)}`
}

/** 1 = Monday to 7 = Sunday. 1970-01-01 was a Thursday. */
export const weekdayOf = (day: number): number => ((((day + 3) % 7) + 7) % 7) + 1

/**
 * Wall time so many hours after midnight of a day, to the minute: `2026-12-03T18:30`. The hour that summer time takes or gives is not
 * reckoned: a bench window stands where the wall clock says.
 */
export function wallTime(day: number, hours: number): string {
  const minutes = Math.round(hours * 60)
  const inDay = ((minutes % 1440) + 1440) % 1440
  return `${dateOf(day + Math.floor(minutes / 1440))}T${two(Math.floor(inDay / 60))}:${two(inDay % 60)}`
}

const two = (value: number): string => String(value).padStart(2, '0')
