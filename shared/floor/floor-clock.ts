import type { FloorMoment, FloorProblem } from '@/shared/floor/floor-problem'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** The hours of a day that an entry on the floor must lie in. */
export interface FloorHours {
  readonly accessAt: KitchenTime
  readonly hardEnd: KitchenTime
}

/**
 * Minutes after closing time in which what was begun may still be ended: 240.
 *
 * Our own bound, not a safety figure: a pressure load that was begun just before closing time has come up, been processed and cooled by then.
 */
export const LATE_MINUTES = 240

/** An event may lie this many minutes ahead of the clock on the wall: phones and walls differ a little. Common practice. */
export const AHEAD_MINUTES = 5

const MINUTES_A_DAY = 1440

/**
 * A clock time typed on the floor as a kitchen time: "00:20" on a day that runs past midnight is 1460.
 *
 * @param clock - 0 to 1439, as typed
 */
export function placeOnDay(clock: number, { accessAt, hardEnd }: FloorHours): KitchenTime {
  const nextDay = clock + MINUTES_A_DAY
  return clock < accessAt && nextDay <= hardEnd + LATE_MINUTES ? nextDay : clock
}

/** What an entry's time is judged by. */
export interface WhenRules {
  readonly hours: FloorHours
  /** Something begins (only while the kitchen is open), or ends what was begun. */
  readonly kind: 'begin' | 'end'
  /** What must have come first; moments that have not come are skipped. */
  readonly after: readonly FloorMoment[]
  /** The clock on the wall; null when times are taken as typed (a demo day). */
  readonly now: KitchenTime | null
}

/** Whether a time fits: inside the day, not ahead of the clock, not before what has to come first. */
export function checkWhen(at: KitchenTime, { hours, kind, after, now }: WhenRules): Result<KitchenTime, FloorProblem> {
  const until = hours.hardEnd + (kind === 'end' ? LATE_MINUTES : 0)
  if (at < hours.accessAt || at > until) return refuse({ kind: 'outside-the-day', at, from: hours.accessAt, until })
  if (now !== null && at > now + AHEAD_MINUTES) return refuse({ kind: 'not-yet', at, now })
  for (const moment of after) {
    if (moment.at !== null && at < moment.at) return refuse({ kind: 'out-of-order', at, after: moment.what, afterAt: moment.at })
  }
  return ok(at)
}
