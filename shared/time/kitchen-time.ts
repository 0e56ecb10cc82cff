import { ok, type Result, refuse } from '@/shared/result/result'

/**
 * A time on the kitchen's own clock: whole minutes after 00:00 of the canning day's date, in the kitchen's zone.
 *
 * May pass 1,440 when the day runs past midnight, and may be negative for work of the evening before.
 */
export type KitchenTime = number

const MINUTES_A_DAY = 1440

/** Reads "18:02" (00:00 to 23:59). Anything else is refused with what to type. */
export function parseClock(text: string): Result<KitchenTime, { kind: 'not-a-clock-time'; text: string }> {
  const match = /^([01]?\d|2[0-3]):([0-5]\d)$/.exec(text.trim())
  if (!match) return refuse({ kind: 'not-a-clock-time', text })
  return ok(Number(match[1]) * 60 + Number(match[2]))
}

/** "18:02"; times past midnight or before it wrap to the clock on the wall. */
export function formatClock(time: KitchenTime): string {
  const wrapped = ((Math.round(time) % MINUTES_A_DAY) + MINUTES_A_DAY) % MINUTES_A_DAY
  return `${String(Math.floor(wrapped / 60)).padStart(2, '0')}:${String(wrapped % 60).padStart(2, '0')}`
}
