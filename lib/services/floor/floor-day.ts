import 'server-only'
import type { CommandContext } from '@/lib/commands/command'
import { type ClockedDay, dayClock } from '@/lib/queries/day-clock'
import { calendarTimeOf, kitchenTimeOf } from '@/lib/time/local-moment'
import { checkWhen, placeOnDay, type WhenRules } from '@/shared/floor/floor-clock'
import type { FloorMoment } from '@/shared/floor/floor-problem'
import { kitchenTimeOn } from '@/shared/floor/date-and-clock'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { KitchenTime } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { badInput, notFound, type Refusal } from '@/shared/wording/refusal'
import type { DayState } from '@/shared/lifecycle/day-states'

/** A day as the floor needs it, under a lock: entries of one day take their turns, so two hands never fill or load the same jars. */
export interface FloorDay extends ClockedDay {
  readonly state: DayState
  readonly kitchenId: string
  readonly elevationFeet: number
  readonly lidLotId: string | null
  readonly shareRule: string
  readonly groupCode: string
  readonly currency: string
}

/** Locks a day of this group that is in one of these states. */
export async function lockFloorDay(
  { tx, actor: { groupId } }: CommandContext,
  dayId: string,
  open: readonly DayState[],
): Promise<Result<FloorDay, Refusal>> {
  const [day] = await tx.$queryRaw<FloorDay[]>`
    SELECT d.id, d.state, d.date::text AS date, d.kitchen_id AS "kitchenId", k.elevation_feet AS "elevationFeet", d.lid_lot_id AS "lidLotId",
      d.access_at AS "accessAt", d.hard_end AS "hardEnd", d.share_rule AS "shareRule", g.time_zone AS "timeZone", g.is_demo AS "isDemo",
      g.code AS "groupCode", g.currency
    FROM day d JOIN kitchen k ON k.group_id = d.group_id AND k.id = d.kitchen_id JOIN "group" g ON g.id = d.group_id
    WHERE d.group_id = ${groupId} AND d.id = ${dayId} FOR NO KEY UPDATE OF d`
  if (!day) return refuse(notFound('Canning day'))
  return open.includes(day.state) ? ok(day) : refuse(sayFloorProblem({ kind: 'day-not-open', state: day.state, open }))
}

/** The clock on the kitchen's wall; null on a demo day, where times are taken as typed. */
const wallTime = (day: FloorDay, now: Date): KitchenTime | null => (day.isDemo ? null : Math.floor(kitchenTimeOf(now, day)))

/** How an entry's time is taken: what it must come after, and which way "now" is rounded to a whole minute. */
export interface WhenTyped extends Omit<WhenRules, 'hours' | 'now'> {
  /** `up` where an earlier minute would make a process shorter than it was. */
  readonly round?: 'up' | 'down' | undefined
}

/** A typed clock time, or now, as a kitchen time that fits the day, or why it does not. */
export async function timeOnDay(
  { tx, actor: { groupId }, now }: CommandContext,
  day: FloorDay,
  clock: number | undefined,
  { round = 'down', ...rules }: WhenTyped,
): Promise<Result<KitchenTime, Refusal>> {
  const whole = round === 'up' ? Math.ceil : Math.floor
  const time = clock === undefined ? notBefore(rules.after, whole(await dayClock(tx, groupId, day, now))) : placeOnDay(clock, day)
  const fits = checkWhen(time, { ...rules, hours: day, now: wallTime(day, now) })
  return fits.ok ? fits : refuse(sayFloorProblem(fits.problem))
}

/** Now, where what came first was rounded up to the end of this same minute: that minute, and no further. */
const notBefore = (after: readonly FloorMoment[], now: KitchenTime): KitchenTime => (after.some(({ at }) => at === now + 1) ? now + 1 : now)

/** Days after the canning day in which its jars are still looked at one by one: our own bound against slips of the date. */
const LAST_DAYS = 60

/** A date and a clock time as a kitchen time of the day, for what happens when the kitchen is long closed: the seal check, a jar that breaks on the rack. */
export function timeAfterDay(
  day: FloorDay,
  { on, at, after, now }: { readonly on: string; readonly at: number; readonly after: readonly FloorMoment[]; readonly now: Date },
): Result<KitchenTime, Refusal> {
  const time = kitchenTimeOn(on, at, day.date)
  if (time < day.accessAt || time > LAST_DAYS * 1440) return refuse(badInput({ on: [`From ${day.date} on, within ${LAST_DAYS} days.`] }))
  const hours = { accessAt: day.accessAt, hardEnd: LAST_DAYS * 1440 }
  const today = day.isDemo ? null : calendarTimeOf(now, day.date, day.timeZone)
  const fits = checkWhen(time, { hours, kind: 'begin', after, now: today })
  return fits.ok ? fits : refuse(sayFloorProblem(fits.problem))
}
