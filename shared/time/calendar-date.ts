const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

/**
 * "Thursday 26 August 2027": a calendar date, which has no zone.
 *
 * @param date - ISO date, `2027-08-26`; anything after the day is left aside
 */
export function sayDate(date: string): string {
  const [year = 0, month = 1, day = 1] = date.slice(0, 10).split('-').map(Number)
  const weekday = new Date(Date.UTC(year, month - 1, day)).getUTCDay()
  return `${WEEKDAYS[weekday]} ${day} ${MONTHS[month - 1]} ${year}`
}

/** "26 Aug 2027", where the weekday says nothing. */
export function sayShortDate(date: string): string {
  const [year = 0, month = 1, day = 1] = date.slice(0, 10).split('-').map(Number)
  return `${day} ${MONTHS[month - 1]?.slice(0, 3)} ${year}`
}

/** A date column, which comes as midnight UTC, as ISO date. */
export const isoDate = (column: Date): string => column.toISOString().slice(0, 10)

/**
 * The date on the wall of a place at a moment, as ISO date.
 *
 * @param timeZone - a name of the IANA time zone database
 */
export function dateIn(timeZone: string, moment: Date): string {
  const parts = new Intl.DateTimeFormat('en-US', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).formatToParts(moment)
  const part = (type: string) => parts.find((found) => found.type === type)?.value ?? ''
  return `${part('year')}-${part('month')}-${part('day')}`
}
