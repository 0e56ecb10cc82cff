import 'server-only'
import { database } from '@/lib/db/client'
import { dayClock } from '@/lib/queries/day-clock'
import type { DayHead } from '@/lib/queries/day-head'
import { setbackOf } from '@/lib/queries/replan-input'
import { readSavedPlan, type StoredPlan } from '@/lib/queries/saved-plan'
import type { Setback } from '@/shared/planning/day-so-far'
import { type PlanStanding, planStanding, type StandingLoad } from '@/shared/planning/plan-standing'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Something that changed, with its row. */
export interface OpenSetback {
  readonly id: string
  readonly setback: Setback
  readonly note: string
  /** Noted since the plan was made, so that the plan does not know of it. */
  readonly isNew: boolean
}

/** A running day against its plan. */
export interface DayStanding extends PlanStanding {
  readonly stored: StoredPlan
  readonly now: KitchenTime
  readonly setbacks: readonly OpenSetback[]
  /** Something had changed and is over: noted and taken back around the plan. */
  readonly isSomethingOver: boolean
}

/** How a running day stands; null where there is no plan or the day does not run. Four statements. */
export async function dayStanding(groupId: string, day: DayHead, at: Date): Promise<DayStanding | null> {
  if (day.state !== 'running') return null
  const db = database()
  const where = { groupId, dayId: day.id }
  const [stored, loads, setbacks, clock] = await Promise.all([
    readSavedPlan(groupId, day.id),
    db.cannerLoad.findMany({
      where,
      orderBy: { code: 'asc' },
      select: {
        code: true,
        state: true,
        cannerId: true,
        loadedAt: true,
        atTemperatureAt: true,
        temperatureLostAt: true,
        processedAt: true,
        emptiedAt: true,
      },
    }),
    db.setback.findMany({ where, orderBy: [{ notedAt: 'asc' }, { id: 'asc' }] }),
    dayClock(db, groupId, day, at),
  ])
  if (!stored) return null
  const now = Math.floor(clock)
  const { createdAt } = stored
  const open = setbacks.filter(({ clearedAt }) => clearedAt === null)
  return {
    ...planStanding(stored.plan, loads.map(standingLoad), stored.madeAt, now),
    ...{ stored, now },
    setbacks: open.flatMap((row) => {
      const setback = setbackOf(row)
      return setback ? [{ id: row.id, setback, note: row.note, isNew: row.notedAt > createdAt }] : []
    }),
    isSomethingOver: setbacks.some(({ clearedAt, notedAt }) => clearedAt !== null && clearedAt > createdAt && notedAt <= createdAt),
  }
}

interface LoadRow {
  readonly code: string
  readonly state: string
  readonly cannerId: string
  readonly loadedAt: number | null
  readonly atTemperatureAt: number | null
  readonly temperatureLostAt: number | null
  readonly processedAt: number | null
  readonly emptiedAt: number | null
}

function standingLoad(row: LoadRow): StandingLoad {
  const isOver = row.state === 'planned' || row.state === 'done' || row.state === 'failed'
  return {
    loadCode: row.code,
    state: isOver ? (row.state as 'planned' | 'done' | 'failed') : 'running',
    ...{ cannerId: row.cannerId, loadedAt: row.loadedAt, boilAt: row.atTemperatureAt, lostAt: row.temperatureLostAt },
    ...{ processEndAt: row.processedAt, emptyAt: row.emptiedAt, jarsIn: null },
  }
}
