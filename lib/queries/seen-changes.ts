import 'server-only'
import { database } from '@/lib/db/client'
import type { StoredPlan } from '@/lib/queries/saved-plan'
import { SavedDayPlan } from '@/shared/forms/saved-plan'
import { planChanges, type TaskChange } from '@/shared/planning/plan-changes'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/**
 * What is new on a person's list since they last looked, by task; empty when they have seen the day's plan. Whoever never looked is told what
 * the last plan changed. At most two statements.
 */
export async function changesSinceSeen(
  groupId: string,
  dayId: string,
  personId: string,
  stored: StoredPlan,
  now: KitchenTime | null,
): Promise<ReadonlyMap<string, TaskChange>> {
  if (stored.number <= 1) return new Map()
  const db = database()
  const seen = await db.planSeen.findUnique({ where: { groupId_dayId_personId: { groupId, dayId, personId } }, select: { number: true } })
  const number = seen?.number ?? stored.number - 1
  if (number >= stored.number) return new Map()
  const before = await db.plan.findUnique({ where: { groupId_dayId_number: { groupId, dayId, number } }, select: { plan: true } })
  if (!before) return new Map()
  const { people } = planChanges(SavedDayPlan.parse(before.plan), stored.plan, [personId], now ?? Number.NEGATIVE_INFINITY)
  return new Map(people.flatMap(({ changes }) => changes.map((change) => [change.taskId, change] as const)))
}
