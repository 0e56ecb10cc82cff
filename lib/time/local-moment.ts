import 'server-only'
import { Temporal } from 'temporal-polyfill'

/** The instant at which the clocks of a zone show a local moment, "2027-08-24T20:00". In the hour that is skipped in spring, the later reading. */
export const instantOf = (localMoment: string, timeZone: string): Date =>
  new Date(Temporal.PlainDateTime.from(localMoment).toZonedDateTime(timeZone).epochMilliseconds)

/** What the clocks of a zone show at an instant, "2027-08-24T20:00". */
export const localMomentOf = (instant: Date, timeZone: string): string =>
  Temporal.Instant.fromEpochMilliseconds(instant.getTime())
    .toZonedDateTimeISO(timeZone)
    .toPlainDateTime()
    .toString({ smallestUnit: 'minute' })

/** A day whose kitchen has a clock. */
export interface DayOfClock {
  /** ISO date. */
  readonly date: string
  readonly timeZone: string
  /** When the kitchen opens, minutes after 00:00 of the date. */
  readonly accessAt: number
}

/**
 * What the kitchen's clock says at an instant: minutes after 00:00 of the day's date, with the seconds as a part of a minute.
 *
 * It is set when the kitchen opens and then runs on, also through a night in which the zone's clocks are put forward or back: an hour that they
 * skip would otherwise count as an hour of a process, and an hour that they repeat would have a process end before it began.
 */
export function kitchenTimeOf(instant: Date, { date, timeZone, accessAt }: DayOfClock): number {
  const opens = Temporal.PlainDate.from(date).toPlainDateTime().add({ minutes: accessAt }).toZonedDateTime(timeZone)
  return accessAt + (instant.getTime() - opens.epochMilliseconds) / 60_000
}

/** What the zone's clocks show at an instant, by the calendar: whole minutes after 00:00 of `date`. For the days after, when nothing runs any more. */
export function calendarTimeOf(instant: Date, date: string, timeZone: string): number {
  const local = Temporal.PlainDateTime.from(localMomentOf(instant, timeZone))
  return Math.floor(Temporal.PlainDate.from(date).toPlainDateTime().until(local).total('minutes'))
}
