import type { KitchenTime } from '@/shared/time/kitchen-time'

const MINUTES_A_DAY = 1440

/**
 * What the clock on the kitchen's wall says at an instant, counted from 00:00 of the canning day's date: 10:05 of the day after is 2045.
 *
 * Counted as the wall shows it: on a night in which the clocks are changed an hour is there twice or not at all.
 *
 * @param date - the day's date, `2027-08-26`
 * @param timeZone - the group's zone, an IANA name
 */
export function wallClock(instant: Date, date: string, timeZone: string): KitchenTime {
  const parts = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  }).formatToParts(instant)
  const part = (type: string) => Number(parts.find((each) => each.type === type)?.value)
  const days = Math.round((Date.UTC(part('year'), part('month') - 1, part('day')) - Date.parse(`${date}T00:00:00Z`)) / 86_400_000)
  return days * MINUTES_A_DAY + part('hour') * 60 + part('minute')
}

/** A date and a clock time as a kitchen time of the canning day: "2027-08-27", 10:05 is 2045 on the day of 2027-08-26. */
export function kitchenTimeOn(on: string, clock: number, date: string): KitchenTime {
  return Math.round((Date.parse(`${on}T00:00:00Z`) - Date.parse(`${date}T00:00:00Z`)) / 86_400_000) * MINUTES_A_DAY + clock
}

/** The date a kitchen time falls on, `2027-08-27`. */
export function dateOf(time: KitchenTime, date: string): string {
  const days = Math.floor(time / MINUTES_A_DAY)
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)
}
