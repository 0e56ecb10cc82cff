import 'server-only'
import { database } from '@/lib/db/client'
import type { Tx } from '@/lib/db/in-transaction'
import { SavedDayPlan, SavedDayProblem } from '@/shared/forms/saved-plan'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'

/** A timetable as it was saved, with what it was made for. */
export interface StoredPlan {
  readonly number: number
  readonly createdAt: Date
  /** The kitchen minute from which it was made, for a plan of a running day. */
  readonly madeAt: number | null
  readonly problem: DayProblem
  readonly plan: DayPlan
}

/** The newest plan of a day, parsed; null when the day was never planned. One statement. Throws when what is stored is no plan. */
export async function readSavedPlan(groupId: string, dayId: string, db: Tx = database()): Promise<StoredPlan | null> {
  const row = await db.plan.findFirst({
    where: { groupId, dayId },
    orderBy: { number: 'desc' },
    select: { number: true, createdAt: true, madeAt: true, problem: true, plan: true },
  })
  if (!row) return null
  const { number, createdAt, madeAt } = row
  return { number, createdAt, madeAt, problem: SavedDayProblem.parse(row.problem), plan: SavedDayPlan.parse(row.plan) }
}
