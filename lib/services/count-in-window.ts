import 'server-only'
import { database } from '@/lib/db/client'

/**
 * Counts one more use of `key` in its current window and says whether it is still within the limit.
 *
 * Kept in the database, so that every process counts together. Whoever comes late from the window before counts in the one that has begun.
 *
 * @returns seconds to wait when the limit is passed, otherwise 0
 */
export async function countInWindow(key: string, limit: number, windowSeconds: number, now = new Date()): Promise<number> {
  const windowMs = windowSeconds * 1000
  const startsAt = new Date(Math.floor(now.getTime() / windowMs) * windowMs)
  const nextAt = new Date(startsAt.getTime() + windowMs)
  const [row] = await database().$queryRaw<{ count: number }[]>`
    INSERT INTO rate_window (key, starts_at, count) VALUES (${key}, ${startsAt}, 1)
    ON CONFLICT (key) DO UPDATE SET
      count = CASE WHEN rate_window.starts_at IN (EXCLUDED.starts_at, ${nextAt}) THEN rate_window.count + 1 ELSE 1 END,
      starts_at = CASE WHEN rate_window.starts_at = ${nextAt} THEN rate_window.starts_at ELSE EXCLUDED.starts_at END
    RETURNING count`
  if (!row || row.count <= limit) return 0
  return Math.ceil((nextAt.getTime() - now.getTime()) / 1000)
}
