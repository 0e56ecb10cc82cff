import 'server-only'
import { database } from '@/lib/db/client'

/**
 * Counts one more use of `key` in its current window and says whether it is still within the limit.
 *
 * Kept in the database, so that every process counts together.
 *
 * @returns seconds to wait when the limit is passed, otherwise 0
 */
export async function countInWindow(key: string, limit: number, windowSeconds: number, now = new Date()): Promise<number> {
  const startsAt = new Date(Math.floor(now.getTime() / (windowSeconds * 1000)) * windowSeconds * 1000)
  const [row] = await database().$queryRaw<{ count: number }[]>`
    INSERT INTO rate_window (key, starts_at, count) VALUES (${key}, ${startsAt}, 1)
    ON CONFLICT (key) DO UPDATE SET
      count = CASE WHEN rate_window.starts_at = EXCLUDED.starts_at THEN rate_window.count + 1 ELSE 1 END,
      starts_at = EXCLUDED.starts_at
    RETURNING count`
  if (!row || row.count <= limit) return 0
  return Math.ceil((startsAt.getTime() + windowSeconds * 1000 - now.getTime()) / 1000)
}
