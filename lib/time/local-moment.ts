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

/** The kitchen's clock time of an instant: whole minutes after 00:00 of `date` in the zone. */
export function kitchenTimeOf(instant: Date, date: string, timeZone: string): number {
  const local = Temporal.PlainDateTime.from(localMomentOf(instant, timeZone))
  return Math.floor(Temporal.PlainDate.from(date).toPlainDateTime().until(local).total('minutes'))
}
