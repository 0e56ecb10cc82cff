import 'server-only'
import { database } from '@/lib/db/client'

/** A change is recorded with the time at which it began: it may have been committed a little later. */
const MARGIN_MS = 1_000

/** Is there such a day in the group, and was it changed after a moment? One statement; null when there is no such day. */
export async function dayChangedSince(groupId: string, dayId: string, since: Date): Promise<boolean | null> {
  const from = new Date(since.getTime() - MARGIN_MS)
  const [row] = await database().$queryRaw<{ changed: boolean }[]>`
    SELECT EXISTS (SELECT 1 FROM history h WHERE h.group_id = d.group_id AND h.day_id = d.id AND h.recorded_at > ${from}) AS changed
    FROM day d WHERE d.group_id = ${groupId} AND d.id = ${dayId}`
  return row ? row.changed : null
}
