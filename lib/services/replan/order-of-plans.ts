import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'

/*
 * A plan knows what was noted before it, and nothing that was noted after. So the moments must keep the order in which the day's lock let the
 * changes in: whoever waited for the lock began before the one who had it, and the clock of another server may differ.
 */

/** The moment of what is noted now, after the newest plan of the day. The day must be locked. */
export async function momentAfterPlan(tx: Tx, groupId: string, dayId: string, now: Date): Promise<Date> {
  const { _max: newest } = await tx.plan.aggregate({ where: { groupId, dayId }, _max: { createdAt: true } })
  return later(now, newest.createdAt && new Date(newest.createdAt.getTime() + 1))
}

/** The moment of a plan that is made now, not before anything that was noted of the day. The day must be locked. */
export async function momentOfPlan(tx: Tx, groupId: string, dayId: string): Promise<Date> {
  const { _max: newest } = await tx.setback.aggregate({ where: { groupId, dayId }, _max: { notedAt: true, clearedAt: true } })
  return later(later(new Date(), newest.notedAt), newest.clearedAt)
}

const later = (one: Date, other: Date | null): Date => (other && other > one ? other : one)
