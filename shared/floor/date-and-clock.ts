import type { KitchenTime } from '@/shared/time/kitchen-time'

const MINUTES_A_DAY = 1440

/** A date and a clock time as a kitchen time of the canning day: "2027-08-27", 10:05 is 2045 on the day of 2027-08-26. */
export function kitchenTimeOn(on: string, clock: number, date: string): KitchenTime {
  return Math.round((Date.parse(`${on}T00:00:00Z`) - Date.parse(`${date}T00:00:00Z`)) / 86_400_000) * MINUTES_A_DAY + clock
}

/** The date a kitchen time falls on, `2027-08-27`. */
export function dateOf(time: KitchenTime, date: string): string {
  const days = Math.floor(time / MINUTES_A_DAY)
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10)
}
