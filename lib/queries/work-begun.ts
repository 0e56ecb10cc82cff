import 'server-only'
import { database } from '@/lib/db/client'
import type { Tx } from '@/lib/db/in-transaction'
import type { WorkBegun } from '@/shared/planning/locks'

/** What of a day has begun, is done or was given up: nothing of it can be fixed any more. Two statements. */
export async function readWorkBegun(groupId: string, dayId: string, db: Tx = database()): Promise<WorkBegun> {
  const begun = { where: { groupId, dayId, state: { not: 'planned' } }, select: { code: true } } as const
  const batches = await db.kettleBatch.findMany(begun)
  const loads = await db.cannerLoad.findMany(begun)
  return { batches: new Set(batches.map(({ code }) => code)), loads: new Set(loads.map(({ code }) => code)) }
}
