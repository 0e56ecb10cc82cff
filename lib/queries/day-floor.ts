import 'server-only'
import { database } from '@/lib/db/client'
import { dayClock } from '@/lib/queries/day-clock'
import type { DayHead } from '@/lib/queries/day-head'
import type { TaskActual } from '@/shared/planning/day-plan'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** How far the day has come: what was logged at the canners, and the kitchen's time. */
export interface DayFloor {
  readonly actuals: readonly TaskActual[]
  /** Null as long as the day has not begun, and after its work is over. */
  readonly now: KitchenTime | null
}

/** What is known of a day's loads by now. A fixed number of statements; none for a day that has not begun. */
export async function dayFloor(groupId: string, day: DayHead, at: Date): Promise<DayFloor> {
  const hasBegun = day.state === 'running' || day.state === 'resting' || day.state === 'closed'
  if (!hasBegun) return { actuals: [], now: null }
  const rows = await database().cannerLoad.findMany({
    where: { groupId, dayId: day.id },
    orderBy: { code: 'asc' },
    select: {
      code: true,
      cannerId: true,
      operatorId: true,
      loadedAt: true,
      atTemperatureAt: true,
      processedAt: true,
      emptiedAt: true,
      _count: { select: { jarLoads: true } },
    },
  })
  const actuals = rows.map((row) => ({
    loadCode: row.code,
    cannerId: row.cannerId,
    operatorId: row.loadedAt === null ? null : row.operatorId,
    loadedAt: row.loadedAt,
    boilAt: row.atTemperatureAt,
    processEndAt: row.processedAt,
    emptyAt: row.emptiedAt,
    jarsIn: row.loadedAt === null ? null : row._count.jarLoads,
  }))
  const now = day.state === 'running' ? Math.floor(await dayClock(database(), groupId, day, at)) : day.hardEnd
  return { actuals, now }
}
