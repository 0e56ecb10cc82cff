import 'server-only'
import { database } from '@/lib/db/client'
import type { Tx } from '@/lib/db/in-transaction'
import { AFTER_A_FAILED_PROCESS } from '@/shared/floor/unsealed-jars'
import { SavedDayPlan, SavedDayProblem } from '@/shared/forms/saved-plan'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, LockedTask, PlanLock } from '@/shared/planning/day-problem'
import type { BatchSoFar, DaySoFar, LoadSoFar, Setback } from '@/shared/planning/day-so-far'
import { begunUnder } from '@/shared/planning/locks'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** What the rest of a day is planned from: its problem with the locks, the plan that stands, and what really happened. */
export interface ReplanInput {
  readonly number: number
  readonly madeAt: KitchenTime | null
  readonly createdAt: Date
  readonly problem: DayProblem
  readonly plan: DayPlan
  readonly soFar: DaySoFar
}

/** Reads it all in a fixed number of statements; null for a day without a plan. */
export async function readReplanInput(db: Tx, groupId: string, dayId: string, now: KitchenTime): Promise<ReplanInput | null> {
  const where = { groupId, dayId }
  const newest = await db.plan.findFirst({
    where,
    orderBy: { number: 'desc' },
    select: { number: true, madeAt: true, createdAt: true, problem: true, plan: true, madeBy: true },
  })
  if (!newest) return null
  const first =
    newest.madeBy === 'plan'
      ? newest
      : await db.plan.findFirstOrThrow({ where: { ...where, madeBy: 'plan' }, orderBy: { number: 'desc' }, select: { problem: true } })
  const plan = SavedDayPlan.parse(newest.plan)
  const [batches, loads, setbacks, locks] = [
    await readBatches(db, groupId, dayId),
    await readLoads(db, groupId, dayId),
    await readSetbacks(db, groupId, dayId),
    await readLocks(groupId, dayId, db),
  ]
  const codesOf = (rows: readonly { readonly code: string; readonly state: string }[]) =>
    new Set(rows.filter(({ state }) => state !== 'planned').map(({ code }) => code))
  const begun = { batches: codesOf(batches), loads: codesOf(loads) }
  const problem = { ...SavedDayProblem.parse(first.problem), locks: locks.filter((lock) => begunUnder(plan, begun, lock) === null) }
  const isNoted = batches.some(({ fillingAt }) => fillingAt !== null)
  const soFar: DaySoFar = {
    now,
    batches: batches.flatMap((row) => batchSoFar(problem, plan, row, now, isNoted) ?? []),
    loads: loads.map((row) => loadSoFar(plan, row)),
    setbacks: setbacks.flatMap((row) => setbackOf(row) ?? []),
  }
  return { number: newest.number, madeAt: newest.madeAt, createdAt: newest.createdAt, problem, plan, soFar }
}

const readBatches = (db: Tx, groupId: string, dayId: string) =>
  db.kettleBatch.findMany({
    where: { groupId, dayId },
    orderBy: { code: 'asc' },
    select: {
      code: true,
      state: true,
      kettleId: true,
      startedAt: true,
      fillingAt: true,
      filledAt: true,
      jarsFilled: true,
      jars: {
        where: { state: 'filled', loads: { every: { load: { state: 'failed' } } } },
        select: { loads: { orderBy: { turn: 'desc' }, take: 1, select: { load: { select: { emptiedAt: true } } } } },
      },
    },
  })

type BatchRow = Awaited<ReturnType<typeof readBatches>>[number]

/** @param isNoted - somebody notes on this day when filling begins, so that what is not noted has not begun */
function batchSoFar(problem: DayProblem, plan: DayPlan, row: BatchRow, now: KitchenTime, isNoted: boolean): BatchSoFar | null {
  const planned = plan.batches.find(({ code }) => code === row.code)
  if (!planned) return null
  const { kettleId, startedAt, fillingAt, filledAt, jarsFilled } = row
  const isCooking = row.state === 'cooking' || row.state === 'filling'
  const preparation = problem.preparations.find(({ id }) => id === planned.preparationId)
  // Where nobody notes the first jar, filling is taken to have begun when the plan has it begin, and not before the cooking is over.
  const guessed = Math.max(planned.fillStart, (startedAt ?? now) + (preparation?.kettleMinutes ?? 0))
  const fillFrom = fillingAt ?? (isNoted ? null : guessed)
  return {
    batchId: planned.id,
    state: isCooking ? 'cooking' : row.state === 'filled' || row.state === 'abandoned' ? row.state : 'planned',
    ...{ kettleId: startedAt === null ? null : kettleId, startedAt, filledAt, jarsFilled },
    fillStartedAt: isCooking && fillFrom !== null && fillFrom < now ? fillFrom : null,
    waiting: waitingOf(row),
  }
}

/** Jars in no canner. Those that were in none are told apart from those of a load that was given up, whose published hours run. */
function waitingOf({ jars, filledAt }: BatchRow): BatchSoFar['waiting'] {
  if (jars.length === 0 || filledAt === null) return null
  const givenUp = jars.map(({ loads }) => loads[0]?.load.emptiedAt ?? null)
  const isFresh = givenUp.includes(null)
  const since = isFresh ? filledAt : Math.min(...givenUp.flatMap((at) => at ?? []))
  return { jars: jars.length, since, loadBy: isFresh ? null : since + AFTER_A_FAILED_PROCESS.hours * 60 }
}

const readLoads = (db: Tx, groupId: string, dayId: string) =>
  db.cannerLoad.findMany({
    where: { groupId, dayId, state: { not: 'planned' } },
    orderBy: { code: 'asc' },
    select: {
      code: true,
      state: true,
      cannerId: true,
      operatorId: true,
      loadedAt: true,
      atTemperatureAt: true,
      temperatureLostAt: true,
      processedAt: true,
      emptiedAt: true,
      processMinutes: true,
      jarLoads: { where: { jar: { state: { not: 'broken' } } }, select: { jar: { select: { batch: { select: { code: true } } } } } },
    },
  })

type LoadRow = Awaited<ReturnType<typeof readLoads>>[number]

function loadSoFar(plan: DayPlan, row: LoadRow): LoadSoFar {
  const counts = new Map<string, number>()
  for (const { jar } of row.jarLoads) counts.set(jar.batch.code, (counts.get(jar.batch.code) ?? 0) + 1)
  const { cannerId, operatorId, loadedAt, processMinutes } = row
  return {
    loadId: row.code,
    state: row.state === 'done' || row.state === 'failed' ? row.state : 'in-canner',
    ...{ cannerId, operatorId, loadedAt, processMinutes },
    ...{ boilAt: row.atTemperatureAt, lostAt: row.temperatureLostAt, processEndAt: row.processedAt, emptyAt: row.emptiedAt },
    jars: [...counts].flatMap(([code, jars]) => {
      const batch = plan.batches.find((each) => each.code === code)
      return batch ? [{ batchId: batch.id, jars }] : []
    }),
  }
}

const readSetbacks = (db: Tx, groupId: string, dayId: string) =>
  db.setback.findMany({ where: { groupId, dayId, clearedAt: null }, orderBy: [{ notedAt: 'asc' }, { id: 'asc' }] })

type SetbackRow = Awaited<ReturnType<typeof readSetbacks>>[number]

/** A row as the planner takes it; the database lets no row be without what its kind needs. */
export function setbackOf({
  kind,
  cannerId,
  personId,
  preparationId,
  fromAt,
  untilAt,
  batches,
}: Omit<SetbackRow, 'notedAt'>): Setback | null {
  if (kind === 'produce-short') return preparationId && batches !== null ? { kind, preparationId, batches } : null
  if (fromAt === null) return null
  if (kind === 'canner-out' && cannerId) return { kind, cannerId, from: fromAt, until: untilAt }
  if (kind === 'person-away' && personId) return { kind, personId, from: fromAt }
  if (kind === 'person-late' && personId) return { kind, personId, at: fromAt }
  return kind === 'produce-late' && preparationId ? { kind, preparationId, at: fromAt } : null
}

/** A lock with the id of its row. */
export type StoredLock = PlanLock & { readonly id: string }

/** The tasks of a day that were fixed by hand. One statement. */
export async function readLocks(groupId: string, dayId: string, db: Tx = database()): Promise<StoredLock[]> {
  const rows = await db.planLock.findMany({
    where: { groupId, dayId },
    orderBy: [{ preparationId: 'asc' }, { batch: 'asc' }, { task: 'asc' }],
    select: { id: true, preparationId: true, batch: true, task: true, at: true, equipmentId: true, personId: true },
  })
  return rows.map((row) => ({ ...row, task: row.task as LockedTask }))
}
