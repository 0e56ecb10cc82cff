import 'server-only'
import { randomUUID } from 'node:crypto'
import type { CommandContext, Outcome } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { wakeSearch } from '@/lib/jobs/add-job'
import { noticeDay } from '@/lib/live/notice'
import type { DaySize } from '@/shared/day/day-size'
import type { DayProblem } from '@/shared/planning/day-problem'
import { REPLACED } from '@/shared/wording/say-search'
import { hashOfProblem } from './problem-to-plan'

/** What a search is started for. */
export interface Wanted {
  readonly dayId: string
  readonly problem: DayProblem
  readonly size: DaySize
  readonly change: string | undefined
}

/**
 * Starts a search for the timetable of a day that is too large to be planned while somebody waits. The day must be locked.
 *
 * Where the same is being searched for already, nothing is started: whoever asks follows that search. A search for what the day no longer is ends.
 */
export async function startSearch({ tx, actor, now }: CommandContext, wanted: Wanted): Promise<Outcome> {
  const { groupId, userId: askedBy } = actor
  const { dayId, problem, size, change } = wanted
  const problemHash = hashOfProblem(problem)
  const { batches, loads } = size
  const live = await tx.planSearch.findFirst({
    where: { groupId, dayId, state: { in: LIVE } },
    select: { id: true, problemHash: true, createdAt: true },
  })
  if (live?.problemHash === problemHash) return { reply: { dayId, searchId: live.id, batches, loads }, history: [] }
  await tx.planSearch.deleteMany({ where: { groupId, dayId, state: { notIn: LIVE } } })
  await endLiveSearch(tx, groupId, dayId, now)

  const searchId = randomUUID()
  // The newest search is the day's: it is dated after the one it ends, also where whoever asks waited for the lock.
  const createdAt = live && live.createdAt >= now ? new Date(live.createdAt.getTime() + 1) : now
  const data = { groupId, id: searchId, dayId, askedBy, change: change ?? null, problemHash, batches, loads, createdAt }
  await tx.planSearch.create({ data: { ...data, problem: JSON.parse(JSON.stringify(problem)) as object } })
  await wakeSearch(tx, { groupId, searchId })
  await noticeDay(tx, { groupId, dayId, kind: 'search' })
  const detail = { searchId, batches, loads, change: change ?? null }
  return { reply: { dayId, searchId, batches, loads }, history: [{ subject: `day ${dayId}`, detail, dayId }] }
}

const LIVE = ['queued', 'running']

/** Ends what is searched for a day that is planned anew. Its runner finds at its next step that the row is no longer its own, and ends its thread. */
export async function endLiveSearch(tx: Tx, groupId: string, dayId: string, now: Date): Promise<void> {
  const { what, why, instead } = REPLACED
  await tx.planSearch.updateMany({
    where: { groupId, dayId, state: { in: LIVE } },
    data: { state: 'stopped', runner: null, endedAt: now, said: { what, why, instead } },
  })
}
