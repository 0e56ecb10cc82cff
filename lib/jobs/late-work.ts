import 'server-only'
import { database } from '@/lib/db/client'
import { isMailDue } from '@/lib/effects/deliver-mail'
import { env } from '@/lib/env'

/** What waits for longer than it should. */
export type LateWork = 'jobs' | 'mail'

/** Every process looks around several times within that (run-jobs.ts). */
const LATE_MS = 120_000

/** Which queues stand still: ready work in them is older than two minutes, and nobody does any. */
export async function lateWork(now: Date): Promise<LateWork[]> {
  const before = new Date(now.getTime() - LATE_MS)
  const [areJobsLate, isMailLate] = await Promise.all([isQueueLate(before), isMailDue(before)])
  return [...(areJobsLate ? (['jobs'] as const) : []), ...(isMailLate ? (['mail'] as const) : [])]
}

/** A search may wait behind others for as long as those take; a process that was lost holds what it had begun for some hours. */
async function isQueueLate(before: Date): Promise<boolean> {
  const stillUnderWay = new Date(before.getTime() - env().searchSeconds * 1000)
  const [row] = await database().$queryRaw<{ isLate: boolean }[]>`
    SELECT EXISTS (SELECT 1 FROM graphile_worker.jobs WHERE locked_at IS NULL AND attempts < max_attempts AND run_at < ${before})
      AND NOT EXISTS (SELECT 1 FROM graphile_worker.jobs WHERE locked_at > ${stillUnderWay}) AS "isLate"`
  return row?.isLate ?? false
}
