import 'server-only'
import { database } from '@/lib/db/client'
import { LONGEST_TRANSACTION_MS } from '@/lib/db/in-transaction'

/**
 * Is there such a day in the group, and was it changed after a moment? One statement; null when there is no such day.
 *
 * A change carries the moment at which it began and may have waited for a lock before it was committed. So what began up to the longest
 * transaction before counts too: somebody looks once too often rather than never.
 */
export async function dayChangedSince(groupId: string, dayId: string, since: Date): Promise<boolean | null> {
  const from = new Date(since.getTime() - LONGEST_TRANSACTION_MS)
  const [row] = await database().$queryRaw<{ changed: boolean }[]>`
    SELECT EXISTS (SELECT 1 FROM history h WHERE h.group_id = d.group_id AND h.day_id = d.id AND h.recorded_at > ${from}) AS changed
    FROM day d WHERE d.group_id = ${groupId} AND d.id = ${dayId}`
  return row ? row.changed : null
}
