import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import { kitchenTimeOf } from '@/lib/time/local-moment'
import type { FloorHours } from '@/shared/floor/floor-clock'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A day as far as its clock goes. */
export interface ClockedDay extends FloorHours {
  readonly id: string
  /** ISO date. */
  readonly date: string
  readonly timeZone: string
  readonly isDemo: boolean
}

/**
 * What the kitchen's clock says, with its seconds as a part of a minute.
 *
 * A demo day lies at any date, so outside of its own hours its clock goes on from the last entry, as fast as any clock, up to closing time.
 */
export async function dayClock(db: Tx, groupId: string, day: ClockedDay, now: Date): Promise<KitchenTime> {
  const wall = kitchenTimeOf(now, day)
  if (!day.isDemo || (wall >= day.accessAt && wall <= day.hardEnd)) return wall
  const [entry] = await db.$queryRaw<{ last: number | null; recordedAt: Date | null }[]>`
    SELECT greatest(
      (SELECT max(greatest(loaded_at, at_temperature_at, temperature_lost_at, processed_at, emptied_at)) FROM canner_load
        WHERE group_id = ${groupId} AND day_id = ${day.id}),
      (SELECT max(greatest(started_at, filling_at, filled_at)) FROM kettle_batch WHERE group_id = ${groupId} AND day_id = ${day.id})) AS last,
      (SELECT recorded_at FROM history WHERE group_id = ${groupId} AND day_id = ${day.id} ORDER BY number DESC LIMIT 1) AS "recordedAt"`
  if (!entry || entry.last === null || entry.recordedAt === null) return day.accessAt
  const goneOn = Math.max(0, (now.getTime() - entry.recordedAt.getTime()) / 60_000)
  return Math.max(entry.last, Math.min(entry.last + goneOn, day.hardEnd))
}
